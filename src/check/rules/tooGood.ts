import type { FindingsText } from "../../messages/messages";
import { cellsOf } from "../../records/cellsOf";
import { namedInstruments } from "../../records/instruments";
import { type Column, verdictOf } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { digits } from "../among/chance";
import { eachReading } from "../among/eachReading";
import { isSetVoltage, measured } from "../among/similar";
import { type Context, type JudgedTable, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../findings/finding";
import { oncePerEntry } from "../findings/oncePerEntry";

/** So many readings exactly on what they are held against are no chance. */
const ON_TARGET = 20;
/** So many rows with the same digits in several columns are none either, nor as many charging currents. */
const SAME_ROWS = 10;
const SAME_COLUMNS = 3;
const SAME_CURRENTS = 8;
const NEARLY_ALL = 0.9;
const AT_LIMIT = 3;
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
    ...atLimit(table, context.text),
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

const readingsIn = (table: JudgedTable, column: Column): Read[] => {
  const read: Read[] = [];
  eachReading(table, column, (row, value) => read.push({ row, value }));
  return read;
};

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
      const before = columns
        .slice(0, columns.indexOf(column))
        .filter(
          ({ role, unit }) =>
            (role === "limit" || role === "computed" || role === "entry") && unit === column.unit,
        )
        .filter(({ id }) => isOftenMet(table, column, id));
      if (before.length === 0) return [];
      const read = readingsIn(table, column).filter(
        ({ row, value }) => digits(value) >= 3 && !isSet(row),
      );
      if (read.length < ON_TARGET) return [];
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

/** Lengths of three digits that all are exactly their limit, however few: a drawing's figures, not the site's. */
function atLimit(table: JudgedTable, text: FindingsText): Finding[] {
  const limits = table.kind.columns.filter(({ role, unit }) => role === "limit" && unit === "mm");
  return measured(table)
    .filter(({ unit }) => unit === "mm")
    .flatMap((column): Finding[] => {
      const against = readingsIn(table, column).flatMap(({ row, value }) => {
        const own = limits.flatMap(({ id }) => exactly(table.judged[row]?.[id], "mm") ?? []);
        return digits(value) >= 3 && own.length > 0
          ? [{ row, value, isAt: own.includes(value) }]
          : [];
      });
      const [first] = against;
      if (!first || against.length < AT_LIMIT || !against.every(({ isAt }) => isAt)) return [];
      const message = text.rules["too-good"].atLimit(
        rowName(table, first.row),
        column.header,
        against.length,
      );
      return [finding(table, first.row, column.id, message, said(first.value))];
    });
}

/** Whether so many readings are exactly what stands in another column of their row that it is worth a closer look. */
function isOftenMet(table: JudgedTable, column: Column, target: string): boolean {
  const targets = cellsOf(table.judged, target);
  let met = 0;
  eachReading(table, column, (row, value) => {
    if (targets[row] === value) met += 1;
  });
  return met >= ON_TARGET;
}

/** Rows that share their digits in several columns with most of the table. */
function sameDigits(table: JudgedTable, text: FindingsText): Finding[] {
  const modes = measured(table)
    .filter((column) => !isSetVoltage(column))
    .flatMap((column) => {
      const mode = halfOf(table, column);
      return mode && digits(mode.value) >= 3 && mode.count >= SAME_ROWS
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

/** The number that half of a column's readings or more are; undefined where there is none. */
function halfOf(table: JudgedTable, column: Column) {
  // What more than a third of them are is one of two that are left when each is set off against two others.
  let [one, ones, other, others] = [Number.NaN, 0, Number.NaN, 0];
  eachReading(table, column, (_row, value) => {
    if (value === one) ones += 1;
    else if (value === other) others += 1;
    else if (ones === 0) [one, ones] = [value, 1];
    else if (others === 0) [other, others] = [value, 1];
    else [ones, others] = [ones - 1, others - 1];
  });
  const read: Read[] = [];
  let all = 0;
  eachReading(table, column, (row, value) => {
    all += 1;
    if (value === one || value === other) read.push({ row, value });
  });
  const mode = modeOf(read);
  return mode && mode.count >= all / 2 ? mode : undefined;
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
