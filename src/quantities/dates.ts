/** Whether dates such as 03/11/2026 have the day or the month first. */
export const DATE_ORDERS = ["day-first", "month-first"] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

const DAY = 86_400_000;
/** Serial day 0 of the 1900 system, as from 1 March 1900 on. */
const EPOCH = Date.UTC(1899, 11, 30);

/** Serial day number of a date, UTC. */
export const toSerial = (date: Date): number => (date.getTime() - EPOCH) / DAY;

/** Serial day number of an ISO calendar day. */
export const daySerial = (iso: string): number => toSerial(new Date(`${iso}T00:00:00Z`));

/** The day after 9999-12-31, the last that a spreadsheet knows. */
export const LAST_DAY = 2_958_466;

/** ISO calendar day of a serial day number; a number beyond the days that a spreadsheet knows, as it is. */
export const serialDay = (serial: number): string =>
  Math.abs(serial) < LAST_DAY
    ? new Date(EPOCH + Math.floor(serial) * DAY).toISOString().slice(0, 10)
    : String(serial);
