import { measured } from "../../src/check/among/similar";
import { concede } from "../../src/check/concessions/concede";
import type { Finding } from "../../src/check/findings/finding";
import type { Lineup } from "../../src/lineup/lineup";
import { serialDay } from "../../src/quantities/dates";
import { evaluate } from "../../src/records/evaluate";
import {
  type CellValue,
  type Column,
  isBlank,
  type RecordKind,
  type Row,
  verdictOf,
} from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import { rowsOf } from "../../src/records/rowsOf";
import { isAsked, wordColumns } from "../../src/records/verdict";
import { a1 } from "../../src/sheets/cells/address";
import {
  CONCESSION_COLUMNS,
  CONCESSION_SHEET,
  CONCESSION_TABLE,
} from "../../src/sheets/ours/concessionSheet";
import { asRecordTable } from "../../src/sheets/recordTable";
import { check } from "./checkBook";
import {
  addressOf,
  type FaultBook,
  kindOf,
  type OpenTable,
  recalculated,
  reportWith,
  tableOf,
  withCells,
  withHeaders,
  withHidden,
  withRows,
} from "./faultBook";
import { pick } from "./random";

/** One fault put into a clean workbook: what the check says, and what it must say of it. */
export interface Injected {
  readonly findings: readonly Finding[];
  /** Rules of which one must speak, on this sheet, at one of these cells. */
  readonly rules: readonly string[];
  readonly sheet: string;
  readonly addresses: readonly string[];
  /** Rules that rightly speak elsewhere of the same fault. */
  readonly also?: readonly string[];
}

type Next = () => number;
type Inject = (book: FaultBook, next: Next) => Injected | undefined;

interface Place {
  readonly table: OpenTable;
  readonly kind: RecordKind;
  readonly rows: readonly Row[];
  readonly row: number;
  readonly stored: Row;
}

const records = (book: FaultBook, name?: string) =>
  book.tables.flatMap((table) => {
    const kind = kindOf(table);
    return kind && table.rowCount > 0 && (name === undefined || kind.id === name)
      ? [{ table, kind }]
      : [];
  });

/** A row of a record table, of any kind or of one. */
function somewhere(book: FaultBook, next: Next, kind?: string): Place | undefined {
  const tables = records(book, kind);
  if (tables.length === 0) return undefined;
  const chosen = pick(next, tables);
  const { rows } = asRecordTable(chosen.kind, chosen.table);
  const row = Math.floor(next() * rows.length);
  return { ...chosen, rows, row, stored: rows[row] ?? {} };
}

/** A row and a column of it that is as it should be for a fault. */
function cell(
  book: FaultBook,
  next: Next,
  fits: (column: Column, place: Place) => boolean,
  kind?: string,
): (Place & { column: Column }) | undefined {
  for (let attempt = 0; attempt < 60; attempt++) {
    const place = somewhere(book, next, kind);
    if (!place) return undefined;
    const columns = place.kind.columns.filter((column) => fits(column, place));
    if (columns.length > 0) return { ...place, column: pick(next, columns) };
  }
  return undefined;
}

const mayBe = (accepts: Column["accepts"], value: number): boolean =>
  accepts?.type === "number" && value <= (accepts.most ?? value);

/** One cell set, the table worked out again as a spreadsheet would, and the rules that must speak at that cell. */
const edit = (
  book: FaultBook,
  { table, row, column }: Place & { column: Column },
  value: CellValue,
  rules: readonly string[],
  more: { headers?: readonly string[]; formula?: string; asIs?: boolean } = {},
): Injected => {
  const set = withCells(table, [{ row, header: column.header, value, formula: more.formula }]);
  return {
    findings: reportWith(book, table.name, more.asIs ? set : recalculated(book, set)).findings,
    rules,
    sheet: table.sheet,
    addresses: (more.headers ?? [column.header]).map((header) => addressOf(table, row, header)),
  };
};

const entry = ({ role }: Column) => role === "entry";
const isFormula = ({ table, row }: Place, { header }: Column) =>
  table.formula(row, table.headers.indexOf(header)) !== undefined;
const number = (value: CellValue | undefined): value is number => typeof value === "number";
const verdict = (book: FaultBook, { kind, rows, row }: Place, changes: Row) =>
  verdictOf(
    evaluate(
      kind,
      rows.map((one, at) => (at === row ? { ...one, ...changes } : one)),
      book.plan.lineup,
    )[row] ?? {},
  );
/** Headers of the columns by which a row is judged. */
const judgedBy = ({ columns, accepted, enough }: RecordKind) => {
  const ids = new Set([
    ...[...accepted, ...enough].map(({ value }) => value),
    ...columns.filter(({ need }) => need === "reading").map(({ id }) => id),
    ...wordColumns(columns).map(({ id }) => id),
  ]);
  return columns.filter(({ id }) => ids.has(id)).map(({ header }) => header);
};

