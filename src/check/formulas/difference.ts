import { said } from "../context";
import type { Canonical, Ref } from "./canonical";

/** What makes a formula of the user's own differ from ours, in words, each a predicate of the cell. */
export function difference(
  own: Canonical,
  ours: Canonical,
  rowName: (offset: number) => string,
): string[] {
  const away = own.refs.filter((ref) => ref.to === "cell" && !ref.fixed && ref.offset !== 0);
  const fixed = own.refs.filter((ref) => ref.to === "cell" && ref.fixed);
  const [mine, theirs] = [headers(ours.refs), headers(own.refs)];
  const lost = mine.filter((header) => !theirs.includes(header));
  const extra = theirs.filter((header) => !mine.includes(header));
  const newNumbers = unique(own.numbers.filter((one) => !ours.numbers.includes(one)));
  const lostNumbers = ours.numbers.filter((one) => !own.numbers.includes(one));
  const sameShape = own.text.length > 0 && shape(own) === shape(ours);
  const named = (list: readonly string[]) => list.map((header) => `"${header}"`).join(", ");
  return [
    ...unique(
      away.map((ref) =>
        ref.to === "cell" ? `takes "${ref.header}" of another row (${rowName(ref.offset)})` : "",
      ),
    ),
    ...unique(
      fixed.map((ref) =>
        ref.to === "cell"
          ? `takes "${ref.header}" from the one cell ${ref.text} on every row, held by a dollar sign`
          : "",
      ),
    ),
    ...unique(
      own.refs.map((ref) =>
        ref.to === "elsewhere" && ref.moves
          ? `takes ${ref.text} from outside the row, which goes down with each row that the formula is filled to, as no dollar sign holds it`
          : "",
      ),
    ).filter((text) => text !== ""),
    ...(lost.length > 0 && extra.length > 0
      ? [`takes ${named(extra)} in place of ${named(lost)}`]
      : lost.length > 0 && newNumbers.length > 0
        ? [`holds the fixed number ${newNumbers.map(said).join(", ")} in place of ${named(lost)}`]
        : lost.length > 0 && own.refs.length > 0
          ? [`does not take ${named(lost)}`]
          : []),
    ...(own.refs.length === 0
      ? [
          ours.refs.length === 0
            ? `holds ${said(newNumbers[0])} fixed, in place of ${said(lostNumbers[0])}`
            : `takes nothing from its row${newNumbers.length > 0 ? `: ${newNumbers.map(said).join(", ")} is fixed` : ""}`,
        ]
      : []),
    ...(sameShape && newNumbers.length > 0 && lost.length === 0
      ? [
          `holds ${newNumbers.map(said).join(", ")} where ours holds ${lostNumbers.map(said).join(", ")}`,
        ]
      : []),
    ...(sameShape ? turned(own, ours) : []),
  ];
}

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

/** A comparison turned round: least for most, or the sign. */
function turned(own: Canonical, ours: Canonical): string[] {
  const words = own.words.filter((word) => !ours.words.includes(word));
  const lost = ours.words.filter((word) => !own.words.includes(word));
  const signs = (text: string) => (text.match(/[<>]=?/g) ?? []).join(" ");
  return [
    ...(words.length > 0 && lost.length > 0
      ? [`says "${words.join('", "')}" where ours says "${lost.join('", "')}"`]
      : []),
    ...(signs(own.text) !== signs(ours.text) ? ["compares in another direction than ours"] : []),
  ];
}
