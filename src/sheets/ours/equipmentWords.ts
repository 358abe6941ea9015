import { FIELDS, LISTS, labelOf, listNameOf } from "../../lineup/fields";

/** Where a fact stands in a panel: keys, and places in lists from 0. */
export type Path = readonly (string | number)[];

const BETWEEN = " · ";
const PANEL = "panels.";

/** What one entry of a panel's list is called: `Current transformer core`. */
const entryName = (list: string): string => {
  const [, one = list] = listNameOf(PANEL + list) ?? [];
  return one.slice(0, 1).toUpperCase() + one.slice(1);
};

/** Keys by what they are called: of a panel's lists, and of the facts of the panel and of each list. */
const LIST_KEYS: ReadonlyMap<string, string> = new Map(
  LISTS.flatMap((path) => {
    const list = path.slice(PANEL.length);
    return path.startsWith(PANEL) ? [[entryName(list), list] as const] : [];
  }),
);
const FACT_KEYS: ReadonlyMap<string, string> = new Map(
  FIELDS.filter(({ path }) => path.startsWith(PANEL)).map(({ path }) => {
    const key = path.slice(PANEL.length);
    const list = [...LIST_KEYS.values()].find((one) => key.startsWith(`${one}.`)) ?? "";
    return [`${list}${BETWEEN}${labelOf(path)}`, key];
  }),
);

const labelIn = (keys: readonly (string | number)[]): string => {
  const key = keys.join(".");
  return labelOf(PANEL + key) ?? key;
};

/**
 * A path in words; a place in a list counts from 1.
 *
 * @example inWords(["currentTransformers", 0, "primaryA"]) // "Current transformer core 1 · Primary, A"
 */
export const inWords = (path: Path): string => {
  const [list, at, ...rest] = path;
  if (typeof list !== "string" || typeof at !== "number") return labelIn(path);
  const [last] = rest.slice(-1);
  const [keys, place] = typeof last === "number" ? [rest.slice(0, -1), ` ${last + 1}`] : [rest, ""];
  return `${entryName(list)} ${at + 1}${BETWEEN}${labelIn([list, ...keys])}${place}`;
};

/**
 * The path that words mean.
 *
 * @example pathOf("Current transformer core 1 · Primary, A") // ["currentTransformers", 0, "primaryA"]
 */
export const pathOf = (words: string): Path => {
  const own = FACT_KEYS.get(`${BETWEEN}${words}`);
  if (own !== undefined) return own.split(".");
  const [entry = "", ...rest] = words.split(BETWEEN);
  const { name, place } = numbered(entry);
  const list = LIST_KEYS.get(name);
  if (list === undefined || place === undefined) return words.split(".");
  return [list, place, ...factIn(list, rest.join(BETWEEN))];
};

/** The keys of a fact in an entry of a list; where the fact is a list of numbers, with its place in that. */
const factIn = (list: string, words: string): Path => {
  const keysOf = (text: string) =>
    FACT_KEYS.get(`${list}${BETWEEN}${text}`)
      ?.slice(list.length + 1)
      .split(".");
  const whole = keysOf(words);
  if (whole) return whole;
  const { name, place } = numbered(words);
  return [...(keysOf(name) ?? [name]), ...(place === undefined ? [] : [place])];
};

/** A text that ends in a number, which counts from 1. */
const numbered = (text: string): { name: string; place: number | undefined } => {
  const [, name = text, place] = /^(.+) (\d+)$/.exec(text) ?? [];
  return { name, place: place === undefined ? undefined : Number(place) - 1 };
};
