import { isNamedIn } from "../../quantities/measuringRange";
import { doubtIn, isSettled } from "../../quantities/remarks/doubtIn";
import { DOUBT_WORDS } from "../../quantities/remarks/doubtWords";
import { anyOf, plain } from "../../quantities/remarks/words";
import { WORK_WORDS } from "../../quantities/remarks/workWords";
import { isBlank, type Row, verdictOf } from "../../records/kind";
import { a1 } from "../../sheets/cells/address";
import { rowsFrom } from "../../sheets/cells/formulaRuns";
import type { SheetCells, TableSnapshot } from "../../sheets/snapshot";
import { type Context, type JudgedTable, overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";

/** A text beside a record: its cell, and what stands there. */
interface Remark {
  readonly address: string;
  readonly column: string;
  readonly text: string;
}

/** A remark, note or comment that says of a row that passes what does not go with a pass. */
export const remarkContradicts: Rule = {
  id: "remark-contradicts",
  reads: "table",
  find: (table, context) => {
    const remarks = remarksOf(table, context);
    if (!remarks) return [];
    const says = context.text.rules["remark-contradicts"];
    const look = (row: number, _stored: Row, judged: Row): Finding | undefined => {
      if (!passesBut(table, judged, context)) return undefined;
      for (const { address, column, text } of remarks.of(row)) {
        const found =
          doubtIn(text) ??
          otherOrder(table, row, text, context) ??
          otherInstrument(table, row, text, context);
        if (found)
          return {
            rule: "remark-contradicts",
            weight: found.doubt === "discharge" ? "stop" : "query",
            ...where(table, row, "remarks"),
            address,
            column,
            message: says.message(
              rowName(table, row),
              text.trim().slice(0, 160),
              says.doubts[found.doubt],
            ),
            found: text.trim().slice(0, 80),
          };
      }
      return undefined;
    };
    return overRows(table, look, remarks.rows).map(({ finding }) => finding);
  },
};

/**
 * An order of the phases that a remark gives last and that is not the lineup's, where orders are what is
 * tried: whether a field turns rightly, the order tells from wherever it starts; a cable's ends, it does not.
 */
function otherOrder({ kind, rows }: JudgedTable, row: number, text: string, { lineup }: Context) {
  if (kind.step !== "energization" || isSettled(text)) return undefined;
  const asked = lineup.phases.map((phase) => phase.toLowerCase());
  const words = text.toLowerCase().split(/[^\p{L}\p{N}]+/u);
  const orders = words.flatMap((_word, at) => {
    const some = words.slice(at, at + asked.length);
    return asked.every((phase) => some.includes(phase)) ? [some.join("-")] : [];
  });
  const given = orders.at(-1);
  const right = asked.join("-");
  if (given === undefined || given === right) return undefined;
  const isRotation = String(rows[row]?.part ?? "")
    .toLowerCase()
    .includes(right);
  return isRotation && `${right}-${right}`.includes(given) ? undefined : OTHER_ORDER;
}

/** An instrument of the list that a remark names and its row does not, without being held beside it. */
function otherInstrument(
  { rows, at }: JudgedTable,
  row: number,
  text: string,
  { instruments }: Context,
) {
  const named = rows[row]?.instrument;
  if (!instruments || !at.has("instrument") || typeof named !== "string" || isBlank(named))
    return undefined;
  const words = new Set(text.toLowerCase().split(/[^\p{L}\p{N}./_-]+/u));
  const isOther = [...instruments.keys()].some((id) => words.has(id) && !isNamedIn(named, id));
  return isOther && !COMPARED.test(plain(text)) ? OTHER_INSTRUMENT : undefined;
}

const COMPARED = anyOf([
  ...WORK_WORDS.flatMap(({ compared }) => compared),
  ...DOUBT_WORDS.flatMap(({ negations }) => negations),
]);
const OTHER_INSTRUMENT = { doubt: "other instrument" } as const;
const OTHER_ORDER = { doubt: "other order" } as const;

/** Whether a row passes, or would without its remark. */
const passesBut = ({ kind }: JudgedTable, judged: Row, { lineup }: Context): boolean =>
  verdictOf(judged) === "Pass" ||
  (!isBlank(judged.remarks) &&
    kind.columns
      .find(({ role }) => role === "result")
      ?.value?.({ ...judged, remarks: null }, lineup, NO_SURVEY) === "Pass");

const NO_SURVEY: ReadonlyMap<string, number> = new Map();

/** The texts beside the rows of a table: columns that people added, notes and comments on its cells. */
interface Remarks {
  /** The rows beside which some may stand. */
  readonly rows: readonly number[];
  readonly of: (row: number) => Remark[];
}

/** The texts beside rows; undefined where a sheet has none. */
export function remarksOf(table: JudgedTable, { snapshot }: Context): Remarks | undefined {
  const { kind, table: sheet } = table;
  const known = new Set(
    kind.columns.filter(({ id }) => id !== "remarks").map(({ header }) => header),
  );
  const free = sheet.headers.flatMap((header, at) => (known.has(header) ? [] : [{ header, at }]));
  const cells = snapshot.sheets.find(({ name }) => name === sheet.sheet)?.cells;
  if (free.length === 0 && !cells?.note) return undefined;
  const of = (row: number) => [
    ...free.flatMap(({ header, at }): Remark[] => {
      const text = sheet.cell(row, at);
      if (typeof text !== "string" || text.trim() === "") return [];
      const address = sheet.ownLayout
        ? where(table, row, "remarks").address
        : a1(sheet.top + 1 + row, sheet.left + at);
      return [{ address, column: header, text }];
    }),
    ...notesOf(table, row, cells),
  ];
  const isBeside = (row: number) =>
    isNoted(sheet, row, cells) || free.some(({ at }) => typeof sheet.cell(row, at) === "string");
  return { rows: rowsFrom(0, table.rows.length).filter(isBeside), of };
}

/** Whether a note may stand in a row. */
const isNoted = (
  { top, ownLayout }: TableSnapshot,
  row: number,
  { note, notedRows }: Partial<SheetCells> = {},
): boolean =>
  note !== undefined && (notedRows === undefined || !!ownLayout || notedRows.has(top + 1 + row));

function notesOf({ table }: JudgedTable, row: number, cells: SheetCells | undefined): Remark[] {
  const { note } = cells ?? {};
  if (!note || !isNoted(table, row, cells)) return [];
  return table.headers.flatMap((column, at): Remark[] => {
    const place = table.ownLayout
      ? table.ownLayout.place(row, at)
      : { row: table.top + 1 + row, column: table.left + at };
    const text = place && note(place.row, place.column);
    return text ? [{ address: a1(place.row, place.column), column, text }] : [];
  });
}
