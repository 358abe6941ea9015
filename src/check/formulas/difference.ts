import { said } from "../context";
import type { Canonical, Ref } from "./canonical";

/** How the columns and numbers of a formula of the user's own depart from ours. */
interface Departure {
  readonly own: Canonical;
  readonly ours: Canonical;
  /** Columns of ours that it does not take, and others that it takes. */
  readonly lost: readonly string[];
  readonly extra: readonly string[];
  readonly newNumbers: readonly number[];
  readonly lostNumbers: readonly number[];
}

/** What makes a formula of the user's own differ from ours, in words, each a predicate of the cell. */
export function difference(
  own: Canonical,
  ours: Canonical,
  rowName: (offset: number) => string,
): string[] {
  const [mine, theirs] = [headers(ours.refs), headers(own.refs)];
  const departure: Departure = {
    own,
    ours,
    lost: mine.filter((header) => !theirs.includes(header)),
    extra: theirs.filter((header) => !mine.includes(header)),
    newNumbers: unique(own.numbers.filter((number) => !ours.numbers.includes(number))),
    lostNumbers: ours.numbers.filter((number) => !own.numbers.includes(number)),
  };
  const sameShape = own.text.length > 0 && shape(own) === shape(ours);
  return [
    ...unique(own.refs.flatMap((ref) => misplaced(ref, rowName))),
    ...otherColumns(departure),
    ...nothingTaken(departure),
    ...(sameShape ? otherNumbers(departure) : []),
    ...(sameShape ? turned(own, ours) : []),
  ];
}

const named = (list: readonly string[]) => list.map((header) => `"${header}"`).join(", ");
const numbered = (list: readonly number[]) => list.map(said).join(", ");

/** A reference that does not go to the cell's own row. */
const misplaced = (ref: Ref, rowName: (offset: number) => string): string[] => {
  if (ref.to === "elsewhere")
    return ref.moves
      ? [
          `takes ${ref.text} from outside the row, which goes down with each row that the formula is filled to, as no dollar sign holds it`,
        ]
      : [];
  if (ref.to !== "cell") return [];
  if (ref.fixed)
    return [
      `takes "${ref.header}" from the one cell ${ref.text} on every row, held by a dollar sign`,
    ];
  return ref.offset === 0 ? [] : [`takes "${ref.header}" of another row (${rowName(ref.offset)})`];
};

const otherColumns = ({ own, lost, extra, newNumbers }: Departure): string[] => {
  if (lost.length === 0) return [];
  if (extra.length > 0) return [`takes ${named(extra)} in place of ${named(lost)}`];
  if (newNumbers.length > 0)
    return [`holds the fixed number ${numbered(newNumbers)} in place of ${named(lost)}`];
  return own.refs.length > 0 ? [`does not take ${named(lost)}`] : [];
};

const nothingTaken = ({ own, ours, newNumbers, lostNumbers }: Departure): string[] => {
  if (own.refs.length > 0) return [];
  if (ours.refs.length === 0)
    return [`holds ${said(newNumbers[0])} fixed, in place of ${said(lostNumbers[0])}`];
  const fixed = newNumbers.length > 0 ? `: ${numbered(newNumbers)} is fixed` : "";
  return [`takes nothing from its row${fixed}`];
};

const otherNumbers = ({ lost, newNumbers, lostNumbers }: Departure): string[] =>
  newNumbers.length > 0 && lost.length === 0
    ? [`holds ${numbered(newNumbers)} where ours holds ${numbered(lostNumbers)}`]
    : [];

/** Numbers and functions in a formula of the user's own that ours does without, where the rest tells no more. */
export function additions(own: Canonical, ours: Canonical): string[] {
  const numbers = unique(own.numbers.filter((one) => !ours.numbers.includes(one)));
  const functions = unique(own.functions.filter((name) => !ours.functions.includes(name)));
  return [
    ...(numbers.length > 0
      ? [`works with ${numbers.map(said).join(", ")}, which ours does not`]
      : []),
    ...(functions.length > 0 ? [`works with ${functions.join(", ")}, which ours does not`] : []),
  ];
}

const headers = (refs: readonly Ref[]): string[] =>
  unique(refs.flatMap((ref) => (ref.to === "elsewhere" ? [] : [ref.header])));

const unique = <T>(list: readonly T[]): T[] => [...new Set(list)];

/** A formula without its numbers, words and comparison signs. */
const shape = ({ text }: Canonical) =>
  text
    .replace(/"[^"]*"/g, '""')
    .replace(/\{[^}]*\}/g, "{}")
    .replace(/\d+(\.\d+)?(e[+-]?\d+)?/gi, "0")
    .replace(/[<>]=?/g, "<");

/** The words of a formula in their order; where two formulas have one shape, they pair off. */
const quotedIn = ({ text }: Canonical): string[] =>
  [...text.matchAll(/"([^"]*)"/g)].map(([, word = ""]) => word);

/** A comparison turned round: least for most, or the sign. */
function turned(own: Canonical, ours: Canonical): string[] {
  const [mine, theirs] = [quotedIn(own), quotedIn(ours)];
  const at = mine.flatMap((word, index) => (word === theirs[index] ? [] : [index]));
  const words = unique(at.map((index) => mine[index] ?? ""));
  const lost = unique(at.map((index) => theirs[index] ?? ""));
  const signs = (text: string) => (text.match(/[<>]=?/g) ?? []).join(" ");
  return [
    ...(words.length > 0 && lost.length > 0
      ? [`says "${words.join('", "')}" where ours says "${lost.join('", "')}"`]
      : []),
    ...(signs(own.text) !== signs(ours.text) ? ["compares in another direction than ours"] : []),
  ];
}
