import { namedInstruments } from "../../records/instruments";
import { onceForAlike } from "../../records/onceForAlike";
import { overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";
import { oncePerEntry } from "../oncePerEntry";

/** An instrument that the table of instruments does not list. */
export const instrumentUnknown: Rule = {
  id: "instrument-unknown",
  reads: "table",
  find: (table, { instruments, text }) => {
    const isKnown = (id: string) => instruments?.has(id.toLowerCase()) ?? false;
    const unknown = onceForAlike(({ instrument }) =>
      isKnown(String(instrument ?? "").trim())
        ? []
        : namedInstruments(instrument).filter((id) => !isKnown(id)),
    );
    return oncePerEntry(
      overRows(table, (row, stored): Finding[] =>
        unknown(stored).map((id) => ({
          rule: "instrument-unknown",
          weight: "query",
          ...where(table, row, "instrument"),
          message: text.rules["instrument-unknown"].message(rowName(table, row), id),
          found: id,
        })),
      ).map(({ finding }) => finding),
      text,
    );
  },
};
