import type { Lineup } from "../../lineup/lineup";
import { answered, closing, LINEUP, signed } from "../columns/common";
import type { Column, RecordKind, Row } from "../kind";
import { verdictBy } from "../verdict";

/** How the point is written on an inspection and test plan. */
const LETTER = { review: "R", witness: "W", hold: "H" } as const;

const columns: readonly Column[] = [
  { id: "object", header: "Panel or lineup", role: "key", width: 13 },
  { id: "part", header: "Activity", role: "key", width: 34 },
  {
    id: "point",
    header: "Point",
    role: "given",
    width: 8,
    help: "R review, W witness, H hold: nothing that a hold point guards goes ahead until it is released.",
  },
  { id: "guards", header: "Holds up", role: "given", width: 20 },
  { id: "document", header: "Plan", role: "given", width: 26 },
  {
    id: "requested",
    header: "Requested on",
    role: "entry",
    width: 12,
    format: "yyyy-mm-dd",
    accepts: { type: "date" },
    need: "trail",
    help: "When the inspector was invited, as early as the plan asks for.",
  },
  answered("released", "Released", ["Released", "Not released", "Waived in writing"], {
    width: 14,
    need: "reading",
    also: ["Waived in writing"],
    help: "By the one whom the plan names. A waiver is one only in writing: name it in the remarks.",
  }),
  // A release by nobody and on no day is none.
  ...signed("Released by", "Held on").map((column) => ({ ...column, need: "reading" as const })),
];

/** Review, witness and hold points: asked for, held, released. */
export const inspection: RecordKind<"inspection"> = {
  id: "inspection",
  role: "inspection",
  sheet: "Inspection",
  table: "GearInspection",
  columns: [...columns, verdictBy(columns, [], []), ...closing()],
  rows: (lineup) =>
    lineup.inspectionPoints.flatMap(({ activity, type, guards, each, document }) =>
      objects(each, lineup).map(
        (object): Row => ({
          object,
          part: activity,
          point: LETTER[type],
          guards: guards?.join(", ") ?? null,
          document: document ?? "common practice",
        }),
      ),
    ),
  accepted: [],
  enough: [],
};

const objects = (each: "lineup" | "panel", { panels }: Lineup) =>
  each === "lineup" ? [LINEUP] : panels.map(({ designation }) => designation);
