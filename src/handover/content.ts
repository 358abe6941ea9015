import type { Counts, Report } from "../check/check";
import type { JudgedTable } from "../check/context";
import type { Finding } from "../check/findings/finding";
import { type RowComparison, recordRows } from "../check/progress/recordRows";
import { type PunchItem, punchList } from "../check/punch/punchList";
import type { Lineup } from "../lineup/lineup";
import { serialDay } from "../quantities/dates";
import { type CellValue, isBlank, type Role, type Row, verdictOf } from "../records/kind";
import { storedKindWords } from "../records/kindWords";
import { readingWords } from "../records/readingWords";
import { cellAddress } from "../sheets/cells/address";
import { historyOf } from "../sheets/ours/historySheet";
import type { InstrumentRow } from "../sheets/ours/instrumentSheet";
import { PUNCH_STATES } from "../sheets/ours/punchSheet";
import { repairsOf } from "../sheets/ours/repairSheet";
import type { Verdict } from "../standards/judge";

/** The published form of `records.json`; another number where it changes. */
export const RECORDS_FORMAT = "gearproof-records-2";

/** One cell of a record that holds something. */
export interface HandedCell {
  readonly address: string;
  /** Header of the column. */
  readonly column: string;
  readonly role: Role;
  readonly value: CellValue;
  readonly unit?: string;
}

/** One record as it is handed over. */
export interface HandedRow {
  readonly sheet: string;
  /** Id of the record kind, and its title. */
  readonly record: string;
  readonly title: string;
  /** The panel or bus section. */
  readonly panel: string;
  /** The record's key cells in order. */
  readonly row: string;
  readonly state: "open" | "begun" | "judged";
  readonly result: Verdict;
  readonly cells: readonly HandedCell[];
  readonly comparisons: readonly RowComparison[];
  /** Where the limits come from. */
  readonly sources: string;
}

/** A reading that a later one has taken the place of. */
export interface HandedHistory {
  readonly sheet: string;
  readonly panel: string;
  readonly row: string;
  readonly column: string;
  readonly value: CellValue;
  /** Day of the test and of the replacement, as 2026-11-25; blank where not known. */
  readonly date: string;
  readonly source: string;
  readonly replacedOn: string;
}

/** A record that failed, how it was repaired, and what the retest came to. Days as 2026-11-25; blank where not known. */
export interface HandedRepair {
  readonly sheet: string;
  readonly panel: string;
  readonly row: string;
  readonly found: string;
  readonly tested: string;
  readonly cause: string;
  readonly work: string;
  readonly done: string;
  readonly by: string;
  readonly date: string;
  /** As left: the readings of the retest and its result; blank where it was not tested again. */
  readonly left: string;
  /** Day of the retest. */
  readonly retested: string;
}

/** An item of the punch list. Days as 2026-11-25; blank where not known. */
export interface HandedPunch {
  readonly number: number;
  readonly panel: string;
  readonly what: string;
  readonly severity: string;
  readonly owner: string;
  readonly due: string;
  readonly state: string;
  /** How it was closed. */
  readonly note: string;
  /** Names of photos and files. */
  readonly files: string;
  readonly raised: string;
  readonly closed: string;
  /** Why a finding was accepted, by whom and when. */
  readonly accepted: string;
  /** Whether the check still finds it: `Found`, `Gone`; blank where it was written by hand. */
  readonly check: string;
  readonly sheet: string;
  readonly cell: string;
}

/** All that a hand-over says: what `records.json` holds, what the report prints, what the fingerprint is taken of. */
export interface Content {
  readonly format: typeof RECORDS_FORMAT;
  /** The day of the check for hand-over, as 2026-11-25. */
  readonly checked: string;
  readonly lineup: Lineup;
  readonly instruments: readonly InstrumentRow[];
  readonly counts: Counts;
  readonly rows: readonly HandedRow[];
  /** Readings that stood on records before, failed ones among them. */
  readonly history: readonly HandedHistory[];
  /** What failed and was repaired, as found and as left. */
  readonly repairs: readonly HandedRepair[];
  /** What is to be closed out, and what was: from findings and by hand. */
  readonly punch: readonly HandedPunch[];
  readonly findings: readonly Finding[];
}

/** The content that a text of `records.json` holds; undefined where it is none of this form. */
export function contentIn(json: string): Content | undefined {
  try {
    const read = JSON.parse(json) as Partial<Content> | null;
    const isContent =
      read?.format === RECORDS_FORMAT && Array.isArray(read.rows) && Array.isArray(read.findings);
    return isContent && read.lineup ? (read as Content) : undefined;
  } catch {
    return undefined;
  }
}

