import { memoizeFor } from "../../quantities/memoizeFor";
import {
  type Column,
  type Comparison,
  isBlank,
  type RecordKind,
  type Row,
  verdictOf,
} from "../../records/kind";
import { applies, compared } from "../../records/verdict";
import {
  type Context,
  headerOf,
  inUnit,
  type JudgedTable,
  overRows,
  type Rule,
  rowName,
  where,
  withRole,
} from "../context";
import type { Finding } from "../findings/finding";

const isInsulation = withRole("insulation");
const isWithstand = withRole("withstand");

/** The high voltage that a row was tested at. */
const highOf = memoizeFor(({ columns }: RecordKind): Column | undefined =>
  columns.find(
    ({ role, unit, wave, need }) =>
      role === "entry" && unit === "kV" && wave !== undefined && need === "reading",
  ),
);

/** The insulation that the same row accepts first. */
const ownInsulation = ({ accepted }: RecordKind): Comparison | undefined =>
  accepted.find(({ unit, sense }) => unit === "MΩ" && sense === "least");

/** High voltage put on something whose insulation had failed: in the same row, or in another record of the same part. */
export const withstandOnFailed: Rule = {
  id: "withstand-on-failed",
  reads: "book",
  of: (kind) => isInsulation(kind) || highOf(kind) !== undefined,
  find: (context) => {
    const failed = failedParts(context);
    const told = new Set<string>();
    return context.tables.flatMap((table) => {
      const high = highOf(table.kind);
      if (!high) return [];
      const own = ownInsulation(table.kind);
      if (!own && failed.size === 0) return [];
      return overRows(table, (row, stored, judged): Finding | undefined => {
        if (isBlank(stored[high.id])) return undefined;
        const found =
          (own && failedIn(table, own, judged, row)) ?? failedBeside(table, judged, failed);
        // Its three phases are one question.
        if (found === undefined || told.has(found)) return undefined;
        told.add(found);
        const [name, applied] = [rowName(table, row), inUnit(stored[high.id], high.unit)];
        return {
          rule: "withstand-on-failed",
          weight: "query",
          ...where(table, row, high.id),
          message: context.text.rules["withstand-on-failed"].message(name, applied, found),
        };
      }).map(({ finding }) => finding);
    });
  },
};

const failedIn = (table: JudgedTable, own: Comparison, judged: Row, row: number) =>
  applies(own, judged) && compared(own, judged) === "Fail"
    ? `${rowName(table, row)}, ${headerOf(table, own.value)} ${inUnit(judged[own.value], own.unit)}`
    : undefined;

/** Of the main circuit itself another rule tells; here its panel's other parts count, as a breaker's open poles. */
function failedBeside(
  { kind }: JudgedTable,
  { object, part }: Row,
  failed: ReadonlyMap<string, readonly Failed[]>,
): string | undefined {
  const others = (failed.get(String(object)) ?? []).filter((one) =>
    isWithstand(kind) ? one.part !== part : one.part === part,
  );
  return others[0]?.name;
}

interface Failed {
  readonly part: unknown;
  readonly name: string;
}

/** Parts of the main circuit whose insulation failed before the withstand test, by panel. */
function failedParts({ tables }: Context): ReadonlyMap<string, readonly Failed[]> {
  const failed = new Map<string, Failed[]>();
  for (const table of tables.filter(({ kind }) => isInsulation(kind)))
    for (const [row, judged] of table.judged.entries()) {
      if (verdictOf(judged) !== "Fail" || judged.stage !== "before" || table.aside.has(row))
        continue;
      const one = { part: judged.part, name: `${table.table.sheet}, ${rowName(table, row)}` };
      failed.set(String(judged.object), [...(failed.get(String(judged.object)) ?? []), one]);
    }
  return failed;
}
