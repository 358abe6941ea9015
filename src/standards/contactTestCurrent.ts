import type { Basis, Criterion } from "./criterion";

const LEAST: Record<Basis, Criterion> = {
  IEC: {
    value: 50,
    source: {
      document: "IEC 60694",
      edition: "1996",
      place: "clause 6.4.1",
      certainty: "read",
      note: "in quotation; 50 A up to rated current",
    },
  },
  NETA: {
    value: 100,
    source: {
      document: "ANSI C37.09",
      edition: "1999",
      place: "contact resistance",
      certainty: "read",
      note: "in quotation, edition from memory",
    },
  },
};

/**
 * Least direct current for a four-wire measurement of a bolted bus joint, A: as for contacts under IEC; NETA
 * asks for a low-resistance ohmmeter and prescribes no current, such meters have 10 A (practice).
 *
 * @example jointTestCurrent("NETA").value // 10
 */
export const jointTestCurrent = (basis: Basis): Criterion =>
  basis === "IEC"
    ? LEAST.IEC
    : {
        value: 10,
        source: {
          document: "Common practice",
          edition: "",
          place: "low-resistance ohmmeter on bolted joints, 10 A",
          certainty: "practice",
        },
      };

/**
 * Least direct current for a four-wire measurement of contact resistance, A.
 *
 * @example contactTestCurrent("IEC").value // 50
 */
export const contactTestCurrent = (basis: Basis): Criterion => LEAST[basis];
