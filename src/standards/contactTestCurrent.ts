import { contactCurrent as ansi } from "./ansiC37.09.1999";
import type { Basis, Criterion } from "./criterion";
import { contactCurrent as iec } from "./iec60694.1996";
import { ohmmeterCurrent } from "./practice";

/**
 * Least direct current for a four-wire measurement of a bolted bus joint, A: as for contacts under IEC; NETA
 * asks for a low-resistance ohmmeter and prescribes no current, such meters have 10 A (practice).
 *
 * @example jointTestCurrent("NETA").value // 10
 */
export const jointTestCurrent = (basis: Basis): Criterion =>
  basis === "IEC" ? iec : ohmmeterCurrent;

/**
 * Least direct current for a four-wire measurement of contact resistance, A.
 *
 * @example contactTestCurrent("IEC").value // 50
 */
export const contactTestCurrent = (basis: Basis): Criterion => (basis === "IEC" ? iec : ansi);
