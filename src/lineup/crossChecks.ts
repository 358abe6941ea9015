import * as z from "zod/mini";
import { bare } from "./lineup";

const text = z.catch(z.string(), "");
const list = <T extends z.ZodMiniType>(item: T) =>
  z.catch(z.array(item), [] as z.output<z.ZodMiniArray<T>>);
/** An object of which every part that has the wrong shape, or the whole of it, is as good as blank. */
const loosely = <T extends Record<string, z.ZodMiniType>>(shape: T) => {
  const object = z.object(shape);
  return z.catch(object, () => object.parse({}));
};

const named = z.pipe(
  loosely({ name: text }),
  z.transform(({ name }) => name),
);
const designated = z.pipe(
  loosely({ designation: text }),
  z.transform(({ designation }) => designation),
);
const element = z.pipe(
  loosely({ relay: text, element: text }),
  z.transform(({ relay, element }) => `${relay} ${element}`),
);

const measured = z.pipe(
  loosely({ quantity: text }),
  z.transform(({ quantity }) => quantity),
);
const setting = z.pipe(
  loosely({ relay: text, parameter: text }),
  z.transform(({ relay, parameter }) => `${relay} ${parameter}`),
);

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

/** As much of a lineup as has the right shape, so that these checks run beside the schema's own. */
const loose = loosely({
  panels: list(
    loosely({
      designation: text,
      section: text,
      joints: list(named),
      currentTransformers: list(named),
      voltageTransformers: list(named),
      meters: list(designated),
      protection: list(element),
      cables: list(designated),
      motion: list(measured),
      arresters: list(designated),
      schemes: list(designated),
      relaySettings: list(setting),
      arcSensors: list(designated),
      batteries: list(designated),
      heaters: list(designated),
    }),
  ),
  instruments: list(loosely({ id: text, calibrated: text, due: text })),
  criteria: list(loosely({ applies: list(text) })),
  leaveOut: list(loosely({ kind: text })),
  furtherRecords: list(loosely({ kind: text })),
  inspectionPoints: list(loosely({ activity: text })),
  checkItems: list(loosely({ kind: text, item: text, applies: list(text) })),
  project: loosely({ drawings: list(loosely({ number: text })) }),
  ratings: loosely({
    voltagekV: z.catch(z.optional(z.number()), undefined),
    operatingkV: z.catch(z.optional(z.number()), undefined),
  }),
});

interface Issue {
  readonly path: PropertyKey[];
  readonly message: string;
}

/** What is wrong between the parts of a lineup: names given twice, names that nothing has, dates in the wrong order. */
export function crossChecks(json: unknown): Issue[] {
  const read = loose.parse(json);
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
    ...panels.flatMap((panel, index) =>
      LISTS.flatMap(([list, items, key]) =>
        twice(panel[list]).map(({ index: at, first, name }) => ({
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
    ...twice(read.project.drawings.map(({ number }) => number)).map(({ index, first, name }) => ({
      path: ["project", "drawings", index, "number"],
      message: `two drawings are numbered "${name}" (the other is drawings[${first}]); list each once, with its latest approved revision`,
    })),
    ...twice(read.leaveOut.map(({ kind }) => kind)).map(({ index, first, name }) => ({
      path: ["leaveOut", index, "kind"],
      message: `"${name}" is left out twice (the other is leaveOut[${first}]); give one reason`,
    })),
    ...furtherIssues(read),
    ...twice(read.inspectionPoints.map(({ activity }) => activity)).map(
      ({ index, first, name }) => ({
        path: ["inspectionPoints", index, "activity"],
        message: `two inspection points are named "${name}" (the other is inspectionPoints[${first}]); each needs a name of its own`,
      }),
    ),
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
}: Pick<z.output<typeof loose>, "furtherRecords" | "leaveOut">): Issue[] {
  const left = new Set(leaveOut.map(({ kind }) => bare(kind)));
  return [
    ...twice(furtherRecords.map(({ kind }) => kind)).map(({ index, first, name }) => ({
      path: ["furtherRecords", index, "kind"],
      message: `"${name}" is asked for twice (the other is furtherRecords[${first}]); once is enough`,
    })),
    ...furtherRecords.flatMap(({ kind }, index) =>
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
