import { NAMES, nameOf } from "./renamed";

type Draft = Readonly<Record<string, unknown>>;

/** Stands in a set for the designation of the panel that has it: `{panel}-W1`. */
export const OWN_DESIGNATION = "{panel}";

/** Equipment of one list that some panels have alike, but for their own designation in it. */
export interface EquipmentSet {
  /** Its entries; each is known as what it is called now, by which it is found again in a panel. */
  readonly entries: readonly Draft[];
  /** Places in the row of the panels that have it. */
  readonly panels: readonly number[];
}

/** Texts within a value changed; everything else as it is. */
const withTexts = (value: unknown, change: (text: string) => string): unknown => {
  if (typeof value === "string") return change(value);
  if (Array.isArray(value)) return value.map((one) => withTexts(one, change));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, one]) =>
      one === undefined || one === null || one === "" ? [] : [[key, withTexts(one, change)]],
    ),
  );
};

const listOf = (panel: Draft, list: string): readonly Draft[] =>
  Array.isArray(panel[list]) ? (panel[list] as Draft[]) : [];

const called = (entry: Draft, list: string): string | undefined => {
  const names = (NAMES as Readonly<Record<string, readonly string[]>>)[list];
  return names && nameOf(entry, names);
};

/** A designation shorter than this may be any number in a name, and is left there. */
const SHORTEST = 2;

/** A text with the panel's own designation taken out of it, where that stands there as a word. */
const withoutOwn = (text: string, designation: string): string => {
  const pieces = text.split(designation);
  return pieces.slice(1).reduce((before, after) => {
    const isWord = !/[\p{L}\p{N}]$/u.test(before) && !/^[\p{L}\p{N}]/u.test(after);
    return `${before}${isWord ? OWN_DESIGNATION : designation}${after}`;
  }, pieces[0] ?? "");
};

/** A panel's list as a set has it: without its own designation, and without the names of before. */
const entriesOf = (panel: Draft, list: string): readonly Draft[] => {
  const designation = String(panel.designation ?? "");
  const isOwn = designation.length >= SHORTEST;
  return listOf(panel, list).map(
    ({ knownAs: _, ...entry }) =>
      withTexts(entry, (text) => (isOwn ? withoutOwn(text, designation) : text)) as Draft,
  );
};

/** Facts in one order, whatever order they were given in. */
const byKey = (_key: string, value: unknown): unknown =>
  typeof value === "object" && value !== null && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1)))
    : value;

/**
 * The sets of equipment that panels have in one of their lists, the most common first. Panels that have
 * nothing there are in none.
 *
 * @param panels as a lineup or its form has them
 * @param list such as `cables`
 */
export function equipmentSets(panels: readonly Draft[], list: string): EquipmentSet[] {
  const found = new Map<string, { entries: readonly Draft[]; panels: number[] }>();
  panels.forEach((panel, at) => {
    const entries = entriesOf(panel, list);
    if (entries.length === 0) return;
    const key = JSON.stringify(entries, byKey);
    const same = found.get(key);
    if (same) same.panels.push(at);
    else found.set(key, { entries, panels: [at] });
  });
  return [...found.values()]
    .map(({ entries, panels }) => ({
      panels,
      entries: entries.map((entry) => {
        const knownAs = called(entry, list);
        return knownAs === undefined ? entry : { ...entry, knownAs };
      }),
    }))
    .sort((one, other) => other.panels.length - one.panels.length);
}

/**
 * What a panel's list is with a set in place of what it has. An entry that the panel has under the name that
 * the set's had keeps its readings: it stays known by the name that it had first.
 *
 * @example withSet({ designation: "K1" }, "cables", [{ designation: "{panel}-W1" }]) // [{ designation: "K1-W1" }]
 */
export function withSet(panel: Draft, list: string, entries: readonly Draft[]): Draft[] {
  const designation = String(panel.designation ?? "");
  const own = (text: string) => text.replaceAll(OWN_DESIGNATION, designation);
  const had = listOf(panel, list);
  return entries.map(({ knownAs, ...entry }) => {
    const before = had.find(
      (one) => knownAs !== undefined && called(one, list) === own(String(knownAs)),
    );
    const first = before && (before.knownAs ?? called(before, list));
    return {
      ...(withTexts(entry, own) as Draft),
      ...(first === undefined ? {} : { knownAs: first }),
    };
  });
}
