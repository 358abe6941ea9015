import { readdirSync, readFileSync } from "node:fs";
import { type Criterion, type Source, sourceName } from "../../../src/standards/criterion";
import type { Acts, Rated, RatedTable } from "../../../src/standards/table";
import type { CriteriaTable } from "./criteriaTables";

const ROOM = "src/standards";
/** A file of one standard and edition, or of common practice. */
const STANDARD = /(?:\.\d{4}|^practice)\.ts$/;

type AnyTable = RatedTable<Rated, Acts>;

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
  isObject(value) && "rows" in value && "acts" in value;

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

const rowsOf = ({ title, columns, rows, source }: AnyTable): ListedCriterion[] =>
  rows.map((row) => ({
    what: `${title}: ${Number.isFinite(row.ratedkV) ? row.ratedkV : "beyond"} kV`,
    value: Object.entries(columns)
      .map(([id, heading]) => [heading, (row as unknown as Record<string, unknown>)[id]])
      .filter(([, figure]) => figure !== undefined)
      .map(([heading, figure]) => `${heading} ${figure}`)
      .join(", "),
    source: row.certainty ? { ...source, certainty: row.certainty } : source,
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
  tables.map(({ title, acts, source, columns, rows, names }) => ({
    title: `${title} (${sourceName(source)})`,
    sources: [source],
    columns: [
      acts === "least" ? "rated kV, up to" : "rated kV, exactly",
      ...Object.values(columns).filter((heading) => heading !== undefined),
      "named as well",
    ],
    rows: rows.map((row) => [
      `${Number.isFinite(row.ratedkV) ? row.ratedkV : "beyond"}${row.certainty ? ` (${row.certainty})` : ""}`,
      ...Object.keys(columns).map((id) =>
        String((row as unknown as Record<string, unknown>)[id] ?? "none given"),
      ),
      [...(names ?? [])]
        .filter(([, rated]) => rated === row.ratedkV)
        .map(([name]) => name)
        .join(", "),
    ]),
  }));

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
