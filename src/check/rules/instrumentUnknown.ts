import { lookAlikes } from "../../quantities/lookAlikes";
import { rowsAlike } from "../../records/cellsOf";
import { namedInstruments } from "../../records/instruments";
import type { Row } from "../../records/kind";
import { overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";
import { oncePerEntry } from "../oncePerEntry";

/** An instrument that the table of instruments does not list. */
export const instrumentUnknown: Rule = {
  id: "instrument-unknown",
  reads: "table",
  find: (table, { instruments, text }) => {
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
            ),
            found: id,
          })),
        among,
      ).map(({ finding }) => finding),
      text,
    );
  },
};
