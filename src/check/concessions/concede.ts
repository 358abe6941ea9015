import { daySerial } from "../../quantities/dates";
import type { Row } from "../../records/kind";
import type { Concession, Finding } from "../findings/finding";

/**
 * The row that accepts a finding, by what is the same in every language, to be appended to the table of concessions, by column id.
 *
 * @param concession all three are needed; the date as 2026-11-25
 * @example concede(finding, { reason: "Accepted by the client, INV-77", name: "A. N. Other", date: "2026-11-25" })
 */
export const concede = (
  { rule, sheet, row = "", column = "", found = "" }: Finding,
  { reason, name, date }: Concession,
): Row => ({ rule, sheet, row, column, found, reason, name, date: daySerial(date) });
