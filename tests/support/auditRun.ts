import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Finding } from "../../src/check/findings/finding";
import type { CellValue } from "../../src/records/kind";
import { readArea } from "../../src/sheets/cells/area";
import type { SheetCells, SheetSnapshot, Snapshot, Unseen } from "../../src/sheets/snapshot";
import { readBook } from "../../src/xlsx/readBook";
import { isMasking } from "../../src/xlsx/unseenStyles";
import { reportOf } from "./checkBook";

/** One change to a workbook, as its auditor wrote it. */
interface Edit {
  readonly sheet: string;
  readonly cell?: string;
  readonly value?: CellValue;
  readonly formula?: string;
  readonly numberFormat?: string;
  readonly white?: boolean;
  readonly row?: number;
  readonly rowHeight?: number;
  readonly hidden?: boolean;
  readonly hiddenSheet?: boolean;
}

export interface AuditCase {
  readonly id: string;
  readonly sort: string;
  readonly why: string;
  readonly edits: readonly Edit[];
  /** Where a finding counts as telling of it: rows of a sheet, or all of them as `*`; none for a harmless difference. */
  readonly tellAt?: readonly { readonly sheet: string; readonly rows: readonly string[] }[];
}

const file = (name: string) => fileURLToPath(new URL(`audit/${name}`, import.meta.url));

/**
 * Single faults and harmless differences that an auditor put into a filled sample by hand, before the
 * rules that find them were written: another hand than that of the generated families.
 */
export const auditCases = (): { faults: AuditCase[]; harmless: AuditCase[] } =>
  JSON.parse(readFileSync(file("cases.json"), "utf8"));

export const auditBook = (): Promise<Snapshot> => readBook(readFileSync(file("base.xlsx")));

/** The day of the audit: 30 November 2026. */
const TODAY = 46_356;

/** The workbook with the edits of a case in it. */
export const withEdits = (book: Snapshot, edits: readonly Edit[]): Snapshot => ({
  ...book,
  sheets: book.sheets.map((sheet) => {
    const own = edits.filter((edit) => edit.sheet === sheet.name);
    return own.length === 0 ? sheet : withOwn(sheet, own);
  }),
});

function withOwn(sheet: SheetSnapshot, edits: readonly Edit[]): SheetSnapshot {
  const { cells } = sheet;
  if (!cells) throw new Error(`the sheet ${sheet.name} was read without its cells`);
  const changed = changedCells(edits);
  const unseen = new Map<string, Unseen>();
  for (const { cell = "", numberFormat, white } of edits) {
    if (white) unseen.set(placeOf(cell), "colour");
    if (numberFormat !== undefined && isMasking(numberFormat)) unseen.set(placeOf(cell), "format");
  }
  const lines = edits.flatMap(({ row, hidden, rowHeight = 15 }) =>
    row !== undefined && (hidden || rowHeight < 4) ? [row - 1] : [],
  );
  const shown: SheetCells = {
    ...cells,
    cell: (row, column) => changed.values.get(`${row},${column}`) ?? blankOr(row, column),
    formula: (row, column) =>
      changed.values.has(`${row},${column}`)
        ? changed.formulas.get(`${row},${column}`)
        : cells.formula(row, column),
    unseen: (row, column) => unseen.get(`${row},${column}`),
  };
  function blankOr(row: number, column: number): CellValue {
    return changed.values.has(`${row},${column}`) ? null : (cells?.cell(row, column) ?? null);
  }
  return {
    ...sheet,
    hidden: sheet.hidden === true || edits.some(({ hiddenSheet }) => hiddenSheet),
    cells: shown,
    tables: sheet.tables.map((table) => ({
      ...table,
      hidden: new Set([...(table.hidden ?? []), ...lines.map((row) => row - table.top - 1)]),
      cell: (row, column) => shown.cell(table.top + 1 + row, table.left + column),
      formula: (row, column) => shown.formula(table.top + 1 + row, table.left + column),
    })),
  };
}

function changedCells(edits: readonly Edit[]) {
  const [values, formulas] = [new Map<string, CellValue>(), new Map<string, string>()];
  for (const { cell, value, formula, numberFormat, white } of edits) {
    if (cell === undefined || (value === undefined && (numberFormat !== undefined || white)))
      continue;
    values.set(placeOf(cell), value ?? null);
    if (formula !== undefined) formulas.set(placeOf(cell), formula);
  }
  return { values, formulas };
}

function placeOf(cell: string): string {
  const area = readArea(cell);
  if (!area) throw new Error(`${cell} is not the address of a cell`);
  return `${area.top},${area.left}`;
}

/** Rules that speak of stored results. */
const OF_FORMULAS: ReadonlySet<string> = new Set(["result-disagrees", "own-formula"]);

/** What the check says of a workbook with a fault, beyond what it says of the workbook as it was. */
export function newFindings(book: Snapshot, { edits }: AuditCase, known: ReadonlySet<string>) {
  const own = new Set(edits.map(({ sheet, cell }) => `${sheet}!${cell}`));
  return findingsOf(withEdits(book, edits)).filter(
    (finding) =>
      !known.has(nameOf(finding)) &&
      // The formulas keep their results: of what was changed, not of what would be calculated anew.
      (!OF_FORMULAS.has(finding.rule) || own.has(`${finding.sheet}!${finding.address}`)),
  );
}

export const findingsOf = (book: Snapshot): readonly Finding[] => reportOf(book, TODAY).findings;

export const nameOf = ({ rule, sheet, address, found, message }: Finding): string =>
  [rule, sheet, address, found, message.split(". ")[0]].join("|");

const placeAndRule = ({ rule, sheet, address }: Finding): string =>
  [rule, sheet, address].join("|");

/** Whether a finding stands where the auditor wants to be told. */
export const isToldAt = ({ tellAt = [] }: AuditCase, { sheet, address }: Finding): boolean => {
  const row = address.split(":")[0]?.replace(/\D/g, "") ?? "";
  return tellAt.some(
    (at) => at.sheet === sheet && (at.rows.includes("*") || at.rows.includes(row)),
  );
};

export interface AuditResult {
  readonly fault: AuditCase;
  readonly told: "found" | "elsewhere" | "missed";
  readonly findings: readonly Finding[];
}

/** Each fault by itself: found at the right place, told elsewhere, or missed; and what is said of each harmless difference. */
export async function auditRun(
  cases: ReturnType<typeof auditCases> = auditCases(),
  given?: Snapshot,
) {
  const book = given ?? (await auditBook());
  const before = findingsOf(book);
  const known = new Set(before.map(nameOf));
  const faults = cases.faults.map((fault): AuditResult => {
    const findings = newFindings(book, fault, known);
    const isFound = findings.some((finding) => isToldAt(fault, finding));
    return {
      fault,
      findings,
      told: isFound ? "found" : findings.length > 0 ? "elsewhere" : "missed",
    };
  });
  // What the same rule said of the same cell before, though with another day or number in it, is no new alarm.
  const places = new Set(before.map(placeAndRule));
  const harmless = cases.harmless.map((fault) => ({
    fault,
    findings: newFindings(book, fault, known).filter((one) => !places.has(placeAndRule(one))),
  }));
  return { faults, harmless };
}
