import { serialDay } from "../../quantities/dates";
import { namedInstruments } from "../../records/instruments";
import { onceForAlike } from "../../records/onceForAlike";
import { dayOf, overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";
import { oncePerEntry } from "../oncePerEntry";

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
    const namedOn = onceForAlike(({ date, instrument }) => {
      const whole = String(instrument ?? "").trim();
      const ids = instruments?.has(whole.toLowerCase()) ? [whole] : namedInstruments(instrument);
      return { day: dayOf(date), ids };
    });
    const found = overRows(table, (row, stored): Finding[] => {
      const { day, ids } = namedOn(stored);
      return day === undefined ? [] : ids.flatMap((id) => lapsedOn(row, id, day) ?? []);
    });
    return oncePerEntry(
      found.map(({ finding }) => finding),
      text,
    );
  },
};
