import type { ExportColumn, Says } from "../words/titles";
import type { RowWithUnits } from "./unitsBeside";

/** A line of a table, or the part of it that one phase, pole or combination has. */
export interface ExportRow extends RowWithUnits {
  /** For a line of a wide table: which cell of it each cell here was, −1 for what its title says. */
  readonly from?: readonly number[];
}

/** A table with one reading a row: its columns, and what makes the rows of a line. */
export interface Unpivoted {
  readonly columns: readonly ExportColumn[];
  /** The rows of a line; none where each line is one already. */
  readonly rowsOf?: (row: RowWithUnits) => Iterable<ExportRow>;
}

const SAYS = ["object", "part", "subpart", "position", "stage", "operation"] as const;

/** What columns of one phase, pole, combination or stage have in common, and the columns. */
interface Group {
  readonly says: Says;
  readonly columns: ExportColumn[];
}

/** The columns by what their titles say; one that says less, such as the stage alone, goes with each that says that and more. */
const groupsOf = (columns: readonly ExportColumn[]): readonly Group[] => {
  const groups = new Map<string, Group>();
  for (const column of columns) {
    const { says } = column;
    if (!says) continue;
    const key = JSON.stringify(SAYS.map((field) => says[field]));
    const group = groups.get(key);
    if (group) group.columns.push(column);
    else groups.set(key, { says, columns: [column] });
  }
  const all = [...groups.values()];
  const wider = (group: Group) =>
    group.columns.every(({ field }) => TRAIL.has(field ?? ""))
      ? all.filter((other) => other !== group && saysMore(other.says, group.says))
      : [];
  const shared = all.filter((group) => wider(group).length > 0);
  for (const group of shared)
    for (const other of wider(group)) other.columns.push(...group.columns);
  return all.filter((group) => !shared.includes(group));
};

/** What is said of readings, and is none itself. */
const TRAIL: ReadonlySet<string> = new Set(["date", "time", "by", "instrument"]);

const saysMore = (more: Says, less: Says): boolean =>
  SAYS.every((field) => less[field] === undefined || less[field] === more[field]) &&
  SAYS.some((field) => less[field] === undefined && more[field] !== undefined);

/**
 * A wide table, with a column for each phase, pole or combination, as one with a row for each. A line's
 * cells that stand under no phase go with every one of its rows; a phase without a reading gives none.
 *
 * @param blanks true to keep the rows of phases without a reading
 * @example unpivot(columns).rowsOf?.({ line: 2, cells: ["=H01", "31", "32"] }) // a row for L1 and one for L2
 */
export const unpivot = (columns: readonly ExportColumn[], blanks = false): Unpivoted => {
  const groups = groupsOf(columns);
  if (groups.length === 0) return { columns };

  const shared = columns.filter(({ says }) => !says);
  const inTitles = SAYS.filter((field) => groups.some(({ says }) => says[field]));
  const measures: { field?: string; unit?: ExportColumn["unit"]; title: string }[] = [];
  for (const { field, unit, title } of columns.filter(({ says }) => says))
    if (!measures.some((measure) => measure.field === field && measure.unit === unit))
      measures.push({ field, unit, title });
  const long: ExportColumn[] = [
    ...shared.map((column, index) => ({ ...column, index })),
    ...inTitles.map((field, at) => ({ index: shared.length + at, title: field, field })),
    ...measures.map((measure, at) => ({ ...measure, index: shared.length + inTitles.length + at })),
  ];
  const parts = groups.map(({ says, columns }) => ({
    own: columns.map(({ index }) => index),
    from: [
      ...shared.map(({ index }) => index),
      ...inTitles.map(() => -1),
      ...measures.map(
        ({ field, unit }) =>
          columns.find((column) => column.field === field && column.unit === unit)?.index ?? -1,
      ),
    ],
    texts: inTitles.map((field) => says[field] ?? ""),
  }));
  const width = columns.length;
  return {
    columns: long,
    rowsOf: function* ({ line, cells, units, unclosed }) {
      const torn = cells.slice(width).filter((cell) => cell !== "");
      for (const { own, from, texts } of parts) {
        if (!blanks && !unclosed && own.every((index) => (cells[index] ?? "") === "")) continue;
        yield {
          line,
          from,
          units,
          ...(unclosed && { unclosed }),
          cells: [
            ...from.map((index, at) =>
              index >= 0 ? (cells[index] ?? "") : (texts[at - shared.length] ?? ""),
            ),
            ...torn,
          ],
        };
      }
    },
  };
};
