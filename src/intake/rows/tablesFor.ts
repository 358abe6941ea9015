import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import { readUnit } from "../../quantities/reading/readUnit";
import { splitReading } from "../../quantities/reading/splitReading";
import { type Answer, answer, type Result, refuse } from "../../quantities/result";
import { unitSize } from "../../quantities/units";
import type { Column, RecordKind } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import type { ExportBlock } from "../table/exportTable";
import type { Written } from "../table/written";
import { kindNamed } from "../understand/kindWords";
import { columnFor } from "../words/columnFor";
import { kindOfTest } from "../words/kindOfTest";
import { type Lost, lost } from "./lost";
import type { RecordRows } from "./recordRows";
import { tellsOutcome } from "./tellsOutcome";

const IDS: ReadonlySet<string> = new Set(KINDS.map(({ id }) => id));

/** The record tables that a line can belong to, by the test it names and by what it has read. */
export const tablesFor = <T extends RecordRows>(
  tables: readonly T[],
  written: ReadonlyMap<string, Written>,
  test: string,
  exported: ExportBlock,
): Answer<readonly T[]> | Lost => {
  const kinds = tables.map(({ kind }) => kind);
  const sheets = tables.filter(({ rows }) => rows.length > 0).map(({ kind }) => kind.sheet);
  const understood = kinds.find(({ id }) => id === exported.kind);
  const isSpoken = understood !== undefined && kindNamed(test, IDS) === understood.id;
  const named = test === "" || isSpoken ? understood : (kindOfTest(test, kinds) ?? understood);
  if (test !== "" && named === undefined)
    return lost("test", test, sheets, ({ intake }) =>
      intake.rows.unknownTest(quoted(test), sheets),
    );
  const ofTest = named === undefined ? tables : tables.filter(({ kind }) => kind.id === named.id);
  const among = ofTest.filter(
    ({ kind }) =>
      hasReading(kind, written) || (kind.id === understood?.id && hasValue(kind, written)),
  );
  return among.length > 0 ? answer(among) : noReading(ofTest, written, exported);
};

/** So many readings are named one by one. */
const MAX_NAMED = 6;

/** Why a line has no reading for any of these tables. */
const noReading = (
  tables: readonly RecordRows[],
  written: ReadonlyMap<string, Written>,
  { columns }: ExportBlock,
): Result<never, Told> => {
  const readings = tables.flatMap(({ kind }) =>
    kind.columns.flatMap(({ need, header }) => (need === "reading" ? header : [])),
  );
  const named = [...new Set(readings)];
  const wanted = named.join(", ");
  const sources = columns.filter(({ field }) =>
    tables.some(({ kind }) => field && columnFor(kind, field)?.need === "reading"),
  );
  if (sources.length === 0)
    return refuse("none", ({ intake: { rows } }) =>
      named.length > MAX_NAMED ? rows.noReadingColumn : rows.noReadingColumnFor(wanted),
    );
  const given = sources.flatMap(({ field }) => written.get(field ?? "") ?? [])[0];
  return given === undefined
    ? refuse("none", ({ intake }) =>
        intake.rows.noReading(sources.map(({ title }) => quoted(title))),
      )
    : refuse("wrong", ({ intake }) =>
        intake.rows.otherQuantity(quoted(given.text), quoted(given.title), wanted),
      );
};

/** Whether a line has a reading of the kind's quantity, and no resistance that the kind cannot take. */
const hasReading = (kind: RecordKind, written: ReadonlyMap<string, Written>): boolean =>
  (!written.has("resistance") ||
    columnFor(kind, "resistance") !== undefined ||
    // Worked out from the readings, a resistance stands beside them.
    kind.columns.some(({ id }) => id === "resistance")) &&
  [...written.values()].some((field) => {
    const column = columnFor(kind, field.field);
    return column?.need === "reading" && isOfQuantity(field, column);
  });

/** Whether a line of a table that is known to be of a kind has a value that was measured, as one point of a curve is. */
const hasValue = (kind: RecordKind, written: ReadonlyMap<string, Written>): boolean =>
  [...written.keys()].some((field) => {
    const column = columnFor(kind, field);
    return (
      column?.role === "entry" &&
      (tellsOutcome(column) ||
        (column.unit !== undefined &&
          (column.accepts?.type === "reading" || column.need === undefined)))
    );
  });

const isOfQuantity = ({ text, unit }: Written, column: Column): boolean => {
  const own = readUnit(splitReading(text)?.unit ?? "", unit ?? column.unit);
  const known = own.ok ? own.value : unit;
  return (
    known === undefined ||
    column.unit === undefined ||
    unitSize(known).quantity === unitSize(column.unit).quantity
  );
};