const blanked =
  (need: NonNullable<Column["need"]>, rule: string): Inject =>
  (book, next) => {
    const at = cell(
      book,
      next,
      (column, { stored }) =>
        entry(column) &&
        column.need === need &&
        !isBlank(stored[column.id]) &&
        (column.needed?.(stored, book.plan.lineup) ?? true),
    );
    return at && edit(book, at, null, [rule]);
  };

const dated =
  (kind: string, stage: string | undefined, day: number, rule: string, header = "Date"): Inject =>
  (book, next) => {
    const at = cell(
      book,
      next,
      ({ id }, { stored }) => id === "date" && (stage === undefined || stored.stage === stage),
      kind,
    );
    return at && edit(book, at, day, [rule], { headers: [header] });
  };

/** The formula of a cell with its references to this row as addresses of another row of the sheet. */
function asAddresses(
  { table, kind }: Place,
  formula: string,
  row: number,
  dollar: (id: string) => string = () => "",
): string {
  return kind.columns.reduce((text, { id, header }) => {
    const structured = `${table.name}[[#This Row],[${header.replace(/[[\]#']/g, "'$&")}]]`;
    const column = table.headers.indexOf(header);
    const address = a1(table.top + 1 + row, column).replace(/(\d+)$/, `${dollar(id)}$1`);
    return text.replaceAll(structured, address);
  }, formula);
}

const formulaCell = (book: FaultBook, next: Next) =>
  cell(
    book,
    next,
    (column, place) =>
      (column.role === "computed" || column.role === "result") &&
      isFormula(place, column) &&
      !isBlank(place.stored[column.id]) &&
      (place.table.formula(place.row, place.table.headers.indexOf(column.header)) ?? "").includes(
        "[#This Row]",
      ),
  );

const formulaOf = ({ table, row }: Place, { header }: Column): string =>
  table.formula(row, table.headers.indexOf(header)) ?? "";

/** Of the generated workbooks alone, whose days, instruments and torques these faults are written for. */
const ofGenerated =
  (inject: Inject): Inject =>
  (book, next) =>
    book.plan.lineup.instruments.some(({ id }) => id === "X-1") ? inject(book, next) : undefined;

