import type { Lineup } from "../../lineup/lineup";
import type { OwnLimit } from "../../lineup/ownCriterion";
import { panelOf } from "../../lineup/panelOf";
import { isFor, ownItems } from "../columns/checkItems";
import { closing, LINEUP, trail } from "../columns/common";
import {
  type Column,
  type Comparison,
  isBlank,
  type Own,
  type RecordKind,
  type Row,
} from "../kind";
import { sourceOf, sources, stricterOf, strictestOf } from "../limits";
import { verdictBy } from "../verdict";

/** What is measured of a lineup as it stands, and the criterion that limits it: common practice. */
const USUAL: readonly {
  readonly item: string;
  readonly quantity: string;
  readonly end: "least" | "most";
  readonly each: "lineup" | "panel";
}[] = [
  ...(
    [
      ["Clearance in front, least", "clearance in front mm"],
      ["Clearance behind, least", "clearance behind mm"],
      ["Clearance at the left end", "clearance at the sides mm"],
      ["Clearance at the right end", "clearance at the sides mm"],
      ["Clearance above, least", "clearance above mm"],
    ] as const
  ).map(([item, quantity]) => ({ item, quantity, end: "least", each: "lineup" }) as const),
  ...(
    [
      ["Out of level over 1 m, along the lineup", "level over 1 m mm"],
      ["Out of level over 1 m, front to back", "level over 1 m mm"],
      ["Front out of line with its neighbour's", "alignment of fronts mm"],
    ] as const
  ).map(([item, quantity]) => ({ item, quantity, end: "most", each: "panel" }) as const),
];

type End = "least" | "most";

/** A limit that the lineup gives: with an item of the project's own, or as a criterion. */
const givenLimit = (end: End): Own =>
  stricterOf(end, (row, lineup) => drawn(end, row, lineup), usual[end]);

/** The criteria for what is usually measured. */
const usualLimit = (end: End): Own =>
  strictestOf(
    end,
    ...USUAL.filter((one) => one.end === end).map(({ item, quantity }) => ({
      name: quantity,
      of: ({ part }: Row) => part === item,
    })),
  );
const usual = { least: usualLimit("least"), most: usualLimit("most") };

const drawn = (end: End, row: Row, lineup: Lineup): OwnLimit | undefined => {
  const panel = panelOf(lineup, String(row.object));
  const own = ownItems(lineup, "dimensions").find(
    (one) => one.item === row.part && panel && isFor(one, panel),
  );
  return own && limitOf(own[end], own.document);
};
const limitOf = (value: number | undefined, document: string): OwnLimit | undefined =>
  value === undefined ? undefined : { from: "project", value, document };
const least = givenLimit("least");
const most = givenLimit("most");

const accepted: readonly Comparison[] = [
  { value: "reading", limit: "least", unit: "mm", sense: "least", when: "least" },
  { value: "reading", limit: "most", unit: "mm", sense: "most", when: "most" },
];

const limit = (id: End, header: string, own: NonNullable<Column["own"]>): Column => ({
  id,
  header,
  role: "limit",
  width: 9,
  unit: "mm",
  own,
  help: "From the approved drawing or the maker; where the lineup gives none, type it here and name the document.",
  value: (row) => row[id] ?? null,
});

const isTyped = (row: Row, lineup: Lineup) =>
  (!isBlank(row.least) && !least(row, lineup)) || (!isBlank(row.most) && !most(row, lineup));

const ENDS = ["least", "most"] as const;

/** Where a limit comes from; of one that was typed, the document beside it says it. */
const sourceFor = (end: End, row: Row, lineup: Lineup): string =>
  sourceOf((end === "least" ? least : most)(row, lineup)) || TO_NAME;
const TO_NAME =
  "as typed here, by the document beside it; without one, type it and name its document";

const columns: readonly Column[] = [
  { id: "object", header: "Panel or lineup", role: "key", width: 15 },
  { id: "part", header: "Dimension", role: "key", width: 38 },
  {
    id: "reading",
    header: "Measured mm",
    role: "entry",
    width: 10,
    unit: "mm",
    accepts: { type: "number", least: 0, most: 100000 },
    need: "reading",
    help: "The worst place counts: the least clearance along the lineup, the greatest departure of a panel.",
  },
  limit("least", "Minimum mm", least),
  limit("most", "Maximum mm", most),
  {
    id: "document",
    header: "Document of a typed limit",
    role: "entry",
    width: 26,
    accepts: { type: "text" },
    need: "trail",
    needed: isTyped,
    help: "Drawing or manual, and where in it, that a limit typed here was taken from.",
  },
  sources((row, lineup) => ENDS.map((end) => [end, sourceFor(end, row, lineup)] as const)),
  ...trail(),
];

/** Level, alignment and clearances of the lineup as it stands. */
export const dimensions: RecordKind<"dimensions"> = {
  id: "dimensions",
  ownItems: "measured",
  step: "installation",
  sheet: "Dimensions",
  table: "GearDimensions",
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) => {
    const own = ownItems(lineup, "dimensions");
    const usual = (object: string, each: "lineup" | "panel") =>
      USUAL.filter((one) => one.each === each).map(({ item }): Row => ({ object, part: item }));
    return [
      ...usual(LINEUP, "lineup"),
      ...lineup.panels.flatMap((panel) => {
        const ours = own.filter((one) => isFor(one, panel)).map(({ item }) => item);
        return [
          ...usual(panel.designation, "panel").filter(({ part }) => !ours.includes(String(part))),
          ...ours.map((part): Row => ({ object: panel.designation, part })),
        ];
      }),
    ];
  },
  accepted,
  enough: [],
};
