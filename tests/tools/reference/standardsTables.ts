import { readdirSync, readFileSync } from "node:fs";
import { type Criterion, type Source, sourceName } from "../../../src/standards/criterion";
import type { Acts, NamedTable, Rated, RatedTable } from "../../../src/standards/table";
import type { CriteriaTable } from "./criteriaTables";

const ROOM = "src/standards";
/** A file of one standard and edition, or of common practice. */
const STANDARD = /(?:\.\d{4}|^practice)\.ts$/;

type ByVoltage = RatedTable<Rated, Acts>;
type ByName = NamedTable<object>;
type AnyTable = ByVoltage | ByName;

/** One criterion of the files of standards. */
export interface ListedCriterion {
  /** What it is, in words. */
  readonly what: string;
  readonly value: string;
  readonly source: Source;
}

/** What the files of the standards declare, file by file. */
interface Declared {
  readonly tables: readonly AnyTable[];
  readonly criteria: readonly ListedCriterion[];
}

/** Everything that the files of the standards declare, so that no table is stated a second time. */
export async function declaredStandards(): Promise<Declared> {
  const files = readdirSync(ROOM)
    .filter((name) => STANDARD.test(name))
    .sort();
  const found: Declared[] = [];
  for (const file of files) {
    const exported: Record<string, unknown> = await import(`../../../${ROOM}/${file}`);
    const words = docstrings(readFileSync(`${ROOM}/${file}`, "utf8"));
    const named = Object.entries(exported).sort(([one], [other]) => one.localeCompare(other));
    found.push({
      tables: named.map(([, value]) => value).filter(isTable),
      criteria: named.flatMap(([name, value]) => criteriaIn(words.get(name) ?? name, value)),
    });
  }
  return {
    tables: found.flatMap(({ tables }) => tables),
    criteria: found.flatMap(({ criteria }) => criteria),
  };
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null;

const isTable = (value: unknown): value is AnyTable =>
  isObject(value) && "rows" in value && "columns" in value;

const isByVoltage = (table: AnyTable): table is ByVoltage => "acts" in table;

const isCriterion = (value: unknown): value is Criterion =>
  isObject(value) && "source" in value && !("rows" in value);

/** The criteria of one export: itself, those that it holds by name, or the rows of its table. */
function criteriaIn(what: string, value: unknown): ListedCriterion[] {
  if (isTable(value)) return rowsOf(value);
  if (isCriterion(value)) return [{ what, value: figures(value), source: value.source }];
  return isObject(value) && !(value instanceof Map)
    ? Object.entries(value).flatMap(([name, part]) =>
        isCriterion(part)
          ? [{ what: `${what} (${name})`, value: figures(part), source: part.source }]
          : [],
      )
    : [];
}

type Cells = Readonly<Record<string, unknown>>;

/** What a cell of a table says; of limits at percents of the rated value, each with its percent. */
const cell = (value: unknown): string => {
  if (value === undefined) return "none given";
  return Array.isArray(value)
    ? value.map(([percent, limit]) => `${limit} at ${percent} %`).join(", ")
    : String(value);
};

/** The rows of a table by their names. */
const namedRows = (
  table: AnyTable,
): (readonly [name: string, row: Cells & Pick<Rated, "certainty">])[] =>
  isByVoltage(table)
    ? table.rows.map((row) => [
        Number.isFinite(row.ratedkV) ? String(row.ratedkV) : "beyond",
        row as unknown as Cells,
      ])
    : Object.entries(table.rows).map(([name, row]) => [name, row as unknown as Cells]);

const rowsOf = (table: AnyTable): ListedCriterion[] =>
  namedRows(table).map(([name, row]) => ({
    what: `${table.title}: ${name}${isByVoltage(table) ? " kV" : ""}`,
    value: Object.entries<string | undefined>(table.columns)
      .filter(([id]) => row[id] !== undefined)
      .map(([id, heading]) => `${heading} ${cell(row[id])}`)
      .join(", "),
    source: row.certainty ? { ...table.source, certainty: row.certainty } : table.source,
  }));

/** The figures of a criterion that may hold several. */
const figures = (criterion: object): string => {
  const { source: _source, value, ...others } = criterion as Record<string, unknown>;
  if (value !== undefined) return String(value);
  return Object.entries(others)
    .map(([name, figure]) => `${name} ${figure}`)
    .join(", ");
};

/** The tables in the form of the reference page. */
export const standardsTables = (tables: readonly AnyTable[]): CriteriaTable[] =>
  tables.map((table) => ({
    title: `${table.title} (${sourceName(table.source)})`,
    sources: [table.source],
    columns: [
      firstHeading(table),
      ...Object.values<string | undefined>(table.columns).filter(
        (heading) => heading !== undefined,
      ),
      ...(isByVoltage(table) ? ["named as well"] : []),
    ],
    rows: namedRows(table).map(([name, row]) => [
      `${name}${row.certainty ? ` (${row.certainty})` : ""}`,
      ...Object.keys(table.columns).map((id) => cell(row[id])),
      ...(isByVoltage(table) ? [otherNames(table, Number(row.ratedkV))] : []),
    ]),
  }));

const firstHeading = (table: AnyTable): string => {
  if (!isByVoltage(table)) return table.of;
  return table.acts === "least" ? "rated kV, up to" : "rated kV, exactly";
};

const otherNames = ({ names }: ByVoltage, ratedkV: number): string =>
  [...(names ?? [])]
    .filter(([, rated]) => rated === ratedkV)
    .map(([name]) => name)
    .join(", ");

/** First sentences of the comments above what a file exports, by its name. */
const docstrings = (text: string): ReadonlyMap<string, string> =>
  new Map(
    [...text.matchAll(/\/\*\*\s*([\s\S]*?)\*\/\s*export const (\w+)/g)].map(
      ([, comment = "", name = ""]) => [
        name,
        comment
          .replace(/\n\s*\*/g, " ")
          .replace(/\s+/g, " ")
          .trim()
          .replace(/^(.*?[.:;])\s.*$/, "$1")
          .replace(/[.:;]$/, ""),
      ],
    ),
  );
