import { memoizeFor } from "../quantities/memoizeFor";
import { quoted } from "./columns/common";
import { type Column, type Reference, type Row, sameWord } from "./kind";

/** The numbers of a row that no sound object measures: not connected, not read, or in another unit. */
export const tooSmallIn = (columns: readonly Column[], row: Row): Column[] =>
  boundedIn(columns).filter(({ id, above }) => {
    const cell = row[id];
    return above && typeof cell === "number" && cell <= above.value && !isExcepted(above, row);
  });

/** Asked for by every row of a kind. */
const boundedIn = memoizeFor((columns: readonly Column[]) =>
  columns.filter(({ above }) => above !== undefined),
);

/** The same as the formula's tests of which one being true leaves the row inconclusive. */
export const tooSmallBy = (columns: readonly Column[], ref: Reference): string[] =>
  columns.flatMap(({ id, above }) => {
    if (above === undefined) return [];
    const { value, except } = above;
    // A spreadsheet takes any text for more than any number.
    const others = except?.words.map((word) => `${ref(except.column)}<>${quoted(word)}`) ?? [];
    return [`AND(${[`ISNUMBER(${ref(id)})`, `${ref(id)}<=${value}`, ...others].join(",")})`];
  });

const isExcepted = ({ except }: NonNullable<Column["above"]>, row: Row): boolean =>
  except?.words.some((word) => sameWord(row[except.column], word)) ?? false;
