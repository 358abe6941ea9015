import { groupBy } from "../../quantities/groupedBy";
import type { CellValue, Comparison } from "../../records/kind";
import { sourceText } from "../../standards/criterion";
import { contactSpread } from "../../standards/practice";
import { amongRows, columnsNamed } from "../among/amongRows";
import {
  type Context,
  inUnit,
  type JudgedTable,
  type Rule,
  rowName,
  said,
  where,
  writtenIn,
} from "../context";
import type { Finding } from "../findings/finding";

/** From so many times the lowest on, no contact is that much worse: a reading is in another unit (our own margin). */
const ABSURD = 100;

/** A pole or joint whose resistance stands out from its neighbours'. It is not by itself a failure. */
export const standsOut: Rule = {
  id: "stands-out",
  reads: "table",
  find: (table, context) => {
    // What is spread is what the kind accepts a row by first: a resistance, corrected or not.
    const [compared] = table.kind.accepted;
    if (!compared) return [];
    const far = amongRows(
      table,
      columnsNamed(table, "spread"),
      (_stored, spread) => typeof spread === "number" && spread > contactSpread.value,
    ).filter((row) => !table.aside.has(row));
    if (far.length === 0) return [];
    const odd = oddLowest(table, compared.value, far);
    return [
      ...[...odd].map(([row, next]) => below(table, row, next, compared, context)),
      ...far
        .filter((row) => !isExplained(table, row, compared.value, odd))
        .map((row) => above(table, row, compared, context)),
    ];
  },
};

const groupOf = (table: JudgedTable, row: number): string => String(table.judged[row]?.alike ?? "");

const numberAt = (table: JudgedTable, row: number, id: string): number => {
  const cell = table.judged[row]?.[id];
  return typeof cell === "number" && cell > 0 ? cell : Number.NaN;
};

/**
 * Of groups of which most stand out from the lowest and lie close together themselves, that lowest, with the
 * next above it: it is the one to look at, and not the others.
 */
function oddLowest(
  table: JudgedTable,
  value: string,
  far: readonly number[],
): ReadonlyMap<number, number> {
  const asked = new Set(far.map((row) => groupOf(table, row)));
  const rows = [...table.judged.keys()].filter(
    (row) => asked.has(groupOf(table, row)) && numberAt(table, row, value) > 0,
  );
  const found = new Map<number, number>();
  for (const group of groupBy(rows, (row) => groupOf(table, row))) {
    const [lowest, next, ...others] = [...group].sort(
      (one, other) => numberAt(table, one, value) - numberAt(table, other, value),
    );
    if (lowest === undefined || next === undefined || others.length === 0) continue;
    const [least, second] = [lowest, next].map((row) => numberAt(table, row, value));
    const near = others.filter((row) => isWithin(numberAt(table, row, value), second ?? 0));
    if (!isWithin(second ?? 0, least ?? 0) && 2 * near.length >= others.length)
      found.set(lowest, second ?? 0);
  }
  return found;
}

const isWithin = (value: number, least: number): boolean =>
  value <= least * (1 + contactSpread.value);

/** Whether a row stands out from a lowest that is odd itself, and not from the next one. */
const isExplained = (
  table: JudgedTable,
  row: number,
  value: string,
  odd: ReadonlyMap<number, number>,
): boolean =>
  [...odd].some(
    ([lowest, next]) =>
      groupOf(table, lowest) === groupOf(table, row) && isWithin(numberAt(table, row, value), next),
  );

function above(
  table: JudgedTable,
  row: number,
  { value, unit }: Comparison,
  { text }: Context,
): Finding {
  const says = text.rules["stands-out"];
  const judged = table.judged[row] ?? {};
  const spread = Number(judged.spread);
  const [name, reading] = [rowName(table, row), writtenIn(table, judged, value, unit)];
  const lowest = lowestOf(judged[value], spread);
  return {
    ...at(table, row, says.expected(contactSpread.value)),
    message:
      spread + 1 < ABSURD
        ? says.above(name, reading, Math.round(spread * 100), contactSpread.value * 100)
        : says.absurd(
            name,
            reading,
            Math.round(spread + 1),
            lowest === undefined ? lowest : inUnit(lowest, unit),
          ),
    found: said(spread),
  };
}

/** The one reading from which all its like stand out. */
function below(
  table: JudgedTable,
  row: number,
  next: number,
  { value, unit }: Comparison,
  { text }: Context,
): Finding {
  const says = text.rules["stands-out"];
  const reading = table.judged[row]?.[value];
  return {
    ...at(table, row, says.expected(contactSpread.value)),
    message: says.below(rowName(table, row), inUnit(reading, unit), inUnit(next, unit)),
    found: said(reading),
  };
}

/** The lowest of the group, from one of them and how far it is above that; undefined where that one is no number. */
const lowestOf = (reading: CellValue | undefined, spread: number): number | undefined =>
  typeof reading === "number" ? Number((reading / (spread + 1)).toPrecision(3)) : undefined;

const at = (table: JudgedTable, row: number, expected: string) =>
  ({
    rule: "stands-out",
    weight: "query",
    ...where(table, row, "spread"),
    expected,
    source: sourceText(contactSpread.source),
  }) as const;
