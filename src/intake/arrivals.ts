import { quoted } from "../quantities/quoted";
import { readUnit } from "../quantities/readUnit";
import { type Answer, answer, type Result, refuse } from "../quantities/result";
import { splitReading } from "../quantities/splitReading";
import { unitSize } from "../quantities/units";
import type { CellValue, Column, RecordKind } from "../records/kind";
import { cellValue } from "./cellValue";
import { columnFor } from "./columnFor";
import { plainWords } from "./fields";
import { kindOfTest } from "./kindOfTest";
import type { Asked } from "./placement";
import { type DateOrder, readDate, readTime } from "./readDate";
import type { ExportBlock, ExportRow, ExportTable } from "./readExport";
import type { RecordRows } from "./recordRows";
import { type FoundRow, type Lost, lost, rowFinder } from "./rowFinder";
import { type Written, writtenBy } from "./written";

/** A line that has found its row, with the cells that it has for it. */
export interface Arrival<T extends RecordRows> extends FoundRow<T> {
  readonly line: number;
  readonly cells: ReadonlyMap<string, CellValue>;
  /** Serial day; with the time of day as its fraction where the line has that too. */
  readonly day?: number;
  /** Date and time of day as a serial number, where the line has both. */
  readonly when?: number;
}

export interface ArrivalOptions {
  readonly instruments?: readonly { readonly id: string; readonly serial: string }[];
  readonly wave?: "AC" | "DC";
  /** The lineup's panels, of which an export may give the circuit's name. */
  readonly panels?: readonly { readonly designation: string; readonly name?: string }[];
  /** What a text of the export means here, by field: confirmed by the user. */
  readonly means?: Readonly<Partial<Record<Asked, Readonly<Record<string, string>>>>>;
}

/** Is told of a line or cell that cannot be placed, and of the names that come nearest to one in it. */
export type Say = (line: number, reason: string, suggestion?: Lost["suggestion"]) => void;

/**
 * Finds for each line of an export its record table, its row and its cells.
 *
 * @param say is told of each line or cell that cannot be placed, and why
 */
export function* arrivalsOf<T extends RecordRows>(
  table: ExportTable,
  tables: readonly T[],
  options: ArrivalOptions,
  say: Say,
): Generator<Arrival<T>> {
  const { instruments = [], wave } = options;
  const meant = meaning(options);
  const find = remembered(rowFinder(tables, table.positions));
  const cellsOf = cellReader(table, instruments, wave);
  const dayOf = once((text) => readDate(text, table.dates));
  const timeOf = once(readTime);
  const among = new Map<string, ReturnType<typeof tablesFor<T>>>();
  let readLine = writtenBy(table.blocks[0] as ExportBlock);
  let of = table.blocks[0];
  for (const { block, row } of table.each()) {
    if (block !== of) {
      of = block;
      readLine = writtenBy(block);
      among.clear();
    }
    const written = readLine(row);
    const text = (field: Asked | "circuit") => {
      const one = written.get(field)?.text;
      return one === undefined ? "" : meant(field, one);
    };
    const what = whatIn(written, text("test"));
    const known = among.get(what) ?? tablesFor(tables, written, text("test"), block);
    among.set(what, known);
    const tablesHere: typeof known = isTorn(row, block) ?? known;
    if (!tablesHere.ok) {
      say(row.line, tablesHere.reason, tablesHere.suggestion);
      continue;
    }
    const found = find(
      {
        object: text("object") || text("circuit") || meant("object", written.get("section")?.text),
        part: text("part"),
        position: text("position"),
        stage: text("stage"),
      },
      tablesHere.value,
    );
    if (!found.ok) {
      say(row.line, found.reason, found.suggestion);
      continue;
    }
    const cells = cellsOf(row.line, written, found.value.table, say);
    if (!cells) continue;
    const [day, hours] = [written.get("date")?.text ?? "", written.get("time")?.text ?? ""];
    const date = dayOf(day);
    const time = timeOf(hours) ?? timeOf(day);
    yield {
      table: found.value.table,
      row: found.value.row,
      line: row.line,
      cells,
      day: date.ok ? date.value : undefined,
      when: date.ok && time !== undefined ? date.value + time : undefined,
    };
  }
}

/** What a text means by the user's own word, and a circuit's name by the lineup. */
export const meaning = ({ means = {}, panels = [] }: ArrivalOptions) => {
  const said = new Map(
    Object.entries(means).flatMap(([field, words]) =>
      Object.entries(words ?? {}).map(([text, name]) => [`${field} ${plainWords(text)}`, name]),
    ),
  );
  const named = new Map<string, string | undefined>();
  for (const { designation, name } of panels) {
    const words = plainWords(name ?? "");
    // A name that two panels have means neither.
    if (words !== "") named.set(words, named.has(words) ? undefined : designation);
  }
  const designations = new Set(panels.map(({ designation }) => plainWords(designation)));
  const none = said.size === 0 && named.size === 0;
  return (field: Asked | "circuit", text = ""): string => {
    if (none || text === "") return text;
    const words = plainWords(text);
    const asked = field === "circuit" ? "object" : field;
    const own = said.get(`${asked} ${words}`);
    if (own !== undefined) return own;
    return asked === "object" && !designations.has(words) ? (named.get(words) ?? text) : text;
  };
};

