import type { FindingsText } from "../../messages/messages";
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
}

/** In which words a formula departs from ours. */
type Text = FindingsText["rules"]["own-formula"];

/** What makes a formula of the user's own differ from ours, in words, each a predicate of the cell. */
export function difference(
  own: Canonical,
  ours: Canonical,
  rowName: (offset: number) => string,
  text: Text,
): string[] {
  const [mine, theirs] = [headers(ours.refs), headers(own.refs)];
  const departure: Departure = {
    own,
    ours,
    lost: mine.filter((header) => !theirs.includes(header)),
    extra: theirs.filter((header) => !mine.includes(header)),
    newNumbers: unique(own.numbers.filter((number) => !ours.numbers.includes(number))),
  };
  const sameShape = own.text.length > 0 && shape(own) === shape(ours);
  return [
    ...unique(own.refs.flatMap((ref) => misplaced(ref, rowName, text))),
    ...otherColumns(departure, text),
    ...nothingTaken(departure, text),
    ...(sameShape ? otherNumbers(departure, text) : []),
    ...(sameShape ? turned(own, ours, text) : []),
  ];
}

/** A reference that does not go to the cell's own row. */
const misplaced = (ref: Ref, rowName: (offset: number) => string, text: Text): string[] => {
  if (ref.to === "elsewhere") return ref.moves ? [text.outsideRow(ref.text)] : [];
  if (ref.to !== "cell") return [];
  if (ref.fixed) return [text.fixedCell(ref.header, ref.text)];
  return ref.offset === 0 ? [] : [text.otherRow(ref.header, rowName(ref.offset))];
};

const otherColumns = ({ own, lost, extra, newNumbers }: Departure, text: Text): string[] => {
  if (lost.length === 0) return [];
  if (extra.length > 0) return [text.otherColumns(extra, lost)];
  if (newNumbers.length > 0) return [text.numberForColumn(newNumbers.map(said), lost)];
  return own.refs.length > 0 ? [text.columnsNotTaken(lost)] : [];
};

const nothingTaken = ({ own, ours, newNumbers }: Departure, text: Text): string[] => {
  if (own.refs.length > 0) return [];
  if (ours.refs.length > 0) return [text.nothingTaken(newNumbers.map(said))];
  const lost = ours.numbers.find((number) => !own.numbers.includes(number));
  return [text.otherConstant(said(newNumbers[0]), said(lost))];
};

/** Numbers that are others in a formula of the same shape, each at its place: one may stand in it more than once. */
const otherNumbers = ({ own, ours, lost }: Departure, text: Text): string[] => {
  const others = exchanged(own.numbers, ours.numbers);
  return others.length > 0 && lost.length === 0
    ? [
        text.otherNumbers(
          unique(others.map(([number]) => said(number))),
          unique(others.map(([, number]) => said(number))),
        ),
      ]
    : [];
};

/** What stands in one list where another has something else. */
const exchanged = <T>(own: readonly T[], ours: readonly T[]): (readonly [T, T])[] =>
  own.flatMap((part, place) => {
    const before = ours[place];
    return before === undefined || before === part ? [] : [[part, before] as const];
  });

/** Numbers and functions in a formula of the user's own that ours does without, where the rest tells no more. */
export function additions(own: Canonical, ours: Canonical, text: Text): string[] {
  const numbers = unique(own.numbers.filter((number) => !ours.numbers.includes(number)));
  const functions = unique(own.functions.filter((name) => !ours.functions.includes(name)));
  return [numbers.map(said), functions].flatMap((parts) =>
    parts.length > 0 ? [text.addition(parts)] : [],
  );
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

/** A comparison turned round: least for most, or the sign. A formula may compare several times, and one be turned. */
function turned(own: Canonical, ours: Canonical, text: Text): string[] {
  const words = exchanged(own.words, ours.words);
  const signs = (formula: string) => (formula.match(/[<>]=?/g) ?? []).join(" ");
  return [
    ...(words.length > 0
      ? [
          text.otherWords(
            unique(words.map(([word]) => word)),
            unique(words.map(([, word]) => word)),
          ),
        ]
      : []),
    ...(signs(own.text) === signs(ours.text) ? [] : [text.otherDirection]),
  ];
}
