import type { Told } from "../../messages/told";
import { convert } from "../../quantities/convert";
import { quoted } from "../../quantities/quoted";
import type { DecimalMark } from "../../quantities/reading/readNumber";
import { readReading } from "../../quantities/reading/readReading";
import { splitReading } from "../../quantities/reading/splitReading";
import { writeReading } from "../../quantities/reading/writeReading";
import { answer, type Result, refuse } from "../../quantities/result";
import type { Unit } from "../../quantities/units";
import type { CellValue, Column } from "../../records/kind";
import { type DateOrder, readDate } from "../words/readDate";
import { listWord } from "./listWord";

/** How the export writes its cells. */
export interface Writing {
  /** The unit of the export's column, where its title or row of units names one. */
  readonly unit?: Unit;
  readonly decimal?: DecimalMark;
  readonly dates?: DateOrder;
}

/** Longest text that is taken over: a name or a remark, not a document. */
const LONGEST = 250;

/**
 * The cell that an export's text becomes in a column of the records: a number in the column's unit
 * where it is exact, canonical text such as "> 2 TΩ" where it is a bound, a serial day, or text.
 *
 * A number without a unit, in its cell or its column, is refused: nothing is guessed.
 *
 * @example cellValue("5,2", insulationReading, { unit: "GΩ", decimal: "," }) // 5200
 */
export const cellValue = (
  text: string,
  column: Column,
  writing: Writing,
): Result<CellValue, Told> => {
  switch (column.accepts?.type) {
    case "number":
    case "reading":
      return measured(text, column, writing);
    case "date":
      return readDate(text, writing.dates);
    case "list":
      return listed(text, column.accepts);
    default:
      return plainText(text);
  }
};

const measured = (
  text: string,
  { header, unit: target, accepts }: Column,
  { unit, decimal }: Writing,
): Result<CellValue, Told> => {
  if (target === undefined) return unitless(text, header, unit, decimal);
  if (unit === undefined && splitReading(text)?.number && splitReading(text)?.unit === "")
    return refuse("wrong", ({ intake }) =>
      intake.cells.noUnit(quoted(text), header, header.replace(` ${target}`, ""), target),
    );
  const reading = readReading(clockMinutes(text, unit) ?? text, { unit: unit ?? target, decimal });
  if (!reading.ok) return reading;
  const value = convert(reading.value.value, reading.value.unit, target);
  if (!value.ok) return value;
  const exact = reading.value.bound === "exact";
  if (accepts?.type === "number") {
    const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = accepts;
    if (!exact)
      return refuse("wrong", ({ intake }) => intake.cells.onlyBound(quoted(text), header));
    if (value.value < least || value.value > most)
      return refuse("range", ({ intake }) =>
        intake.cells.outside(quoted(text), value.value, target, header, least, most),
      );
  } else if (value.value < 0)
    return refuse("range", ({ intake }) => intake.cells.negative(quoted(text), header));
  return answer(
    exact ? value.value : writeReading({ ...reading.value, value: value.value, unit: target }),
  );
};

/** Minutes and seconds, as `1:30` under a title that says `min:s`, in seconds. */
const clockMinutes = (text: string, unit: Unit | undefined): string | undefined => {
  const [, minutes, seconds] = (unit === "min" && /^\s*(\d{1,3}):([0-5]\d)\s*$/.exec(text)) || [];
  return seconds === undefined ? undefined : `${Number(minutes) * 60 + Number(seconds)} s`;
};

const HOURS = /^(?:h|hrs?|hours?|std|stunden?|heures?|horas?)\.?$/i;

/** A number for a column that has no unit of its own: a count, or a value in the unit that its row names. */
const unitless = (
  text: string,
  header: string,
  unit: Unit | undefined,
  decimal: DecimalMark | undefined,
): Result<CellValue, Told> => {
  const parts = splitReading(text);
  const written = parts?.unit || unit;
  // Hours are no unit that readings are converted in; "5 h" is a number of them.
  if (parts && written === parts.unit && / h$/.test(header) && HOURS.test(parts.unit))
    return unitless(parts.number, header, unit, decimal);
  if (written)
    return refuse("wrong", ({ intake }) => intake.cells.unwantedUnit(quoted(text), header));
  const read = readReading(text, { unit: "%", decimal });
  if (!read.ok) return read;
  return read.value.bound === "exact"
    ? answer(read.value.value)
    : refuse("wrong", ({ intake }) => intake.cells.onlyBound(quoted(text), header));
};

const listed = (
  text: string,
  list: Extract<NonNullable<Column["accepts"]>, { type: "list" }>,
): Result<CellValue, Told> => {
  const found = listWord(text, list);
  return found === undefined
    ? refuse("wrong", ({ intake }) => intake.cells.unknownWord(quoted(text), list.values))
    : answer(found);
};

/** Text as one line. What a spreadsheet would take for a formula or command is refused. */
const plainText = (text: string): Result<CellValue, Told> => {
  const line = text.replace(/[\p{Cc}\p{Cf}\s]+/gu, " ").trim();
  if (line === "") return refuse("none", ({ intake }) => intake.cells.unseen(quoted(text)));
  if (/^[=+\-@|]/.test(line.normalize("NFKC")))
    return refuse("wrong", ({ intake }) => intake.cells.likeFormula(quoted(text)));
  return line.length > LONGEST
    ? refuse("wrong", ({ intake }) => intake.cells.tooLong(quoted(text), line.length, LONGEST))
    : answer(line);
};
