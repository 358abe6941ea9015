import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import type { RecordKind } from "../../records/kind";
import { a1 } from "../../sheets/cells/address";
import type { LayoutProblem } from "../../sheets/recordBook";
import type { SheetCells } from "../../sheets/snapshot";
import type { LayoutRecord } from "./layoutRecord";

/** Notes on cells with a reading, and once for the block that readings of it are formulas. */
export const besideReadings = (
  { columns }: RecordKind,
  records: readonly LayoutRecord[],
  cells: SheetCells,
): Omit<LayoutProblem, "sheet">[] => {
  const readings = columns.filter(({ role, need }) => role === "entry" && need === "reading");
  const places = records.flatMap(({ places, values }) =>
    readings.flatMap(({ id }) => (values.has(id) ? (places.get(id) ?? []) : [])),
  );
  const formulas = places.filter(({ row, column }) => cells.formula(row, column) !== undefined);
  const [first] = formulas;
  const named = formulas.slice(0, FORMULAS_NAMED).map(({ row, column }) => a1(row, column));
  const notes = places.flatMap(({ row, column }) => {
    const note = cells.note?.(row, column);
    return note
      ? [{ row, column, message: ({ intake }: Told) => intake.layout.note(quoted(note, 200)) }]
      : [];
  });
  return first === undefined
    ? notes
    : [
        ...notes,
        {
          row: first.row,
          column: first.column,
          message: ({ intake }: Told) => intake.layout.formulas(formulas.length, named),
        },
      ];
};

const FORMULAS_NAMED = 6;
