import { sameName } from "../../lineup/lineup";
import { lookAlikes } from "../../quantities/reading/lookAlikes";
import { rowsAlike } from "../../records/cellsOf";
import { namedInstruments } from "../../records/instruments";
import type { Row } from "../../records/kind";
import { a1 } from "../../sheets/cells/address";
import { INSTRUMENT_TABLE } from "../../sheets/ours/instrumentSheet";
import type { Snapshot } from "../../sheets/snapshot";
import { overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";
import { oncePerEntry } from "../findings/oncePerEntry";

/** An instrument that the table of instruments does not list. */
export const instrumentUnknown: Rule = {
  id: "instrument-unknown",
  reads: "table",
  find: (table, { instruments, snapshot, text }) => {
    const isKnown = (id: string) => instruments?.has(id.toLowerCase()) ?? false;
    const likeAnother = (id: string) =>
      [...(instruments?.values() ?? [])].flatMap((one) => lookAlikes(id, one.id));
    const unknown = ({ instrument }: Row) =>
      isKnown(String(instrument ?? "").trim())
        ? []
        : namedInstruments(instrument).filter((id) => !isKnown(id));
    const among = rowsAlike(table.rows, ["instrument"], (stored) => unknown(stored).length > 0);
    return oncePerEntry(
      overRows(
        table,
        (row, stored): Finding[] =>
          unknown(stored).map((id) => ({
            rule: "instrument-unknown",
            weight: "query",
            ...where(table, row, "instrument"),
            message: text.rules["instrument-unknown"].message(
              rowName(table, row),
              id,
              likeAnother(id),
              belowList(snapshot, id),
            ),
            found: id,
          })),
        among,
      ).map(({ finding }) => finding),
      text,
    );
  },
};

/** Rows below the table of instruments in which one may have been typed that the table did not take in. */
const BELOW = 20;

/** The cell below the table of instruments in which an instrument stands, where one was typed there. */
function belowList({ sheets }: Snapshot, id: string): string | undefined {
  for (const { tables, cells } of sheets) {
    const list = tables.find(({ name }) => name === INSTRUMENT_TABLE);
    if (!list || !cells) continue;
    const column = list.left + Math.max(0, list.headers.indexOf("Id"));
    const below = list.top + 1 + list.rowCount;
    for (let row = below; row < Math.min(below + BELOW, cells.rowCount); row++)
      if (sameName(String(cells.cell(row, column) ?? ""), id)) return a1(row, column);
  }
  return undefined;
}
