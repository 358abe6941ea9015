import { parseCsv } from "hucre/csv";
import { type DecimalEvidence, decimalMark } from "../quantities/decimalMark";
import { quoted } from "../quantities/quoted";
import type { DecimalMark } from "../quantities/readNumber";
import { readUnit } from "../quantities/readUnit";
import { answer, type Result, refuse } from "../quantities/result";
import type { Unit } from "../quantities/units";
import { FIELDS, isField, plainWords } from "./fields";
import { readTitle } from "./readTitle";

export interface ExportColumn {
  readonly index: number;
  readonly title: string;
  readonly unit?: Unit;
  /** What the column holds: a name of `FIELDS` or the id of a record column; none where it is not recognised. */
  readonly field?: string;
}

/** One line of an export's table. `line` counts the file's lines from 1. */
export interface ExportRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** An instrument's export, its table found and its columns recognised, nothing placed yet. */
export interface ExportTable {
  readonly name: string;
  readonly delimiter: string;
  readonly decimal: DecimalEvidence;
  /** The block above the table, as key and value. */
  readonly header: Readonly<Record<string, string>>;
  readonly columns: readonly ExportColumn[];
  readonly rows: readonly ExportRow[];
}

export interface ExportOptions {
  /** Name of the file, as it shall stand in the origin column. */
  readonly name: string;
  /** Fields by title, for titles that are not recognised or mean something else here. */
  readonly mapping?: Readonly<Record<string, string>>;
  /** The decimal mark, where the user has settled it. */
  readonly decimal?: DecimalMark;
}

const DELIMITERS = [",", ";", "\t", "|"];
/** The titles stand within this many characters and rows of the start. */
const LOOK_CHARACTERS = 100_000;
const LOOK_ROWS = 100;

/**
 * Reads an instrument's export: finds the delimiter, the block of facts above the table, the titles
 * with their units, a row of units under them, the lines, and the decimal mark.
 *
 * @param text delimited text: comma, semicolon, tab or vertical bar
 * @returns `wrong` for what is no text, has no table, or a table without a recognisable column
 * @example readExport("Panel;Pole;R (µΩ)\n=H01;L1;31,5", { name: "crm.csv" }) // delimiter ";", decimal comma, three columns
 */
export const readExport = (
  text: string,
  { name, mapping = {}, decimal }: ExportOptions,
): Result<ExportTable> => {
  const file = quoted(name, 80);
  const unreadable = unreadableAt(text);
  if (unreadable) return refuse("wrong", `${file} ${unreadable}`);
  const unknown = Object.values(mapping).find((field) => !isField(field));
  if (unknown !== undefined)
    return refuse("wrong", `${quoted(unknown)} is no field to map a title to; ${fieldNames()}.`);

  const given = new Map(
    Object.entries(mapping).map(([title, field]) => [plainWords(title), field]),
  );
  const found = inspect(text.slice(0, LOOK_CHARACTERS), given);
  if (found.recognised === 0)
    return refuse(
      "wrong",
      `${file} has no row of titles with columns that are recognised. The titles found are ${listed(found.titles)}; ${fieldNames()}.`,
    );

  const lines = numbered(text, found.delimiter);
  const titles = lines[found.at]?.cells ?? [];
  const under = lines[found.at + 1]?.cells ?? [];
  const units = isUnitRow(under) ? under : [];
  const columns = columnsOf(titles, units, given);
  const twice = columns.find(({ field, index }) =>
    columns.some((other) => field !== undefined && other.field === field && other.index < index),
  );
  if (twice) {
    const first = columns.find(({ field }) => field === twice.field);
    return refuse(
      "wrong",
      `${file}: the columns ${quoted(first?.title ?? "")} and ${quoted(twice.title)} both read as ${nameOf(twice.field)}; say by a mapping which of them it is.`,
    );
  }
  const rows = lines
    .slice(found.at + (units.length > 0 ? 2 : 1))
    .filter(({ cells }) => cells.some((cell) => cell !== "") && !cells[0]?.startsWith("#"));
  const facts = lines.slice(0, found.at).flatMap(factOf);
  return answer({
    name,
    delimiter: found.delimiter,
    decimal: decimal
      ? { mark: decimal, evidence: `decimal ${decimal === "," ? "comma" : "point"}, as was said` }
      : markOf(facts, columns, rows),
    header: Object.fromEntries(facts.map(({ key, value }) => [key, value])),
    columns,
    rows,
  });
};

const unreadableAt = (text: string): string | undefined => {
  if (text.trim() === "") return "is empty; an export has a row of titles and rows of readings.";
  const [strange] = /[\0\ufffd]/.exec(text) ?? [];
  if (strange === undefined) return undefined;
  const line = text.slice(0, text.indexOf(strange)).split(/\r\n|\r|\n/).length;
  return strange === "\0"
    ? `is not delimited text: there is a NUL character on line ${line}. Export it as CSV or tab-separated text, UTF-8.`
    : `has a character on line ${line} that is not UTF-8. Save it again as UTF-8, so that units such as µΩ are read right.`;
};

