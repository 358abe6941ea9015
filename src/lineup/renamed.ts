import type { Lineup } from "./lineup";

type Panel = Lineup["panels"][number];
/** An entry of a lineup that has a name: a panel, or an entry of one of its lists. */
type Entry = Readonly<Record<string, unknown>> & { readonly knownAs?: string | undefined };

/** The lists of a panel whose entries have names of their own, and the facts that make a name. */
export const NAMES = {
  currentTransformers: ["name"],
  voltageTransformers: ["name"],
  meters: ["designation"],
  protection: ["relay", "element"],
  cables: ["designation"],
  joints: ["name"],
  arresters: ["designation"],
  schemes: ["designation"],
  relaySettings: ["relay", "parameter"],
  arcSensors: ["designation"],
  batteries: ["designation"],
  heaters: ["designation"],
} as const satisfies Partial<Record<keyof Panel, readonly string[]>>;
const NAMED_LISTS = Object.keys(NAMES) as (keyof typeof NAMES)[];
const PANEL_NAME = ["designation"] as const;

export const nameOf = (entry: Entry, names: readonly string[]): string =>
  names.map((id) => String(entry[id] ?? "").trim()).join(" ");

/**
 * For each entry of before, the entry that it is now: the one that says that it is known as that, or is
 * called as it still is. Undefined where it is gone.
 */
function matches<E extends Entry>(
  before: readonly E[],
  now: readonly E[],
  names: readonly string[],
): (E | undefined)[] {
  const free = new Set(now);
  const taken = (is: (entry: E) => boolean): E | undefined => {
    const found = [...free].find(is);
    if (found) free.delete(found);
    return found;
  };
  const found = new Map<E, E>();
  for (const byWhatTheySay of [true, false])
    for (const entry of before) {
      if (found.has(entry)) continue;
      const name = nameOf(entry, names);
      const match = taken(
        byWhatTheySay
          ? ({ knownAs }) => knownAs !== undefined && knownAs === (entry.knownAs ?? name)
          : (other) => nameOf(other, names) === name,
      );
      if (match) found.set(entry, match);
    }
  return before.map((entry) => found.get(entry));
}

/** An entry by the names of what it is now. */
const withNames = <E extends Entry>(entry: E, now: E | undefined, names: readonly string[]): E =>
  now ? { ...entry, ...Object.fromEntries(names.map((id) => [id, now[id]])) } : entry;

const renamedList = <E extends Entry>(
  before: readonly E[],
  now: readonly E[],
  names: readonly string[],
): E[] => {
  const found = matches(before, now, names);
  return before.map((entry, at) => withNames(entry, found[at], names));
};

function renamedPanel(before: Panel, now: Panel | undefined): Panel {
  if (!now) return before;
  const lists = NAMED_LISTS.map((list) => [
    list,
    renamedList(before[list] as readonly Entry[], now[list] as readonly Entry[], NAMES[list]),
  ]);
  const device = (own: "breaker" | "earthingSwitch") =>
    before[own] && now[own] ? { [own]: { ...before[own], designation: now[own].designation } } : {};
  return {
    ...withNames(before, now, PANEL_NAME),
    ...device("breaker"),
    ...device("earthingSwitch"),
    ...Object.fromEntries(lists),
  };
}

/**
 * A lineup as it was, under the names that its panels, breakers, cores, cables and the rest of its
 * equipment have now. An entry is known again by `knownAs`, the name that it had first, or by its name.
 *
 * @example renamed(before, { ...before, panels: [{ ...before.panels[0], designation: "=H11", knownAs: "=H01" }] })
 */
export function renamed(before: Lineup, now: Lineup): Lineup {
  const found = matches<Panel>(before.panels, now.panels, PANEL_NAME);
  const called = new Map(
    before.panels.map(({ designation }, at) => [
      designation,
      found[at]?.designation ?? designation,
    ]),
  );
  return {
    ...before,
    panels: before.panels.map((panel, at) => renamedPanel(panel, found[at])),
    criteria: before.criteria.map(({ applies, ...criterion }) => ({
      ...criterion,
      ...(applies ? { applies: applies.map((object) => called.get(object) ?? object) } : {}),
    })),
  };
}

type Draft = Record<string, unknown>;

/** The project's criteria with panels that are called otherwise now by their names of now. */
export function criteriaRenamed(criteria: readonly Draft[], panels: readonly Draft[]): Draft[] {
  const called = new Map(
    panels.flatMap(({ knownAs, designation }) =>
      knownAs === undefined ? [] : [[knownAs, designation] as const],
    ),
  );
  const standing = new Set(panels.map(({ designation }) => designation));
  return criteria.map(({ applies, ...criterion }) => ({
    ...criterion,
    ...(Array.isArray(applies)
      ? { applies: applies.map((name) => (standing.has(name) ? name : (called.get(name) ?? name))) }
      : {}),
  }));
}

/** A lineup's panels with every entry's first name, which it keeps whatever it is called next. */
export const withFirstNames = (panels: readonly Draft[]): Draft[] =>
  panels.map((panel) => ({
    ...panel,
    knownAs: panel.knownAs ?? nameOf(panel, PANEL_NAME),
    ...ofLists(panel, (entry, names) => ({
      ...entry,
      knownAs: entry.knownAs ?? nameOf(entry, names),
    })),
  }));

/** A copy of a panel, or of an entry of its lists, that is something new: known by no name of before. */
export function withoutFirstNames({ knownAs: _, ...entry }: Draft): Draft {
  return { ...entry, ...ofLists(entry, ({ knownAs: _, ...one }) => one) };
}

/**
 * Panels as a lineup keeps them: the first name only where it is another than the name now, or where
 * another entry goes by that name, which then is one of its own.
 */
export const withFirstNamesKept = (panels: readonly Draft[]): Draft[] =>
  keptIn(panels, PANEL_NAME).map((panel) => ({
    ...panel,
    ...Object.fromEntries(
      NAMED_LISTS.flatMap((list) =>
        Array.isArray(panel[list]) ? [[list, keptIn(panel[list] as Draft[], NAMES[list])]] : [],
      ),
    ),
  }));

function keptIn(entries: readonly Draft[], names: readonly string[]): Draft[] {
  const renamed = new Set(
    entries.flatMap(({ knownAs, ...entry }) =>
      knownAs !== undefined && knownAs !== nameOf(entry, names) ? [String(knownAs)] : [],
    ),
  );
  return entries.map(({ knownAs, ...entry }) => {
    const name = nameOf(entry, names);
    if (knownAs !== undefined && knownAs !== name) return { ...entry, knownAs };
    return renamed.has(name) ? { ...entry, knownAs: unused(name, renamed) } : entry;
  });
}

const unused = (name: string, taken: ReadonlySet<string>): string => {
  let count = 2;
  while (taken.has(`${name} (${count})`)) count += 1;
  return `${name} (${count})`;
};

const ofLists = (panel: Draft, change: (entry: Draft, names: readonly string[]) => Draft): Draft =>
  Object.fromEntries(
    NAMED_LISTS.flatMap((list) =>
      Array.isArray(panel[list])
        ? [[list, (panel[list] as Draft[]).map((entry) => change(entry, NAMES[list]))]]
        : [],
    ),
  );
