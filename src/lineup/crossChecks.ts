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

/** Lists of a panel whose items have names, what an item is called, and the key that names it. */
const LISTS = [
  ["joints", "groups of joints", "name"],
  ["currentTransformers", "cores", "name"],
  ["voltageTransformers", "windings", "name"],
  ["meters", "meters", "designation"],
  ["protection", "elements", "element"],
  ["cables", "cables", "designation"],
  ["motion", "quantities of motion", "quantity"],
  ["arresters", "arresters", "designation"],
  ["schemes", "schemes", "designation"],
  ["relaySettings", "settings", "parameter"],
  ["arcSensors", "arc sensors", "designation"],
  ["batteries", "batteries", "designation"],
  ["heaters", "heaters", "designation"],
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

interface Issue {
  readonly path: PropertyKey[];
  readonly message: string;
}

/** What is wrong between the parts of a lineup: names given twice, names that nothing has, dates in the wrong order. */
export function crossChecks(json: unknown): Issue[] {
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
            message: `${ratings.operatingkV} kV is above the rated voltage of ${ratings.voltagekV} kV; gear is operated at its rated voltage or below`,
          },
        ]
      : []),
    ...twice(panels.map(({ designation }) => designation)).map(({ index, first, name }) => ({
      path: ["panels", index, "designation"],
      message: `two panels are named "${name}" (the other is panels[${first}]); each needs a name of its own`,
    })),
    ...panels.flatMap(({ designation }, index) =>
      bare(designation) && sections.has(bare(designation))
        ? [
            {
              path: ["panels", index, "designation"],
              message: `"${designation}" is also the name of a bus section; a panel and a section need names apart`,
            },
          ]
        : [],
    ),
    ...panels.flatMap(({ panel }, index) =>
      LISTS.flatMap(([list, items, key]) =>
        twice(namesIn(panel, list, key)).map(({ index: at, first, name }) => ({
          path: ["panels", index, list, at, key],
          message: `two ${items} are named "${name}" (the other is ${list}[${first}]); each needs a name of its own`,
        })),
      ),
    ),
    ...twice(instruments.map(({ id }) => id)).map(({ index, first, name }) => ({
      path: ["instruments", index, "id"],
      message: `two instruments are named "${name}" (the other is instruments[${first}]); each needs a name of its own`,
    })),
    ...instruments.flatMap(({ calibrated, due }, index) =>
      calibrated && due && due < calibrated
        ? [
            {
              path: ["instruments", index, "due"],
              message: `due on ${due}, before it was calibrated on ${calibrated}`,
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
                  message: `"${target}" is neither a panel nor a bus section of this lineup`,
                },
              ],
        ),
      ),
    ),
    ...twice(read.drawings).map(({ index, first, name }) => ({
      path: ["project", "drawings", index, "number"],
      message: `two drawings are numbered "${name}" (the other is drawings[${first}]); list each once, with its latest approved revision`,
    })),
    ...twice(read.leaveOut).map(({ index, first, name }) => ({
      path: ["leaveOut", index, "kind"],
      message: `"${name}" is left out twice (the other is leaveOut[${first}]); give one reason`,
    })),
    ...furtherIssues(read),
    ...twice(read.inspectionPoints).map(({ index, first, name }) => ({
      path: ["inspectionPoints", index, "activity"],
      message: `two inspection points are named "${name}" (the other is inspectionPoints[${first}]); each needs a name of its own`,
    })),
    ...twice(read.checkItems.map(({ kind, item }) => (item ? `${kind}: ${item}` : ""))).map(
      ({ index, first, name }) => ({
        path: ["checkItems", index, "item"],
        message: `two check items are named "${name}" (the other is checkItems[${first}]); each needs a name of its own`,
      }),
    ),
  ];
}

/** Further records that are asked for twice, or left out as well. */
function furtherIssues({
  furtherRecords,
  leaveOut,
}: Pick<ReturnType<typeof loosely>, "furtherRecords" | "leaveOut">): Issue[] {
  const left = new Set(leaveOut.map(bare));
  return [
    ...twice(furtherRecords).map(({ index, first, name }) => ({
      path: ["furtherRecords", index, "kind"],
      message: `"${name}" is asked for twice (the other is furtherRecords[${first}]); once is enough`,
    })),
    ...furtherRecords.flatMap((kind, index) =>
      bare(kind) && left.has(bare(kind))
        ? [
            {
              path: ["furtherRecords", index, "kind"],
              message: `"${kind}" is left out as well; take it out of one of the two`,
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