/** Every family of faults, each with the rule that must find it and the cell at which it must. */
export const FAULTS: Readonly<Record<string, Inject>> = {
  "a reading deleted": blanked("reading", "missing-reading"),
  "a condition deleted": blanked("condition", "missing-condition"),
  "date, name or instrument deleted": blanked("trail", "missing-trail"),
  "a unit of a thousand": (book, next) => {
    const at = cell(book, next, (column, { stored, table }) => {
      const judged = book.report.context.tables.find((one) => one.table.name === table.name);
      return (
        judged !== undefined &&
        measured(judged).some(({ id }) => id === column.id) &&
        number(stored[column.id]) &&
        Number(stored[column.id]) !== 0
      );
    });
    return (
      at &&
      edit(
        book,
        at,
        Number(at.stored[at.column.id]) * pick(next, [1000, 0.001]),
        ["mixed-units", "implausible", "out-of-limits", "inconclusive"],
        { headers: [at.column.header, ...judgedBy(at.kind)] },
      )
    );
  },
  "all poles of a panel by a thousand": (book, next) => {
    const at = somewhere(book, next, pick(next, ["contact", "insulation"]));
    const reading = at?.kind.columns.find(({ id }) => id === "reading");
    if (!at || !reading) return undefined;
    const same = at.rows.flatMap((row, index) =>
      row.object === at.stored.object &&
      row.part === at.stored.part &&
      row.stage === at.stored.stage
        ? [index]
        : [],
    );
    const set = withCells(
      at.table,
      same.map((row) => ({
        row,
        header: reading.header,
        value: Number(at.rows[row]?.reading) / 1000,
      })),
    );
    const { findings } = reportWith(book, at.table.name, recalculated(book, set));
    return {
      findings,
      rules: ["mixed-units", "out-of-limits", "inconclusive"],
      sheet: at.table.sheet,
      addresses: [reading.header, "R corrected MΩ", "R at 20 °C µΩ"].flatMap((header) =>
        at.table.headers.includes(header) ? [addressOf(at.table, at.row, header)] : [],
      ),
    };
  },
  "a result typed over": (book, next) => {
    const at = cell(book, next, ({ role }) => role === "result");
    return at && edit(book, at, pick(next, ["Fail", "OK", "Inconclusive"]), ["result-disagrees"]);
  },
  "a computed value typed over with another": (book, next) => {
    const at = cell(
      book,
      next,
      (column, place) =>
        column.role === "computed" && isFormula(place, column) && number(place.stored[column.id]),
    );
    return (
      at && edit(book, at, Number(at.stored[at.column.id]) * 1.01 + 0.001, ["result-disagrees"])
    );
  },
  "a computed value typed over with its own": (book, next) => {
    const at = cell(
      book,
      next,
      (column, place) =>
        (column.role === "computed" || column.role === "result") &&
        isFormula(place, column) &&
        !isBlank(place.stored[column.id]),
    );
    return at && edit(book, at, at.stored[at.column.id] ?? null, ["typed-over"]);
  },
  "a limit edited": (book, next) => {
    const at = cell(
      book,
      next,
      (column, { stored, kind, table, row }) =>
        column.role === "limit" &&
        number(stored[column.id]) &&
        // Limits that the lineup leaves to be typed on the sheet are the reader's to judge.
        (table.formula(row, table.headers.indexOf(column.header)) !== undefined ||
          column.own?.(stored, book.plan.lineup) !== undefined ||
          column.value === undefined) &&
        rowsOf(kind, book.plan.lineup).some((one) => one.object === stored.object),
    );
    return at && edit(book, at, Number(at.stored[at.column.id]) * 0.9, ["limit-differs"]);
  },
  "a source worded otherwise": (book, next) => {
    const at = cell(book, next, ({ id }, { stored }) => id === "sources" && !isBlank(stored[id]));
    return at && edit(book, at, "as in the older book", ["sources-differ"]);
  },
  "a rating changed": (book, next) => {
    const at = cell(
      book,
      next,
      ({ role, id }, { stored }) => role === "given" && id !== "sources" && !isBlank(stored[id]),
    );
    const was = at?.stored[at.column.id];
    return at && edit(book, at, number(was) ? was * 2 : `${was} (changed)`, ["given-differs"]);
  },
  "a key changed": (book, next) => {
    const at = cell(book, next, ({ role }) => role === "key");
    return (
      at && {
        ...edit(book, at, `${at.stored[at.column.id]}9`, ["key-changed"]),
        also: ["missing-row", "set-aside"],
      }
    );
  },
  "a row duplicated": (book, next) => {
    const at = somewhere(book, next);
    if (!at) return undefined;
    const { table, row } = at;
    const grown = withRows(table, [...table.cells, table.cells[row] ?? []]);
    return {
      findings: reportWith(book, table.name, grown).findings,
      rules: ["duplicated-row"],
      sheet: table.sheet,
      addresses: [addressOf(table, table.rowCount, table.headers[0] ?? "")],
    };
  },
  "a row removed": (book, next) => {
    const at = somewhere(book, next);
    if (!at || at.table.rowCount < 2) return undefined;
    const { table, row } = at;
    const less = withRows(
      table,
      table.cells.filter((_cells, index) => index !== row),
    );
    return {
      findings: reportWith(book, table.name, recalculated(book, less)).findings,
      rules: ["missing-row"],
      sheet: table.sheet,
      addresses: ["A4"],
    };
  },
  "a table removed": (book, next) => {
    const at = somewhere(book, next);
    return (
      at && {
        findings: reportWith(book, at.table.name, undefined).findings,
        rules: ["missing-row"],
        sheet: at.table.sheet,
        addresses: ["A1"],
      }
    );
  },
  "a header renamed": (book, next) => {
    const at = cell(book, next, () => true);
    return (
      at && {
        findings: reportWith(
          book,
          at.table.name,
          withHeaders(
            at.table,
            at.table.headers.map((header) =>
              header === at.column.header ? `${header} (old)` : header,
            ),
          ),
        ).findings,
        rules: ["missing-column"],
        sheet: at.table.sheet,
        addresses: ["A4"],
      }
    );
  },
  "an instrument that nobody listed": (book, next) => {
    const at = cell(book, next, ({ id }) => id === "instrument");
    return at && edit(book, at, pick(next, ["X-9", "meter", "X1"]), ["instrument-unknown"]);
  },
  "an instrument's calibration run out": ofGenerated((book, next) => {
    const table = tableOf(book, "GearInstruments");
    const at = cell(book, next, ({ id }) => id === "instrument");
    if (!table || !at) return undefined;
    const lapsed = withCells(table, [{ row: 0, header: "Due", value: 46_300 }]);
    // One finding for the instrument and table, at its first row.
    const { headers, cells } = at.table;
    const used = cells.findIndex(
      (line) =>
        line[headers.indexOf("Instrument")]?.value &&
        Number(line[headers.indexOf("Date")]?.value) > 46_300,
    );
    return {
      findings: reportWith(book, table.name, lapsed).findings,
      rules: ["instrument-lapsed"],
      sheet: at.table.sheet,
      addresses: [addressOf(at.table, used, "Instrument")],
    };
  }),
  "a reading outside its instrument's range": ofGenerated((book, next) => {
    const at = cell(book, next, ({ id, accepts }) => id === "testCurrent" && mayBe(accepts, 6000));
    return at && edit(book, at, 4100 + Math.floor(1000 * next()), ["outside-range"]);
  }),
  "a date yet to come": (book, next) => {
    const at = cell(book, next, ({ id }) => id === "date");
    return at && edit(book, at, book.today + 1 + Math.floor(300 * next()), ["future-date"]);
  },
  "day and month exchanged": (book, next) => {
    const exchanged = (day: CellValue | undefined) => {
      const [year, month, date] = serialDay(Number(day)).split("-");
      return Number(date) <= 12 && date !== month
        ? Date.parse(`${year}-${date}-${month}T00:00:00Z`) / 86_400_000 + 25_569
        : undefined;
    };
    const at = cell(
      book,
      next,
      ({ id }, { stored, rows }) =>
        id === "date" &&
        number(stored.date) &&
        exchanged(stored.date) !== undefined &&
        rows.length > 4,
    );
    const day = exchanged(at?.stored.date);
    return at && day !== undefined
      ? edit(book, at, day, ["date-swapped", "future-date"])
      : undefined;
  },
  "withstand dated before its insulation": ofGenerated(
    dated("withstand", undefined, 46_330, "withstand-before-insulation", "Applied kV"),
  ),
  '"after" dated before the withstand test': ofGenerated(
    dated("insulation", "after", 46_341, "after-before-withstand"),
  ),
  "contacts measured before the torque": ofGenerated((book, next) => {
    const at = cell(
      book,
      next,
      ({ id }, { stored }) =>
        id === "date" &&
        records(book, "torque").some(({ table, kind }) =>
          asRecordTable(kind, table).rows.some(({ object }) => object === stored.object),
        ),
      "contact",
    );
    return at && edit(book, at, 46_325, ["before-predecessor"]);
  }),
  "a reading out of limits": (book, next) => {
    for (let attempt = 0; attempt < 20; attempt++) {
      const at = cell(
        book,
        next,
        (column, { stored, kind }) =>
          entry(column) && number(stored[column.id]) && kind.accepted.length > 0,
      );
      if (!at) return undefined;
      const was = Number(at.stored[at.column.id]);
      const factor = [0.9, 1.1, 0.7, 1.5, 0.3, 3, 0.05, 20].find(
        (one) => verdict(book, at, { [at.column.id]: was * one }) === "Fail",
      );
      if (factor !== undefined)
        return edit(book, at, was * factor, ["out-of-limits"], { headers: judgedBy(at.kind) });
    }
    return undefined;
  },
  "a word that says it is not right": (book, next) => {
    const at = cell(book, next, (column, { kind, stored }) =>
      wordColumns(kind.columns).some(
        (word) =>
          word.id === column.id && !word.computed && word.words.length > 0 && isAsked(word, stored),
      ),
    );
    const words = at && wordColumns(at.kind.columns).find(({ id }) => id === at.column.id)?.words;
    return at && words && edit(book, at, pick(next, words), ["out-of-limits"]);
  },
  "a word of no list": (book, next) => {
    const at = cell(book, next, (column) => entry(column) && column.accepts?.type === "list");
    return at && edit(book, at, pick(next, ["?", "ok?", "see note"]), ["unknown-word"]);
  },
  "not applicable without a reason": (book, next) => {
    const at = cell(
      book,
      next,
      ({ accepts }) => accepts?.type === "list" && accepts.exempt !== undefined,
    );
    if (at?.column.accepts?.type !== "list") return undefined;
    const { exempt = "", always } = at.column.accepts;
    // What always applies cannot be set aside by a word, with a reason or without.
    return always !== undefined && !isBlank(at.stored[always])
      ? edit(book, at, exempt, ["inconclusive"])
      : edit(book, at, exempt, ["exempt-unexplained"], { headers: ["Remarks"] });
  },
  "a bound that proves nothing": (book, next) => {
    for (let attempt = 0; attempt < 20; attempt++) {
      const at = cell(
        book,
        next,
        ({ accepts, need, unit }) =>
          accepts?.type === "reading" && need === "reading" && unit !== undefined,
      );
      if (!at) return undefined;
      const unit = at.column.unit;
      const bound = [`> 0.001 ${unit}`, `< 9000000 ${unit}`].find(
        (text) => verdict(book, at, { [at.column.id]: text }) === "Inconclusive",
      );
      if (bound)
        return edit(book, at, bound, ["inconclusive"], {
          headers: [at.column.header, ...judgedBy(at.kind)],
        });
    }
    return undefined;
  },
  "a test made with too little": (book, next) => {
    for (let attempt = 0; attempt < 20; attempt++) {
      const at = cell(
        book,
        next,
        (column, { stored, kind }) =>
          entry(column) &&
          number(stored[column.id]) &&
          kind.enough.some(({ value }) => value === column.id),
      );
      if (!at) return undefined;
      const less = Number(at.stored[at.column.id]) / 2;
      if (verdict(book, at, { [at.column.id]: less }) === "Inconclusive")
        return edit(book, at, less, ["inconclusive"], {
          headers: [at.column.header, ...judgedBy(at.kind)],
        });
    }
    return undefined;
  },
  "a number as text": (book, next) => {
    const at = cell(
      book,
      next,
      (column, { stored }) =>
        entry(column) && column.need === "reading" && number(stored[column.id]),
    );
    return at && edit(book, at, String(at.stored[at.column.id]), ["number-as-text"]);
  },
  "text that is no reading": (book, next) => {
    const at = cell(
      book,
      next,
      (column, { stored }) =>
        entry(column) &&
        !isBlank(stored[column.id]) &&
        (column.unit !== undefined || column.accepts?.type === "date"),
    );
    return at && edit(book, at, pick(next, ["see note", "tbc", "5.2 GQ"]), ["unreadable"]);
  },
  "an error value": (book, next) => {
    const at = cell(book, next, ({ role }) => role !== "note" && role !== "key");
    return (
      at &&
      edit(book, at, pick(next, ["#REF!", "#N/A", "#NAME?", "#DIV/0!"]), ["error-value"], {
        formula: isFormula(at, at.column) ? formulaOf(at, at.column) : undefined,
        asIs: true,
      })
    );
  },
  "a number that cannot be": (book, next) => {
    const at = cell(
      book,
      next,
      (column) =>
        entry(column) && column.accepts?.type === "number" && column.accepts.most !== undefined,
    );
    return at?.column.accepts?.type === "number"
      ? edit(book, at, (at.column.accepts.most ?? 0) * 2 + 1, ["implausible"])
      : undefined;
  },
  "a formula shifted by a row": (book, next) => {
    const at = formulaCell(book, next);
    if (!at || at.rows.length < 2) return undefined;
    const other = at.row === 0 ? 1 : at.row - 1;
    const formula = asAddresses(at, formulaOf(at, at.column), other);
    return edit(book, at, at.rows[other]?.[at.column.id] ?? null, ["own-formula"], {
      formula,
      asIs: true,
    });
  },
  "a cell fixed by a dollar sign": (book, next) => {
    const at = formulaCell(book, next);
    if (!at) return undefined;
    const formula = asAddresses(at, formulaOf(at, at.column), at.row, () => "$");
    return edit(book, at, at.stored[at.column.id] ?? null, ["own-formula"], {
      formula,
      asIs: true,
    });
  },
  "a limit written into a result": (book, next) => {
    const at = cell(
      book,
      next,
      (column, place) => column.role === "result" && place.kind.accepted.length > 0,
    );
    const limit = at?.kind.accepted[0]?.limit;
    const header = at?.kind.columns.find(({ id }) => id === limit)?.header ?? "";
    if (!at || !number(at.stored[limit ?? ""])) return undefined;
    const reference = `${at.table.name}[[#This Row],[${header.replace(/[[\]#']/g, "'$&")}]]`;
    const formula = formulaOf(at, at.column).replaceAll(reference, String(at.stored[limit ?? ""]));
    return edit(book, at, at.stored[at.column.id] ?? null, ["own-formula"], {
      formula,
      asIs: true,
    });
  },
  "a formula that takes another column": (book, next) => {
    const at = formulaCell(book, next);
    if (!at) return undefined;
    const formula = formulaOf(at, at.column);
    const used = [...formula.matchAll(/\[#This Row\],\[((?:'.|[^\]'])*)\]/g)].map(
      ([, name]) => name,
    );
    const from = pick(next, used) ?? "";
    const to = at.table.headers.find((header) => !formula.includes(`[${header}]`)) ?? "";
    return edit(book, at, at.stored[at.column.id] ?? null, ["own-formula"], {
      formula: formula.replaceAll(`[${from}]`, `[${to}]`),
      asIs: true,
    });
  },
  "a direction turned": (book, next) => {
    const at = cell(
      book,
      next,
      (column, place) =>
        column.role === "result" && /"(least|most)"/.test(formulaOf(place, column)),
    );
    const turned = { '"least"': '"most"', '"most"': '"least"' } as Record<string, string>;
    return (
      at &&
      edit(book, at, at.stored[at.column.id] ?? null, ["own-formula"], {
        formula: formulaOf(at, at.column).replace(
          /"(least|most)"/g,
          (word) => turned[word] ?? word,
        ),
        asIs: true,
      })
    );
  },
  "a factor in a formula": (book, next) => {
    const at = cell(
      book,
      next,
      (column, place) =>
        column.role === "computed" &&
        isFormula(place, column) &&
        number(place.stored[column.id]) &&
        formulaOf(place, column).includes("[#This Row]"),
    );
    const factor = pick(next, [1000, 0.001, 1.05]);
    return (
      at &&
      edit(book, at, Number(at.stored[at.column.id]) * factor, ["own-formula"], {
        formula: `(${formulaOf(at, at.column)})*${factor}`,
        asIs: true,
      })
    );
  },
  "a column filled down without a dollar sign": (book, next) => {
    const at = formulaCell(book, next);
    if (!at || at.rows.length < 3) return undefined;
    const { table, column } = at;
    const set = withCells(
      table,
      at.rows.flatMap((stored, row) =>
        isFormula({ ...at, row }, column)
          ? [
              {
                row,
                header: column.header,
                value: stored[column.id] ?? null,
                formula: `IF(AZ${table.top + 2 + row}="",${formulaOf({ ...at, row }, column)},"")`,
              },
            ]
          : [],
      ),
    );
    const first = at.rows.findIndex((_row, row) => isFormula({ ...at, row }, column));
    return {
      findings: reportWith(book, table.name, set).findings,
      rules: ["own-formula"],
      sheet: table.sheet,
      addresses: [addressOf(table, first, column.header)],
    };
  },
  "a reading by formula": (book, next) => {
    const at = cell(
      book,
      next,
      (column, { rows, stored }) =>
        entry(column) && column.need === "reading" && rows.length > 1 && number(stored[column.id]),
    );
    if (!at) return undefined;
    const other = at.row === 0 ? 1 : at.row - 1;
    return edit(book, at, at.rows[other]?.[at.column.id] ?? null, ["reading-formula"], {
      formula: addressOf(at.table, other, at.column.header),
    });
  },
  "rows hidden or filtered away": (book, next) => {
    const at = somewhere(book, next);
    if (!at) return undefined;
    const rows = [at.row, at.row + 1].filter((row) => row < at.table.rowCount);
    return {
      findings: reportWith(book, at.table.name, withHidden(at.table, rows)).findings,
      rules: ["hidden-row"],
      sheet: at.table.sheet,
      addresses: [addressOf(at.table, at.row, at.table.headers[0] ?? "")],
    };
  },
  "a sheet hidden": (book, next) => {
    const at = somewhere(book, next);
    return (
      at && {
        findings: reportWith(book, at.table.name, at.table, at.table.sheet).findings,
        rules: ["hidden-row"],
        sheet: at.table.sheet,
        addresses: ["A4"],
      }
    );
  },
  "a hold point not released": (book, next) => {
    const at = cell(
      book,
      next,
      ({ id }, { stored }) => id === "released" && String(stored.guards ?? "") !== "",
      "inspection",
    );
    const table = tableOf(book, "GearWithstand");
    if (!at || !table) return undefined;
    const { findings } = edit(book, at, pick(next, [null, "Not released"]), []);
    return {
      findings,
      rules: ["hold-not-released"],
      sheet: table.sheet,
      addresses: [addressOf(table, 0, "Date")],
      also: ["missing-reading", "out-of-limits"],
    };
  },
  "readings copied from another panel": (book, next) => {
    const at = somewhere(book, next, pick(next, ["insulation", "excitation", "indexCurve"]));
    if (!at) return undefined;
    const { kind, rows, table } = at;
    const judged = book.report.context.tables.find((one) => one.table.name === table.name);
    if (!judged) return undefined;
    const ids = measured(judged);
    const block = (row: Row) =>
      kind.id === "insulation" ? `${row.object} ${row.part} ${row.stage}` : undefined;
    const mine =
      block(at.stored) === undefined
        ? [at.row]
        : rows.flatMap((row, index) => (block(row) === block(at.stored) ? [index] : []));
    const other = rows.findIndex(
      (row, index) =>
        index < (mine[0] ?? 0) &&
        (block(row) === undefined
          ? true
          : row.part === at.stored.part &&
            row.object !== at.stored.object &&
            row.combination === rows[mine[0] ?? 0]?.combination),
    );
    if (other < 0) return undefined;
    const set = withCells(
      table,
      mine.flatMap((row, index) =>
        ids.map(({ id, header }) => ({ row, header, value: rows[other + index]?.[id] ?? null })),
      ),
    );
    return {
      findings: reportWith(book, table.name, recalculated(book, set)).findings,
      rules: ["same-run"],
      sheet: table.sheet,
      addresses: [
        addressOf(
          table,
          mine[0] ?? 0,
          ids.find(({ id }) => !isBlank(rows[other]?.[id]))?.header ?? "",
        ),
      ],
    };
  },
  "a withstand test too high": (book, next) => {
    const at = cell(book, next, ({ id }) => id === "applied", "withstand");
    return at && edit(book, at, Number(at.stored.applied) * 1.1, ["over-voltage"]);
  },
  "a relay left otherwise than ordered": (book, next) => {
    const at = cell(
      book,
      next,
      ({ id }, { stored }) => id === "asLeft" && Number(stored.asLeft) > 0,
      "settings",
    );
    return (
      at &&
      edit(book, at, Number(at.stored.asLeft) * pick(next, [0.8, 1.2, 2]), ["out-of-limits"], {
        headers: ["As left", "Agrees"],
      })
    );
  },
  "a whole that resists less than its part": (book, next) => {
    const at = cell(
      book,
      next,
      ({ id }, { stored }) => id === "reading" && stored.part === "Main circuit",
      "mainCircuit",
    );
    return (
      at &&
      edit(book, at, Math.round(50 + 100 * next()) / 10, ["records-contradict"], {
        headers: ["R at 20 °C µΩ"],
      })
    );
  },
  "a burden that is not its loop's": (book, next) => {
    const at = cell(
      book,
      next,
      ({ id }, { stored }) => id === "loop" && number(stored.loop),
      "currentLoop",
    );
    return (
      at &&
      edit(book, at, Number(at.stored.loop) * pick(next, [0.05, 0.07]), ["records-contradict"], {
        headers: ["Loop VA"],
      })
    );
  },
  "an earthed part far above its like": (book, next) => {
    const at = cell(
      book,
      next,
      ({ id }, { stored, rows }) => id === "reading" && stored.part === "Door" && rows.length > 6,
      "earthing",
    );
    const amps = Number(at?.stored.testCurrent);
    // 80 mΩ: within 3 V at 30 A, and within half an ohm.
    return (
      at &&
      edit(book, at, 0.08 * amps, ["inconclusive"], {
        headers: ["Drop V", "R mΩ"],
      })
    );
  },
  "a wet surface": (book, next) => {
    const at = cell(book, next, ({ id }) => id === "surface", "withstand");
    return at && edit(book, at, -5 - 10 * next(), ["dew-point"]);
  },
  "a resistance that falls with time": (book, next) => {
    const at = cell(book, next, ({ id }) => id === "r30s", "insulation");
    return (
      at &&
      edit(book, at, Number(at.stored.reading) * (1.2 + next()), ["index-below-one"], {
        headers: ["DAR"],
      })
    );
  },
  "a pole that stands out": (book, next) => {
    const at = cell(book, next, ({ id }) => id === "reading", "contact");
    const lowest = Math.min(
      ...(at?.rows ?? [])
        .filter(
          ({ object, part, pole }) =>
            object === at?.stored.object && part === at?.stored.part && pole !== at?.stored.pole,
        )
        .map(({ reading }) => Number(reading)),
    );
    return (
      at &&
      edit(book, at, lowest * 1.7, ["stands-out", "out-of-limits"], {
        headers: ["Above lowest", "R at 20 °C µΩ"],
      })
    );
  },
  "insulation fallen by the withstand test": (book, next) => {
    const at = cell(
      book,
      next,
      ({ id }, { stored }) => id === "reading" && stored.stage === "after",
      "insulation",
    );
    const before = at?.rows.find(
      (row) =>
        row.stage === "before" &&
        row.object === at.stored.object &&
        row.part === at.stored.part &&
        row.combination === at.stored.combination,
    );
    if (!at || !before) return undefined;
    const value = Number(before.reading) * 0.2;
    const minimum = Number(at.stored.minimum);
    // Brought to 20 °C it may be half as much again; from ten times the minimum on it is excused.
    if (value < 2 * minimum || value > 6 * minimum) return undefined;
    return edit(book, at, value, ["fallen-after"], { headers: ["R corrected MΩ"] });
  },
  "a reading far from its group": (book, next) => {
    const times = pick(next, [20, 0.05]);
    const at = cell(book, next, (column, place) => {
      const all = place.rows.flatMap((row) => row[column.id] ?? []).map(Number);
      const value = Number(place.stored[column.id]);
      return (
        column.need === "reading" &&
        all.length > 30 &&
        Math.min(...all) > 0 &&
        Math.max(...all) < 1.5 * Math.min(...all) &&
        verdict(book, place, { [column.id]: times * value }) === "Pass"
      );
    });
    return (
      at && edit(book, at, times * Number(at.stored[at.column.id]), ["off-group", "implausible"])
    );
  },
  "readings with favourite digits": ofGenerated((book, next) => {
    const column = KINDS.find(({ id }) => id === "insulation")?.columns.find(
      ({ id }) => id === "reading",
    );
    const table = tableOf(book, "GearInsulation");
    if (!column || !table || table.rowCount < 80) return undefined;
    const { header } = column;
    const at = table.headers.indexOf(header);
    const favourite = Math.floor(10 * next());
    const set = withCells(
      table,
      table.cells.map((line, row) => {
        const [mantissa = "", exponent] = Number(line[at]?.value).toExponential(2).split("e");
        return { row, header, value: Number(`${mantissa.slice(0, 3)}${favourite}e${exponent}`) };
      }),
    );
    return {
      findings: reportWith(book, table.name, recalculated(book, set)).findings,
      rules: ["digit-pattern"],
      sheet: table.sheet,
      addresses: [addressOf(table, 0, header)],
    };
  }),
  "rows of a panel that is not there": (book, next) => {
    const at = cell(book, next, ({ id }) => id === "object");
    if (!at || isBlank(at.stored.object)) return undefined;
    const set = withCells(
      at.table,
      at.rows.flatMap(({ object }, row) =>
        object === at.stored.object ? [{ row, header: at.column.header, value: "=X99" }] : [],
      ),
    );
    const first = at.rows.findIndex(({ object }) => object === at.stored.object);
    return {
      findings: reportWith(book, at.table.name, set).findings,
      rules: ["set-aside"],
      sheet: at.table.sheet,
      addresses: [addressOf(at.table, first, at.column.header)],
      also: ["missing-row", "key-changed"],
    };
  },
  "a site on a mountain": (book, next) => {
    const { ratings } = book.plan.lineup;
    return ofLineup(
      book,
      { ratings: { ...ratings, altitudeM: 1100 + Math.floor(2000 * next()) } },
      { rules: ["altitude"], sheet: "Withstand", address: "A4" },
    );
  },
  "a weight for a rule that is not there": (book, next) =>
    ofLineup(
      book,
      { ruleWeights: { [`no-such-rule-${Math.floor(100 * next())}`]: "note" } },
      { rules: ["unknown-rule-weight"], sheet: "Settings", address: "A1" },
    ),
  "a cover or panel sheet that tells otherwise": (book, next) => {
    const [name, header] = pick(next, [
      ["GearPanels", "Rated current A"],
      ["GearEquipment", "Value"],
    ] as const);
    const table = tableOf(book, name);
    if (!table) return undefined;
    const row = Math.floor(next() * table.rowCount);
    const was = table.cell(row, table.headers.indexOf(header));
    if (!number(was)) return undefined;
    const set = withCells(table, [{ row, header, value: was * 2 }]);
    return {
      findings: reportWith(book, name, set).findings,
      rules: ["sheets-differ"],
      sheet: table.sheet,
      addresses: [addressOf(table, row, header)],
    };
  },
  "a concession without reason, name or date": ofGenerated((book, next) => {
    const lacks = pick(next, ["reason", "name", "date"]);
    return conceded(book, next, {}, (row) => ({ ...row, [lacks]: null }), {
      rules: ["concession-incomplete"],
      header: { reason: "Reason", name: "Name", date: "Date" }[lacks] ?? "",
    });
  }),
  "a value changed after its concession": ofGenerated((book, next) =>
    conceded(book, next, { applied: 25 }, (row) => row, {
      rules: ["concession-stale"],
      header: "Rule",
    }),
  ),
  "formulas never calculated": (book, next) => {
    const at = somewhere(book, next);
    if (!at) return undefined;
    const bare = withRows(
      at.table,
      at.table.cells.map((line) =>
        line.map((one) => (one.formula === undefined ? one : { ...one, value: null })),
      ),
    );
    return {
      findings: reportWith(book, at.table.name, bare).findings,
      rules: ["not-calculated"],
      sheet: at.table.sheet,
      addresses: ["A4"],
    };
  },
};

/** The lineup described otherwise than the sheets tell it. */
function ofLineup(
  { plan, snapshot, today }: FaultBook,
  changes: Partial<Lineup>,
  { rules, sheet, address }: { rules: readonly string[]; sheet: string; address: string },
): Injected | undefined {
  const checked = check({ ...snapshot, lineup: { ...plan.lineup, ...changes } }, today);
  return checked.ok
    ? {
        findings: checked.report.findings,
        rules,
        sheet,
        addresses: [address],
        also: ["sheets-differ"],
      }
    : undefined;
}

/** A joint tightened too little and conceded; then the joint tightened otherwise, or the concession spoilt. */
function conceded(
  book: FaultBook,
  next: Next,
  after: Row,
  spoilt: (row: Row) => Row,
  { rules, header }: { rules: readonly string[]; header: string },
): Injected | undefined {
  const at = cell(book, next, ({ id }) => id === "applied", "torque");
  const table = tableOf(book, CONCESSION_TABLE);
  if (!at || !table) return undefined;
  const tightened = (applied: CellValue) =>
    recalculated(
      book,
      withCells(at.table, [{ row: at.row, header: at.column.header, value: applied }]),
    );
  const [finding] = reportWith(book, at.table.name, tightened(20)).findings;
  if (!finding) return undefined;
  const row = spoilt(
    concede(finding, {
      reason: "Accepted by letter INV-77 (invented)",
      name: "E. Engineer",
      date: "2026-11-20",
    }),
  );
  const granted = withRows(table, [
    CONCESSION_COLUMNS.map(({ id }) => ({ value: row[id] ?? null })),
  ]);
  const { findings } = reportWith(
    book,
    at.table.name,
    tightened(after.applied ?? 20),
    undefined,
    granted,
  );
  return {
    findings,
    rules,
    sheet: CONCESSION_SHEET,
    addresses: [addressOf(granted, 0, header)],
    also: ["out-of-limits"],
  };
}

/** Whether the check found a fault by the right rule at the right cell. */
export const isFound = ({ findings, rules, sheet, addresses }: Injected): boolean =>
  findings.some(
    (finding) =>
      rules.includes(finding.rule) &&
      finding.sheet === sheet &&
      addresses.includes(finding.address),
  );
