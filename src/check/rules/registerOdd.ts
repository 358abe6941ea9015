import { bare, type Instrument } from "../../lineup/lineup";
import type { FindingsText } from "../../messages/messages";
import { daySerial, serialDay } from "../../quantities/dates";
import { type CellValue, isBlank, type Row } from "../../records/kind";
import { cellAddress } from "../../sheets/cells/address";
import { INSTRUMENT_COLUMNS, INSTRUMENT_TABLE } from "../../sheets/ours/instrumentSheet";
import { asRecordTable } from "../../sheets/recordTable";
import { tablesOf } from "../../sheets/snapshot";
import { dayOf, noKind, type Rule } from "../context";
import type { Finding } from "../findings/finding";

/** No instrument of the trade is calibrated for longer (common practice; most for a year). */
const LONGEST_DAYS = 3 * 366;

type Says = FindingsText["rules"]["register-odd"];
type Odd = { readonly id: string; readonly message: string };

/** A list of instruments with one serial number twice, a calibration that lasts too long, or a day that was moved. */
export const registerOdd: Rule = {
  id: "register-odd",
  reads: "book",
  of: noKind,
  find: ({ snapshot, lineup, told, text }) => {
    const says = text.rules["register-odd"];
    const table = tablesOf(snapshot).find(({ name }) => name === INSTRUMENT_TABLE);
    if (!table) return [];
    const { at, rows } = asRecordTable({ columns: INSTRUMENT_COLUMNS }, table);
    const given = new Map(
      lineup === told ? [] : lineup.instruments.map((one) => [one.id.toLowerCase(), one]),
    );
    return rows.flatMap((row, index): Finding[] => {
      if (isBlank(row.id)) return [];
      const earlier = rows.slice(0, index);
      const name = String(row.id).trim();
      const odd =
        twice(row, earlier, says) ??
        lasts(row, says) ??
        moved(row, given.get(name.toLowerCase()), says);
      if (!odd) return [];
      return [
        {
          rule: "register-odd",
          weight: "query",
          sheet: table.sheet,
          address: cellAddress(table, index, Math.max(0, at.get(odd.id) ?? 0)),
          row: name,
          column: INSTRUMENT_COLUMNS.find(({ id }) => id === odd.id)?.header,
          message: odd.message,
          found: String(row[odd.id] ?? ""),
        },
      ];
    });
  },
};

/** An Id or serial number that another instrument has as well. */
function twice({ id, serial }: Row, earlier: readonly Row[], says: Says): Odd | undefined {
  const same = (field: string, cell: CellValue | undefined) =>
    isBlank(cell)
      ? undefined
      : earlier.find((row) => bare(String(row[field] ?? "")) === bare(String(cell)));
  if (same("id", id)) return { id: "id", message: says.sameId(String(id)) };
  const other = bare(String(serial ?? "")) === "" ? undefined : same("serial", serial);
  return (
    other && {
      id: "serial",
      message: says.sameSerial(String(id), String(serial), String(other.id)),
    }
  );
}

/** A calibration that ends before it began, or holds for years. */
function lasts({ id, calibrated, due }: Row, says: Says): Odd | undefined {
  const [from, to] = [dayOf(calibrated), dayOf(due)];
  if (from === undefined || to === undefined) return undefined;
  if (to <= from)
    return { id: "due", message: says.backwards(String(id), serialDay(from), serialDay(to)) };
  return to - from > LONGEST_DAYS
    ? { id: "due", message: says.long(String(id), serialDay(from), serialDay(to)) }
    : undefined;
}

/** A day, serial number or accuracy that the lineup had otherwise; an instrument calibrated anew has both its days later. */
function moved(row: Row, given: Instrument | undefined, says: Says): Odd | undefined {
  if (!given) return undefined;
  const name = String(row.id);
  const [from, to] = [dayOf(row.calibrated), dayOf(row.due)];
  const [from0, to0] = [given.calibrated, given.due].map((day) =>
    day === undefined ? undefined : daySerial(day),
  );
  // A day that is moved the other way accepts nothing; where it makes a test lapse, another rule speaks.
  if (from0 !== undefined && from !== undefined && from < from0)
    return { id: "calibrated", message: says.moved(name, serialDay(from), serialDay(from0)) };
  if (to0 !== undefined && to !== undefined && to > to0 && !(Number(from) > Number(from0)))
    return { id: "due", message: says.moved(name, serialDay(to), serialDay(to0)) };
  if (given.serial !== undefined && isBlank(row.serial))
    return { id: "serial", message: says.noSerial(name, given.serial) };
  if (given.serial !== undefined && bare(given.serial) !== bare(String(row.serial)))
    return { id: "serial", message: says.moved(name, String(row.serial), given.serial) };
  const { accuracyPercent } = given;
  return accuracyPercent !== undefined &&
    typeof row.accuracyPercent === "number" &&
    row.accuracyPercent !== accuracyPercent
    ? {
        id: "accuracyPercent",
        message: says.moved(name, String(row.accuracyPercent), String(accuracyPercent)),
      }
    : undefined;
}
