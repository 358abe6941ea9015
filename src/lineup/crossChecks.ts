import type { Said } from "../messages/reasons";
import type { Told } from "../messages/told";
import type { OwnIssue } from "../quantities/plainIssue";
import { bare } from "./lineup";

/** A part of an object; of anything else, and of a part that is not there, undefined. */
const partOf = (holder: unknown, key: string): unknown =>
  typeof holder === "object" && holder !== null
    ? (holder as Record<string, unknown>)[key]
    : undefined;
/** A text; blank where it is none. */
const textOf = (cell: unknown): string => (typeof cell === "string" ? cell : "");
const numberOf = (cell: unknown): number | undefined =>
  typeof cell === "number" ? cell : undefined;
const listOf = (list: unknown): readonly unknown[] => (Array.isArray(list) ? list : []);
/** One text of each item of a list. */
const textsOf = (list: unknown, key: string): string[] =>
  listOf(list).map((item) => textOf(partOf(item, key)));

/** Lists of a panel whose items have names, and the key that names one. */
const LISTS = [
  ["joints", "name"],
  ["currentTransformers", "name"],
  ["voltageTransformers", "name"],
  ["meters", "designation"],
  ["protection", "element"],
  ["cables", "designation"],
  ["motion", "quantity"],
  ["arresters", "designation"],
  ["schemes", "designation"],
  ["relaySettings", "parameter"],
  ["arcSensors", "designation"],
  ["batteries", "designation"],
  ["heaters", "designation"],
] as const;

/** The keys that together name an item of such a list, where that is not the last of them alone. */
const NAMED_BY: Readonly<Record<string, readonly string[]>> = {
  element: ["relay", "element"],
  parameter: ["relay", "parameter"],
};

/** As much of a lineup as has the right shape, so that these checks run beside the schema's own. */
const loosely = (json: unknown) => {
  const list = (key: string) => listOf(partOf(json, key));
  const ratings = partOf(json, "ratings");
  return {
    panels: list("panels").map((panel) => ({
      panel,
      designation: textOf(partOf(panel, "designation")),
      section: textOf(partOf(panel, "section")),
    })),
    instruments: list("instruments").map((one) => ({
      id: textOf(partOf(one, "id")),
      calibrated: textOf(partOf(one, "calibrated")),
      due: textOf(partOf(one, "due")),
    })),
    criteria: list("criteria").map(appliesOf),
    checkItems: list("checkItems").map((one) => ({
      ...appliesOf(one),
      kind: textOf(partOf(one, "kind")),
      item: textOf(partOf(one, "item")),
    })),
    leaveOut: textsOf(partOf(json, "leaveOut"), "kind"),
    furtherRecords: textsOf(partOf(json, "furtherRecords"), "kind"),
    inspectionPoints: textsOf(partOf(json, "inspectionPoints"), "activity"),
    drawings: textsOf(partOf(partOf(json, "project"), "drawings"), "number"),
    ratings: {
      voltagekV: numberOf(partOf(ratings, "voltagekV")),
      operatingkV: numberOf(partOf(ratings, "operatingkV")),
    },
  };
};

const appliesOf = (one: unknown) => ({ applies: listOf(partOf(one, "applies")).map(textOf) });

/** What the items of a panel's list are called. */
function namesIn(panel: unknown, list: string, key: string): string[] {
  const keys = NAMED_BY[key] ?? [key];
  return listOf(partOf(panel, list)).map((item) =>
    keys.map((one) => textOf(partOf(item, one))).join(" "),
  );
}