/** The search for rows, which answers the same question once. */
const remembered = <T extends RecordRows>(find: ReturnType<typeof rowFinder<T>>): typeof find => {
  const known = new Map<readonly T[], Map<string, ReturnType<typeof find>>>();
  return (place, among) => {
    const answers = known.get(among) ?? new Map<string, ReturnType<typeof find>>();
    known.set(among, answers);
    const asked = `${place.object}\n${place.part}\n${place.position}\n${place.stage}`;
    const before = answers.get(asked);
    if (before) return before;
    const found = find(place, among);
    if (answers.size < MOST_REMEMBERED) answers.set(asked, found);
    return found;
  };
};

const MOST_REMEMBERED = 200_000;

/** Which fields a line has, and of which quantities where its cells name their own units. */
const whatIn = (written: ReadonlyMap<string, Written>, test: string): string => {
  let what = test;
  for (const { field, text, unit } of written.values()) {
    what += `|${field} `;
    if (WORDS.has(field)) continue;
    if (!PLAIN_NUMBER.test(text)) {
      const own = splitReading(text)?.unit ?? "";
      what += own.length < 12 ? own : "?";
    } else if (unit) what += unit;
  }
  return what;
};

/** Fields that hold no quantity. */
const WORDS: ReadonlySet<string> = new Set(
  "object circuit section part position stage test date time by instrument serial remarks discharge".split(
    " ",
  ),
);

/** A reader of short texts, which reads the same text once. */
const once = <T>(read: (text: string) => T): ((text: string) => T) => {
  const known = new Map<string, T>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const value = read(text);
    if (known.size < MOST_READ && text.length < 100) known.set(text, value);
    return value;
  };
};

const PLAIN_NUMBER = /^-?\d+(?:[.,]\d+)?$/;

/** Reads a line's cells; undefined for a line whose reading itself cannot be taken. */
const cellReader = (
  table: ExportTable,
  instruments: NonNullable<ArrivalOptions["instruments"]>,
  wave: ArrivalOptions["wave"],
) => {
  const known = new Map<Column, Map<string, Result<CellValue>>>();
  const readOnce = (column: Column, one: Written): Result<CellValue> => {
    const values = known.get(column) ?? new Map<string, Result<CellValue>>();
    known.set(column, values);
    const asked = `${one.title}\n${one.unit ?? ""}\n${one.text}`;
    const before = values.get(asked);
    if (before) return before;
    const value = readCell(one, column, table, table.dates, wave);
    if (values.size < MOST_READ && asked.length < 200) values.set(asked, value);
    return value;
  };
  const columns = columnFinder();
  return (
    line: number,
    written: ReadonlyMap<string, Written>,
    of: RecordRows,
    say: Say,
  ): ReadonlyMap<string, CellValue> | undefined => {
    const cells = new Map<string, CellValue>();
    for (const [column, candidates] of byColumn(of, written, columns)) {
      const one = onlyOne(column, candidates, instruments);
      const value = one.ok ? readOnce(column, one.value) : one;
      if (value.ok) cells.set(column.id, value.value);
      else {
        say(
          line,
          `${value.reason}${column.need === "reading" ? "" : ` (${column.header} only; the rest of the line stands)`}`,
        );
        if (column.need === "reading") return undefined;
      }
    }
    return cells;
  };
};

const MOST_READ = 20_000;

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

/** A line with more cells than titles has been parted in the wrong places. */
const isTorn = ({ cells }: ExportRow, { columns }: ExportBlock): Result<never> | undefined =>
  cells.slice(columns.length).some((cell) => cell !== "")
    ? refuse(
        "wrong",
        `has ${cells.length} cells under ${columns.length} titles; where a comma is decimal, the line needs another delimiter or quotation marks around the number.`,
      )
    : undefined;

/** The record tables that a line can belong to, by the test it names and by what it has read. */
const tablesFor = <T extends RecordRows>(
  tables: readonly T[],
  written: ReadonlyMap<string, Written>,
  test: string,
  exported: ExportBlock,
): Answer<readonly T[]> | Lost => {
  const ids = tables.map(({ kind }) => kind.id);
  const named = test === "" ? undefined : kindOfTest(test, ids);
  if (test !== "" && named === undefined)
    return lost(
      "test",
      test,
      tables.map(({ kind }) => kind.sheet),
      `test ${quoted(test)} is none of the record tables here, which are ${tables.map(({ kind }) => kind.sheet).join(", ")}.`,
    );
  const ofTest = named === undefined ? tables : tables.filter(({ kind }) => kind.id === named);
  const among = ofTest.filter(({ kind }) => hasReading(kind, written));
  return among.length > 0 ? answer(among) : noReading(ofTest, written, exported);
};

