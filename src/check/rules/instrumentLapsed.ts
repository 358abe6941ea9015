import { serialDay } from "../../quantities/dates";
import { rowsAlike } from "../../records/cellsOf";
import { namedInstruments } from "../../records/instruments";
import type { Row } from "../../records/kind";
import { dayOf, overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";
import { oncePerEntry } from "../findings/oncePerEntry";

/** An instrument that was out of calibration on the day of the test, or whose calibration is not known. */
export const instrumentLapsed: Rule = {
  id: "instrument-lapsed",
  reads: "table",
  find: (table, { instruments, text }) => {
    const { noDates, lapsed } = text.rules["instrument-lapsed"];
    const lapsedOn = (row: number, id: string, day: number): Finding | undefined => {
      const known = instruments?.get(id.toLowerCase());
      if (!known) return undefined;
      const { calibrated, due } = known;
      const at = { rule: "instrument-lapsed", ...where(table, row, "instrument"), found: id };
      if (calibrated === undefined || due === undefined)
        return {
          ...at,
          weight: "query",
          message: noDates(rowName(table, row), id),
        };
      return day > due || day < calibrated
        ? {
            ...at,
            weight: "stop",
            message: lapsed(
              rowName(table, row),
              id,
              serialDay(day),
              serialDay(calibrated),
              serialDay(due),
            ),
          }
        : undefined;
    };
    const lapsedIn = (row: number, { date, instrument }: Row): Finding[] => {
      const day = dayOf(date);
      if (day === undefined) return [];
      const whole = String(instrument ?? "").trim();
      const ids = instruments?.has(whole.toLowerCase()) ? [whole] : namedInstruments(instrument);
      return ids.flatMap((id) => lapsedOn(row, id, day) ?? []);
    };
    const among = rowsAlike(
      table.rows,
      ["instrument", "date"],
      (stored) => lapsedIn(0, stored).length > 0,
    );
    const found = overRows(table, lapsedIn, among);
    return oncePerEntry(
      found.map(({ finding }) => finding),
      text,
    );
  },
};