/** What the check for hand-over of a workbook comes to, as plain data. */
export const contentOf = (report: Report): Content => {
  const { context, counts, findings } = report;
  return {
    format: RECORDS_FORMAT,
    checked: serialDay(context.today),
    lineup: context.lineup,
    instruments: [...(context.instruments?.values() ?? [])],
    counts,
    rows: context.tables.flatMap((table) => rowsOf(table, context)),
    history: historyOf(context.snapshot).map(replaced),
    repairs: repairsOf(context.snapshot).map(({ row }) => repaired(row, context)),
    punch: punchList(report).map(handedPunch),
    findings,
  };
};

const handedPunch = ({ cells }: PunchItem): HandedPunch => ({
  number: Number(cells.number) || 0,
  panel: textOf(cells.panel),
  what: textOf(cells.what),
  severity: textOf(cells.weight),
  owner: textOf(cells.owner),
  due: dayIn(cells.due),
  state: textOf(cells.state) || PUNCH_STATES.open,
  note: textOf(cells.note),
  files: textOf(cells.files),
  raised: dayIn(cells.raised),
  closed: dayIn(cells.closed),
  accepted: textOf(cells.accepted),
  check: textOf(cells.check),
  sheet: textOf(cells.sheet),
  cell: textOf(cells.address),
});

const replaced = (row: Row): HandedHistory => ({
  sheet: textOf(row.sheet),
  panel: textOf(row.row).split(" · ")[0] ?? "",
  row: textOf(row.row),
  column: textOf(row.column),
  value: row.value ?? null,
  date: dayIn(row.date),
  source: textOf(row.source),
  replacedOn: dayIn(row.replacedOn),
});

function repaired(repair: Row, { tables }: Report["context"]): HandedRepair {
  const row = textOf(repair.row).trim();
  const table = tables.find(
    ({ table: { sheet }, keys }) => sheet === repair.sheet && keys.includes(row),
  );
  const now = table?.judged[table.keys.indexOf(row)];
  const date = dayIn(repair.date);
  const isRetested = now !== undefined && verdictOf(now) !== "Missing" && dayIn(now.date) >= date;
  return {
    sheet: textOf(repair.sheet),
    panel: row.split(" · ")[0] ?? "",
    row,
    found: textOf(repair.found),
    tested: dayIn(repair.tested),
    cause: textOf(repair.cause),
    work: textOf(repair.work),
    done: textOf(repair.done),
    by: textOf(repair.by),
    date,
    left: table && isRetested ? readingWords(table.kind, now) : "",
    retested: isRetested ? dayIn(now.date) : "",
  };
}

const textOf = (cell: CellValue | undefined): string => String(cell ?? "");
const dayIn = (cell: CellValue | undefined): string =>
  typeof cell === "number" ? serialDay(Math.floor(cell)) : textOf(cell);

/** Whether nothing of weight `stop` stands open against it. */
export const isFinal = ({ findings }: Pick<Content, "findings">): boolean =>
  !findings.some(({ weight, concession }) => weight === "stop" && !concession);

const rowsOf = (table: JudgedTable, context: Report["context"]): HandedRow[] => {
  const { kind, judged, aside, open, keys } = table;
  const told = recordRows({ ...context, tables: [table] });
  return judged
    .flatMap((row, at) => (aside.has(at) ? [] : [{ row, at }]))
    .map(({ row, at }, index): HandedRow => {
      const result = told[index]?.result ?? "Missing";
      return {
        sheet: table.table.sheet,
        record: kind.id,
        title: storedKindWords(kind.id).title,
        panel: String(row.object ?? ""),
        row: keys[at] ?? "",
        state: result !== "Missing" ? "judged" : open.has(at) ? "open" : "begun",
        result,
        cells: kind.columns.flatMap(({ id, header, role, unit }): HandedCell[] => {
          const [value, column] = [row[id], table.at.get(id)];
          return value === undefined || isBlank(value) || column === undefined
            ? []
            : [
                {
                  address: cellAddress(table.table, at, column),
                  column: header,
                  role,
                  value,
                  ...(unit === undefined ? {} : { unit }),
                },
              ];
        }),
        comparisons: told[index]?.comparisons ?? [],
        sources: told[index]?.sources ?? "",
      };
    });
};