/** Why a line has no reading for any of these tables. */
const noReading = (
  tables: readonly RecordRows[],
  written: ReadonlyMap<string, Written>,
  { columns }: ExportBlock,
): Result<never> => {
  const readings = tables.flatMap(({ kind }) =>
    kind.columns.flatMap(({ need, header }) => (need === "reading" ? header : [])),
  );
  const wanted = [...new Set(readings)].join(", ");
  const sources = columns.filter(({ field }) =>
    tables.some(({ kind }) => field && columnFor(kind, field)?.need === "reading"),
  );
  if (sources.length === 0)
    return refuse(
      "none",
      `there is no column with a reading; right would be one for ${wanted}, with its unit.`,
    );
  const given = sources.flatMap(({ field }) => written.get(field ?? "") ?? [])[0];
  return given === undefined
    ? refuse(
        "none",
        `has no reading: blank under ${sources.map(({ title }) => quoted(title)).join(" and ")}.`,
      )
    : refuse(
        "wrong",
        `${quoted(given.text)} under ${quoted(given.title)} is of another quantity than ${wanted}.`,
      );
};

/** Whether a line has a reading of the kind's quantity, and no resistance that the kind cannot take. */
const hasReading = (kind: RecordKind, written: ReadonlyMap<string, Written>): boolean =>
  (!written.has("resistance") || columnFor(kind, "resistance") !== undefined) &&
  [...written.values()].some((one) => {
    const column = columnFor(kind, one.field);
    return column?.need === "reading" && isOfQuantity(one, column);
  });

const isOfQuantity = ({ text, unit }: Written, column: Column): boolean => {
  const own = readUnit(splitReading(text)?.unit ?? "", unit ?? column.unit);
  const known = own.ok ? own.value : unit;
  return (
    known === undefined ||
    column.unit === undefined ||
    unitSize(known).quantity === unitSize(column.unit).quantity
  );
};

/** What a line has for each column of the record table. */
export const byColumn = (
  { kind, at }: RecordRows,
  written: ReadonlyMap<string, Written>,
  find: typeof columnFor,
): ReadonlyMap<Column, Written[]> => {
  const found = new Map<Column, Written[]>();
  for (const one of written.values()) {
    const column = find(kind, one.field);
    if (column === undefined || (at && !at.has(column.id))) continue;
    const sofar = found.get(column);
    if (sofar) sofar.push(one);
    else found.set(column, [one]);
  }
  return found;
};

/** The one text for a column. An instrument may be named by its Id and its serial number at once. */
export const onlyOne = (
  column: Column,
  candidates: readonly Written[],
  instruments: NonNullable<ArrivalOptions["instruments"]>,
): Result<Written> => {
  const [first, ...others] = candidates;
  if (first === undefined) return refuse("none", `nothing is given for ${column.header}.`);
  if (column.id === "instrument") {
    const same = (one: string, other: string) =>
      one.trim().toLowerCase() === other.trim().toLowerCase();
    const known = candidates.flatMap(({ text }) =>
      instruments.filter(({ id, serial }) => same(text, id) || same(text, serial)),
    )[0];
    const named = candidates.find(({ field }) => field === "instrument") ?? first;
    return answer(known ? { ...named, text: known.id } : named);
  }
  const air = column.header.startsWith("Air") ? "air" : "temperature";
  const nearer = candidates.find(({ field }) => field === air);
  if (column.id === "temperature" && nearer) return answer(nearer);
  const other = others.find(({ text }) => text !== first.text);
  return other === undefined
    ? answer(first)
    : refuse(
        "wrong",
        `${quoted(first.title)} and ${quoted(other.title)} both give ${column.header}, ${quoted(first.text)} and ${quoted(other.text)}; right would be one of them.`,
      );
};

export const readCell = (
  { text, title, unit }: Written,
  column: Column,
  { decimal }: Pick<ExportTable, "decimal">,
  dates: DateOrder | undefined,
  wave: ArrivalOptions["wave"],
): Result<CellValue> => {
  const said = /\b(?:V|kV)?\s*(AC|DC)\b/i.exec(title)?.[1]?.toUpperCase();
  if (wave && said && said !== wave && column.need === "reading" && column.unit === "kV")
    return refuse(
      "wrong",
      `${quoted(title)} is of ${said}; the withstand test of this lineup is ${wave}.`,
    );
  const value = cellValue(text, column, { unit, decimal: decimal.mark, dates });
  return value.ok || decimal.mark !== undefined || !/[.,]/.test(text) || column.unit === undefined
    ? value
    : refuse(value.kind, `${value.reason} (The file: ${decimal.evidence}.)`);
};
