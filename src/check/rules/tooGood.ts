import type { FindingsText } from "../../messages/messages";
import { namedInstruments } from "../../records/instruments";
import { type Column, verdictOf } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { digits } from "../chance";
import { type Context, type JudgedTable, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../finding";
import { oncePerEntry } from "../oncePerEntry";
import { isSetVoltage, measured } from "../similar";

/** So many readings exactly on what they are held against are no chance. */
const ON_TARGET = 20;
/** So many rows with the same digits in several columns are none either, nor as many charging currents. */
const SAME_ROWS = 10;
const SAME_COLUMNS = 3;
const SAME_CURRENTS = 8;
const NEARLY_ALL = 0.9;
/** Tools that show what they were set to. */
const SETTING = /click|setting|preset|auslös|klick|déclench|disparo|estalo/i;

/** Readings that are better than readings are: all on their target, the same in row after row, a test voltage that drives no current. */
export const tooGood: Rule = {
  id: "too-good",
  reads: "table",
  find: (table, context) => [
    ...onTarget(table, context),
    ...sameDigits(table, context.text),
    ...chargingCurrents(table, context.text),
  ],
};

const finding = (
  table: JudgedTable,
  row: number,
  column: string,
  message: string,
  found: string,
): Finding => ({
  rule: "too-good",
  weight: "query",
  ...where(table, row, column),
  message,
  found,
});

interface Read {
  readonly row: number;
  readonly value: number;
}

const readingsIn = (table: JudgedTable, { id, unit }: Column): Read[] =>
  table.rows.flatMap((stored, row) => {
    const cell = stored[id];
    const value = unit ? exactly(cell, unit) : typeof cell === "number" ? cell : undefined;
    return value === undefined || table.aside.has(row) ? [] : [{ row, value }];
  });

/** Readings that are all exactly what stands before them in their row: a limit, a calculation, a reference. */
function onTarget(table: JudgedTable, { instruments, text }: Context): Finding[] {
  const { columns } = table.kind;
  const isSet = (row: number) =>
    namedInstruments(table.rows[row]?.instrument).some((id) =>
      SETTING.test(instruments?.get(id.toLowerCase())?.kind ?? ""),
    );
  return measured(table)
    .filter((column) => !isSetVoltage(column))
    .flatMap((column): Finding[] => {
      const read = readingsIn(table, column).filter(
        ({ row, value }) => digits(value) >= 3 && !isSet(row),
      );
      if (read.length < ON_TARGET) return [];
      const before = columns
        .slice(0, columns.indexOf(column))
        .filter(
          ({ role, unit }) =>
            (role === "limit" || role === "computed" || role === "entry") && unit === column.unit,
        );
      const target = before.find(
        ({ id }) =>
          read.filter(({ row, value }) => table.judged[row]?.[id] === value).length >=
          Math.max(ON_TARGET, NEARLY_ALL * read.length),
      );
      const [first] = read;
      if (!target || !first) return [];
      const message = text.rules["too-good"].onTarget(
        rowName(table, first.row),
        column.header,
        read.length,
        target.header,
      );
      return [finding(table, first.row, column.id, message, said(first.value))];
    });
}

/** Rows that share their digits in several columns with most of the table. */
function sameDigits(table: JudgedTable, text: FindingsText): Finding[] {
  const modes = measured(table)
    .filter((column) => !isSetVoltage(column))
    .flatMap((column) => {
      const read = readingsIn(table, column);
      const mode = modeOf(read);
      return mode && digits(mode.value) >= 3 && mode.count >= Math.max(SAME_ROWS, read.length / 2)
        ? [{ column, value: mode.value }]
        : [];
    });
  if (modes.length < SAME_COLUMNS) return [];
  const rows = table.rows.flatMap((stored, row) =>
    modes.filter(({ column: { id }, value }) => stored[id] === value).length >= SAME_COLUMNS
      ? [row]
      : [],
  );
  const [first] = rows;
  const [column] = modes;
  return first === undefined || !column || rows.length < SAME_ROWS
    ? []
    : [
        finding(
          table,
          first,
          column.column.id,
          text.rules["too-good"].sameDigits(
            rowName(table, first),
            rows.length,
            modes.map(({ column: { header } }) => header),
          ),
          said(column.value),
        ),
      ];
}

const modeOf = (read: readonly Read[]): { value: number; count: number } | undefined => {
  const counts = new Map<number, number>();
  for (const { value } of read) counts.set(value, (counts.get(value) ?? 0) + 1);
  const [most] = [...counts].sort(([, one], [, other]) => other - one);
  return most && { value: most[0], count: most[1] };
};

/** Currents at high voltage: none at all, or the same in every row. */
function chargingCurrents(table: JudgedTable, text: FindingsText): Finding[] {
  const says = text.rules["too-good"];
  const isHigh = table.kind.columns.some(({ unit, wave }) => unit === "kV" && wave !== undefined);
  if (!isHigh) return [];
  return table.kind.columns
    .filter(({ role, unit, wave }) => role === "entry" && wave === undefined && isLeak(unit))
    .flatMap((column): Finding[] => {
      const read = readingsIn(table, column).filter(
        ({ row }) => verdictOf(table.judged[row] ?? {}) === "Pass",
      );
      const none = read
        .filter(({ value }) => value === 0)
        .map(({ row }) =>
          finding(table, row, column.id, says.noCurrent(rowName(table, row), column.header), "0"),
        );
      const mode = modeOf(read.filter(({ value }) => value !== 0));
      const first = read.find(({ value }) => value === mode?.value);
      const isSame =
        mode !== undefined &&
        digits(mode.value) >= 2 &&
        mode.count >= Math.max(SAME_CURRENTS, NEARLY_ALL * read.length);
      return [
        ...oncePerEntry(none, text),
        ...(isSame && first
          ? [
              finding(
                table,
                first.row,
                column.id,
                says.sameCurrent(
                  rowName(table, first.row),
                  column.header,
                  said(mode.value),
                  mode.count,
                ),
                said(mode.value),
              ),
            ]
          : []),
      ];
    });
}

const isLeak = (unit: Column["unit"]): boolean => unit === "mA" || unit === "µA";
