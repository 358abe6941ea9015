import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import { answer, type Result, refuse } from "../../quantities/result";
import type { Column, RecordKind } from "../../records/kind";
import type { ArrivalOptions } from "../place/arrival";
import type { Entry, Line, ParsedField, ReadCell } from "../place/lineReader";
import { meaning } from "../rows/meaning";
import type { RecordRows } from "../rows/recordRows";
import type { ExportTable } from "../table/exportTable";
import { columnFor } from "../words/columnFor";
import { type PressureMark, pressureMark } from "../words/pressureMark";
import { cellValue } from "./cellValue";
import { inRowUnit } from "./inRowUnit";
import { byColumn, onlyOne, readCell } from "./readCell";
import { withoutComment } from "./splitComment";

/** A column of the records, and which parts of a line give something for it. */
interface Taken {
  readonly column: Column;
  readonly from: readonly number[];
}

/** Is told why a cell of a line, or its comment, cannot be taken. */
type SayCell = (reason: Said<Told>) => void;

/** Makes the reader of a line's cells; it gives undefined for a line whose reading itself cannot be taken. */
export const cellReader = (table: ExportTable, options: ArrivalOptions) => {
  const planOf = planFinder();
  const readTaken = takenReader(table, options);
  return (line: Line<unknown>, found: RowOf, say: SayCell): readonly Entry[] | undefined => {
    const cells: Entry[] = [];
    let comments: string[] | undefined;
    for (const taken of planOf(line, found.table)) {
      const cell = readTaken(taken, line.parts, found);
      if (!cell.ok) {
        say(refusalOf(taken, cell.say));
        if (taken.column.need === "reading") return undefined;
        continue;
      }
      cells.push(cell.value.entry);
      if (cell.value.comment) comments = [...(comments ?? []), cell.value.comment];
    }
    return comments ? remarked(cells, comments, found.table, say) : cells;
  };
};

const refusalOf = ({ column: { need, header } }: Taken, reason: Said<Told>): Said<Told> =>
  need === "reading" ? reason : (text) => text.intake.cells.thisOnly(reason(text), header);

/** Finds which columns of a table lines of a shape fill, once for each. */
const planFinder = () => {
  const columns = columnFinder();
  const plans = new Map<Line<unknown>["shape"], Map<RecordRows, readonly Taken[]>>();
  let last: { shape: unknown; of: RecordRows; plan: readonly Taken[] } | undefined;
  return (line: Line<unknown>, of: RecordRows): readonly Taken[] => {
    const { shape, parts } = line;
    if (last?.shape === shape && last.of === of) return last.plan;
    const known = plans.get(shape) ?? new Map<RecordRows, readonly Taken[]>();
    plans.set(shape, known);
    const written = new Map(parts.map((part) => [part.field, part]));
    const plan =
      known.get(of) ??
      [...byColumn(of, written, columns)].map(
        ([column, candidates]): Taken => ({
          column,
          from: candidates.map(({ field }) => shape.at.get(field) as number),
        }),
      );
    known.set(of, plan);
    last = { shape, of, plan };
    return plan;
  };
};

/** Makes the reader of one cell for a record from the parts of a line; the same text is read once. */
const takenReader = (table: ExportTable, options: ArrivalOptions) => {
  const { instruments = [], wave } = options;
  const meant = meaning(options);
  const textFor = ({ id, accepts }: Column, text: string) =>
    accepts?.type === "list" ? meant(id, text) : text;
  const read = (column: Column, candidates: readonly ParsedField[]): Result<ReadCell, Told> => {
    const given = onlyOne(column, candidates, instruments);
    if (!given.ok) return given;
    const { value, comment } = withoutComment(textFor(column, given.value.text), column, (text) =>
      readCell({ ...given.value, text }, column, table, table.dates, wave),
    );
    return value.ok ? answer({ entry: [column.id, value.value], comment }) : value;
  };
  const readOnce = (column: Column, part: ParsedField): Result<ReadCell, Told> => {
    if (part.column === column && part.read) return part.read;
    part.column = column;
    part.read = read(column, [part]);
    return part.read;
  };
  return ({ column, from }: Taken, parts: readonly ParsedField[], row: RowOf) => {
    const other = column.unit === "MPa" ? otherPressure(from, parts, row) : undefined;
    if (other !== undefined) return refuse("wrong", other);
    return from.length === 1 && column.unitIn === undefined
      ? readOnce(column, parts[from[0] as number] as ParsedField)
      : read(
          inRowUnit(column, row.table.rows[row.row] ?? {}),
          from.map((part) => parts[part] as ParsedField),
        );
  };
};

/** Why a gas pressure is not taken: it stands above the air where the plate's is absolute, or the other way round. */
const otherPressure = (
  from: readonly number[],
  parts: readonly ParsedField[],
  { table, row }: RowOf,
): Said<Told> | undefined => {
  const plate: PressureMark =
    String(table.rows[row]?.reference ?? "").toLowerCase() === "absolute" ? "absolute" : "gauge";
  const marked = from
    .map((part) => parts[part] as ParsedField)
    .find(
      ({ title, text }) =>
        [plate, undefined].indexOf(pressureMark(text) ?? pressureMark(title)) < 0,
    );
  return (
    marked &&
    (({ intake }) => intake.cells.otherPressure(quoted(marked.text), quoted(marked.title), plate))
  );
};

/** A row of a record table. */
interface RowOf {
  readonly table: RecordRows;
  readonly row: number;
}

/** A line's cells with the comments that stood beside numbers in its remarks; what cannot stand there is said. */
const remarked = (
  cells: readonly Entry[],
  comments: readonly string[],
  { kind, at }: RecordRows,
  say: SayCell,
): readonly Entry[] => {
  const column = columnFor(kind, "remarks");
  const own = cells.find(([id]) => id === "remarks")?.[1];
  const told = [...new Set(comments)].join("; ");
  const text = own ? `${own}; ${told}` : told;
  const value =
    column && (!at || at.has(column.id))
      ? cellValue(text, column, {})
      : refuse("none", ({ intake }: Told) => intake.cells.noRemarks(kind.sheet));
  if (value.ok) return [...cells.filter(([id]) => id !== "remarks"), ["remarks", value.value]];
  say((text) => text.intake.cells.commentLeft(quoted(told), value.say(text)));
  return cells;
};

/** `columnFor`, which answers the same question once. */
const columnFinder = (): typeof columnFor => {
  const known = new Map<RecordKind, Map<string, Column | undefined>>();
  return (kind, field) => {
    const columns = known.get(kind) ?? new Map<string, Column | undefined>();
    known.set(kind, columns);
    if (!columns.has(field)) columns.set(field, columnFor(kind, field));
    return columns.get(field);
  };
};