/** What is wrong between the parts of a lineup: names given twice, names that nothing has, dates in the wrong order. */
export function crossChecks(json: unknown): OwnIssue[] {
  const read = loosely(json);
  const { panels, instruments, ratings } = read;
  const sections = new Set(panels.map(({ section }) => bare(section)));
  const known = new Set([...sections, ...panels.map(({ designation }) => bare(designation))]);
  return [
    ...(ratings.voltagekV !== undefined &&
    ratings.operatingkV !== undefined &&
    ratings.operatingkV > ratings.voltagekV
      ? [
          {
            path: ["ratings", "operatingkV"],
            message: aboveRated(ratings.operatingkV, ratings.voltagekV),
          },
        ]
      : []),
    ...twice(panels.map(({ designation }) => designation)).map(({ index, first, name }) => ({
      path: ["panels", index, "designation"],
      message: sameName("panels", name, `panels[${first}]`),
    })),
    ...panels.flatMap(({ designation }, index) =>
      bare(designation) && sections.has(bare(designation))
        ? [
            {
              path: ["panels", index, "designation"],
              message: ({ lineup }: Told) => lineup.sectionName(designation),
            },
          ]
        : [],
    ),
    ...panels.flatMap(({ panel }, index) =>
      LISTS.flatMap(([list, key]) =>
        twice(namesIn(panel, list, key)).map(({ index: at, first, name }) => ({
          path: ["panels", index, list, at, key],
          message: sameName(list, name, `${list}[${first}]`),
        })),
      ),
    ),
    ...twice(instruments.map(({ id }) => id)).map(({ index, first, name }) => ({
      path: ["instruments", index, "id"],
      message: sameName("instruments", name, `instruments[${first}]`),
    })),
    ...instruments.flatMap(({ calibrated, due }, index) =>
      calibrated && due && due < calibrated
        ? [
            {
              path: ["instruments", index, "due"],
              message: ({ lineup }: Told) => lineup.dueBefore(due, calibrated),
            },
          ]
        : [],
    ),
    ...(["criteria", "checkItems"] as const).flatMap((part) =>
      read[part].flatMap(({ applies }, index) =>
        applies.flatMap((target, at) =>
          known.has(bare(target))
            ? []
            : [
                {
                  path: [part, index, "applies", at],
                  message: ({ lineup }: Told) => lineup.noTarget(target),
                },
              ],
        ),
      ),
    ),
    ...twice(read.drawings).map(({ index, first, name }) => ({
      path: ["project", "drawings", index, "number"],
      message: ({ lineup }: Told) => lineup.sameDrawing(name, `drawings[${first}]`),
    })),
    ...twice(read.leaveOut).map(({ index, first, name }) => ({
      path: ["leaveOut", index, "kind"],
      message: ({ lineup }: Told) => lineup.leftOutTwice(name, `leaveOut[${first}]`),
    })),
    ...furtherIssues(read),
    ...twice(read.inspectionPoints).map(({ index, first, name }) => ({
      path: ["inspectionPoints", index, "activity"],
      message: sameName("inspectionPoints", name, `inspectionPoints[${first}]`),
    })),
    ...twice(read.checkItems.map(({ kind, item }) => (item ? `${kind}: ${item}` : ""))).map(
      ({ index, first, name }) => ({
        path: ["checkItems", index, "item"],
        message: sameName("checkItems", name, `checkItems[${first}]`),
      }),
    ),
  ];
}

const aboveRated =
  (operatingkV: number, ratedkV: number): Said<Told> =>
  ({ lineup }) =>
    lineup.aboveRated(operatingkV, ratedkV);

/** Two items of a list have one name; the other stands at its place. */
const sameName =
  (items: keyof Told["lineup"]["items"], name: string, other: string): Said<Told> =>
  ({ lineup }) =>
    lineup.sameName(lineup.items[items], name, other);

/** Further records that are asked for twice, or left out as well. */
function furtherIssues({
  furtherRecords,
  leaveOut,
}: Pick<ReturnType<typeof loosely>, "furtherRecords" | "leaveOut">): OwnIssue[] {
  const left = new Set(leaveOut.map(bare));
  return [
    ...twice(furtherRecords).map(({ index, first, name }) => ({
      path: ["furtherRecords", index, "kind"],
      message: ({ lineup }: Told) => lineup.askedTwice(name, `furtherRecords[${first}]`),
    })),
    ...furtherRecords.flatMap((kind, index) =>
      bare(kind) && left.has(bare(kind))
        ? [
            {
              path: ["furtherRecords", index, "kind"],
              message: ({ lineup }: Told) => lineup.leftOutToo(kind),
            },
          ]
        : [],
    ),
  ];
}

/** Each name that stands a second time, with where it stood first. Blank names are the schema's matter. */
function twice(names: readonly string[]): { index: number; first: number; name: string }[] {
  const seen = new Map<string, number>();
  return names.flatMap((name, index) => {
    const first = seen.get(bare(name));
    if (!bare(name)) return [];
    if (first !== undefined) return [{ index, first, name }];
    seen.set(bare(name), index);
    return [];
  });
}
