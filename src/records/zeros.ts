import { memoizeFor } from "../quantities/memoizeFor";
import { quoted } from "./columns/common";
import type { Column, Reference, Row } from "./kind";

/** The readings of a row that are nothing, or less, where no sound object measures that: not connected, or not read. */
export const zerosIn = (columns: readonly Column[], row: Row): Column[] =>
  aboveZeroIn(columns).filter(({ id, aboveZero }) => {
    const cell = row[id];
    return aboveZero && typeof cell === "number" && cell <= 0 && !isExcused(aboveZero, row);
  });

/** Asked for by every row of a kind. */
const aboveZeroIn = memoizeFor((columns: readonly Column[]) =>
  columns.filter(({ aboveZero }) => aboveZero !== undefined),
);

/** The same as the formula's tests of which one being true leaves the row inconclusive. */
export const zerosBy = (columns: readonly Column[], ref: Reference): string[] =>
  columns.flatMap(({ id, aboveZero }) => {
    if (aboveZero === undefined) return [];
    // A spreadsheet takes any text for more than any number.
    const isZero = `AND(ISNUMBER(${ref(id)}),${ref(id)}<=0`;
    if (aboveZero === true) return [`${isZero})`];
    const { column, words } = aboveZero;
    const others = words.map((word) => `${ref(column)}<>${quoted(word)}`);
    return [`${[isZero, ...others].join(",")})`];
  });

const isExcused = (aboveZero: NonNullable<Column["aboveZero"]>, row: Row): boolean =>
  aboveZero !== true &&
  aboveZero.words.some(
    (word) => word.toLowerCase() === String(row[aboveZero.column]).toLowerCase(),
  );
