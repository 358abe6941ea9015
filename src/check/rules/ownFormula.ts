import type { FindingsText } from "../../messages/messages";
import type { Column } from "../../records/kind";
import { formulaIn, tableReference } from "../../sheets/cells/formula";
import { formulaRuns, rowsFrom } from "../../sheets/cells/formulaRuns";
import type { TableSnapshot } from "../../sheets/snapshot";
import { earlierIn } from "../compare/earlierBuild";
import { isSameResult } from "../compare/isSameResult";
import { type Context, type JudgedTable, type Rule, rowName, shown, where } from "../context";
import type { Finding } from "../findings/finding";
import { type Canonical, canonical } from "../formulas/canonical";
import { additions, difference } from "../formulas/difference";
import { fromItsRow } from "../formulas/fromItsRow";

/** Cells of one own formula that are named one by one; of more, the first is named and the others counted. */
const FEW = 3;

/** A formula of the user's own where ours should stand. */
export const ownFormula: Rule = {
  id: "own-formula",
  reads: "table",
  find: (table, context) =>
    table.kind.columns
      .filter(
        ({ id, role, formula }) =>
          formula &&
          (role === "computed" || role === "limit" || role === "result") &&
          table.at.has(id),
      )
      .flatMap((column) => ofColumn(table, context, column)),
};

interface Own {
  readonly row: number;
  readonly own: Canonical;
  readonly ours: Canonical;
  readonly formula: string;
}

function ofColumn(table: JudgedTable, context: Context, column: Column): Finding[] {
  const { lineup, text } = context;
  const at = table.at.get(column.id) ?? 0;
  const ref = tableReference(table.table.name, table.kind.columns);
  const ours = column.formula?.(ref, lineup);
  if (ours === undefined) return [];
  const oursIn = formulaIn(column, ref, lineup);
  const read = reader(table.table);
  const isEarlier = earlierIn(table, context);
  const groups = new Map<string, Own[]>();
  const look = (formula: string, row: number) => {
    if (oursIn(table.judged[row] ?? {}) === undefined || isEarlier(row, column.id)) return;
    const [own, mine] = [read(formula, row), read(ours, row)];
    if (own.text === mine.text) return;
    const group = groups.get(own.text) ?? [];
    group.push({ row, own, ours: mine, formula });
    groups.set(own.text, group);
  };
  let formulas = 0;
  for (const { formula, from, to } of formulaRuns(table.table, at)) {
    if (formula === undefined) continue;
    const rows = rowsFrom(from, to).filter((row) => !table.aside.has(row));
    formulas += rows.length;
    if (formula !== ours) for (const row of rows) look(formula, row);
  }
  return [...groups.values()].flatMap((group) => ofGroup(table, column, group, formulas, text));
}

/** Reads each formula once, however many rows it is filled down over. */
function reader(table: TableSnapshot) {
  const known = new Map<string, Canonical>();
  // A formula without addresses is named by itself, whatever its row: as a rule that of a whole column.
  const rowless = new Map<string, Canonical>();
  return (formula: string, row: number): Canonical => {
    const before = rowless.get(formula);
    if (before) return before;
    const name = fromItsRow(formula, row);
    const seen = known.get(name);
    if (seen) return seen;
    const made = canonical(formula, table, row);
    known.set(name, made);
    if (name === formula) rowless.set(formula, made);
    return made;
  };
}

function ofGroup(
  table: JudgedTable,
  column: Column,
  group: readonly Own[],
  rows: number,
  text: FindingsText,
): Finding[] {
  const says = text.rules["own-formula"];
  const isMost = group.length * 2 > rows && rows > 1;
  const named = group.length <= FEW ? group : group.slice(0, 1);
  const differs = group.some(
    ({ row }) => !isSameResult(table.rows[row]?.[column.id], table.judged[row]?.[column.id]),
  );
  return named.map(({ row, own, ours, formula }): Finding => {
    const rowAt = (offset: number) => table.keys[row + offset] ?? says.beyondTable;
    const told = difference(own, ours, rowAt, says);
    // A whole column of one's own that agrees may calculate in its own way.
    const causes = told.length > 0 || (isMost && !differs) ? told : additions(own, ours, says);
    return {
      rule: "own-formula",
      weight: differs || causes.length > 0 ? "query" : "note",
      ...where(table, row, column.id),
      message: says.message(rowName(table, row), column.header, {
        causes,
        isAlone: !isMost && rows > group.length,
        more: group.length - named.length,
        differs,
        computed: shown(table.judged[row]?.[column.id], text),
      }),
      found: `=${formula}`.slice(0, 200),
    };
  });
}
