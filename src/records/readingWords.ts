import { isBlank, type RecordKind, type Row, verdictOf } from "./kind";

/**
 * What was read on a row and what it came to, in one line.
 *
 * @param row with its result
 * @example "R µΩ 91.4; Fail"
 */
export const readingWords = ({ columns }: Pick<RecordKind, "columns">, row: Row): string =>
  [
    ...columns
      .filter(
        ({ id, role, need, accepts }) =>
          role === "entry" && (need === "reading" || accepts?.type === "list") && !isBlank(row[id]),
      )
      .map(({ id, header }) => `${header} ${row[id]}`),
    verdictOf(row),
  ].join("; ");