interface Found {
  readonly delimiter: string;
  readonly at: number;
  readonly recognised: number;
  readonly titles: readonly string[];
}

/** The delimiter and the row under which the most titles are recognised. */
const inspect = (text: string, given: ReadonlyMap<string, string>): Found => {
  let best: Found = { delimiter: ",", at: 0, recognised: 0, titles: [] };
  for (const delimiter of DELIMITERS) {
    const rows = parse(text, delimiter).slice(0, LOOK_ROWS);
    rows.forEach((titles, at) => {
      const fields = new Set(columnsOf(titles, [], given).flatMap(({ field }) => field ?? []));
      const wider = best.recognised === 0 && titles.length > best.titles.length;
      // A lone recognised title may be a fact above the table; a table has at least two columns.
      const recognised = fields.size > 1 ? fields.size : 0;
      if (recognised > best.recognised || (recognised === 0 && wider))
        best = { delimiter, at, recognised, titles };
    });
  }
  return best;
};

const parse = (text: string, delimiter: string): string[][] =>
  parseCsv(text, { delimiter }).map((cells) => cells.map((cell) => String(cell ?? "").trim()));

/** Rows with the number of the file's line that each begins on: a quoted cell can span several. */
const numbered = (text: string, delimiter: string): ExportRow[] => {
  let line = 1;
  return parseCsv(text, { delimiter }).map((cells) => {
    const row = { line, cells: cells.map((cell) => String(cell ?? "").trim()) };
    line += 1;
    for (const cell of cells)
      if (typeof cell === "string") line += cell.match(/\r\n|\r|\n/g)?.length ?? 0;
    return row;
  });
};

const columnsOf = (
  titles: readonly string[],
  units: readonly string[],
  given: ReadonlyMap<string, string>,
): ExportColumn[] =>
  titles.map((title, index) => {
    const { field, unit } = readTitle(title, given.get(plainWords(title)));
    const below = readUnit(units[index]?.replace(/^[([]|[)\]]$/g, "") ?? "");
    return { index, title, field, unit: unit ?? (below.ok ? below.value : undefined) };
  });

const isUnitRow = (cells: readonly string[]): boolean => {
  const filled = cells.filter((cell) => cell !== "" && cell !== "-");
  return (
    filled.length > 0 &&
    filled.every((cell) => cell.length < 12 && readUnit(cell.replace(/^[([]|[)\]]$/g, "")).ok)
  );
};

interface Fact {
  readonly line: number;
  readonly key: string;
  readonly value: string;
}

/** A line above the table: `Temperature,21.4 °C`, `Temperature: 21.4 °C`, `# Stage: before`, or a remark. */
const factOf = ({ line, cells }: ExportRow): Fact[] => {
  const filled = cells.filter((cell) => cell !== "");
  const [first = "", ...rest] = filled;
  const text = first.replace(/^#+\s*/, "");
  if (text === "") return [];
  if (rest.length > 0) return [{ line, key: text.replace(/\s*:$/, ""), value: rest.join(" ") }];
  const at = text.indexOf(":");
  return [
    at > 0
      ? { line, key: text.slice(0, at).trim(), value: text.slice(at + 1).trim() }
      : { line, key: text, value: "" },
  ];
};

/** The decimal mark, from the measured columns and the facts that carry a quantity. */
const markOf = (
  facts: readonly Fact[],
  columns: readonly ExportColumn[],
  rows: readonly ExportRow[],
): DecimalEvidence => {
  const measured = columns.filter(
    ({ field, unit }) => unit !== undefined || (field !== undefined && isMeasured(field)),
  );
  const texts = [
    ...facts.filter(({ key }) => isMeasured(readTitle(key).field ?? "")),
    ...rows.flatMap(({ line, cells }) =>
      measured.map(({ index }) => ({ line, value: cells[index] ?? "" })),
    ),
  ];
  return decimalMark(
    texts.map(({ value }) => value),
    (index) => `line ${texts[index]?.line}`,
  );
};

const isMeasured = (field: string) => field === "reading" || FIELDS[field]?.quantity !== undefined;

const nameOf = (field = "") => (Object.hasOwn(FIELDS, field) ? FIELDS[field]?.name : quoted(field));

const fieldNames = () =>
  `right would be titles such as ${Object.entries(FIELDS)
    .map(([field, { titles }]) => `${titles[0]} (${field})`)
    .join(", ")}`;

const listed = (titles: readonly string[]) => {
  const shown = titles.filter((title) => title !== "").slice(0, 12);
  return shown.length > 0 ? shown.map((title) => quoted(title)).join(", ") : "all blank";
};
