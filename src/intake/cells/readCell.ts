import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import { answer, type Result, refuse } from "../../quantities/result";
import type { CellValue, Column } from "../../records/kind";
import type { ArrivalOptions } from "../place/arrival";
import type { RecordRows } from "../rows/recordRows";
import type { ExportTable } from "../table/exportTable";
import type { Written } from "../table/written";
import type { columnFor } from "../words/columnFor";
import { lostUnit } from "../words/lostUnit";
import type { DateOrder } from "../words/readDate";
import { waveAfter } from "../words/wave";
import { cellValue } from "./cellValue";

/** What a line has for each column of the record kind, also those that the table lacks. */
export const byColumn = (
  { kind }: RecordRows,
  written: ReadonlyMap<string, Written>,
  find: typeof columnFor,
): ReadonlyMap<Column, Written[]> => {
  const found = new Map<Column, Written[]>();
  for (const field of written.values()) {
    const column = find(kind, field.field);
    if (column === undefined) continue;
    const sofar = found.get(column);
    if (sofar) sofar.push(field);
    else found.set(column, [field]);
  }
  return found;
};

/** The one text for a column. An instrument may be named by its Id and its serial number at once. */
export const onlyOne = (
  column: Column,
  candidates: readonly Written[],
  instruments: NonNullable<ArrivalOptions["instruments"]>,
): Result<Written, Told> => {
  const [first, ...others] = candidates;
  if (first === undefined)
    return refuse("none", ({ intake }) => intake.cells.notGiven(column.header));
  if (column.id === "instrument") {
    const same = (one: string, other: string) =>
      one.trim().toLowerCase() === other.trim().toLowerCase();
    const known = candidates.flatMap(({ text }) =>
      instruments.filter(
        ({ id, serial }) => same(text, id) || (serial !== undefined && same(text, serial)),
      ),
    )[0];
    const named = candidates.find(({ field }) => field === "instrument") ?? first;
    return answer(known ? { ...named, text: known.id } : named);
  }
  const nearer = candidates.find(({ field }) => field === column.takesFirst);
  if (nearer) return answer(nearer);
  const other = others.find(({ text }) => text !== first.text);
  return other === undefined
    ? answer(first)
    : refuse("wrong", ({ intake }) =>
        intake.cells.twice(
          quoted(first.title),
          quoted(other.title),
          column.header,
          quoted(first.text),
          quoted(other.text),
        ),
      );
};

export const readCell = (
  { text, title, unit }: Written,
  column: Column,
  { decimal }: Pick<ExportTable, "decimal">,
  dates: DateOrder | undefined,
  wave: ArrivalOptions["wave"],
): Result<CellValue, Told> => {
  const lost =
    unit === undefined && column.unit !== undefined && lostUnit(text, title, column.unit);
  if (lost) return refuse("wrong", lost);
  const { plain, wave: after } = waveAfter(text);
  const stated = after ?? waveInTitle(title);
  if (wave && stated && stated !== wave && column.wave === "of the lineup")
    return refuse("wrong", ({ intake }) =>
      intake.cells.otherWave(quoted(after ? text : title), stated, wave),
    );
  const value = cellValue(after && stated === waveOf(column, wave, stated) ? plain : text, column, {
    unit: unit ?? (column.unitIn === undefined ? undefined : column.unit),
    decimal: decimal.mark,
    dates,
  });
  return value.ok || decimal.mark !== undefined || !/[.,]/.test(text) || column.unit === undefined
    ? value
    : refuse(value.kind, (words) =>
        words.intake.cells.withMark(value.say(words), decimal.evidence(words)),
      );
};

/** The kind of voltage that a column is of. */
const waveOf = (column: Column, lineup: ArrivalOptions["wave"], stated: string | undefined) =>
  column.wave === "of the lineup"
    ? lineup
    : (column.wave ?? "any") === "any"
      ? stated
      : column.wave;

const waveInTitle = (title: string) => /\b(?:V|kV)?\s*(AC|DC)\b/i.exec(title)?.[1]?.toUpperCase();
