import { toSerial } from "./dates";

/** Today in local time, as a serial day number. */
export const today = (): number => {
  const now = new Date();
  return Math.floor(toSerial(new Date(now.getTime() - now.getTimezoneOffset() * 60_000)));
};
