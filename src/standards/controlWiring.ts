import type { Basis, Criterion, Source } from "./criterion";
import { tidy } from "./tidy";

const practice = (place: string, note?: string): Source => ({
  document: "Common practice",
  edition: "",
  place,
  certainty: "practice",
  note,
});

/** Volts to kV. */
const KILO = 1000;

/**
 * Least insulation resistance of control wiring, MΩ: rated kV + 1 (the old floor, practice).
 *
 * @param controlV rated control voltage, V; 0 where it is not known
 * @example controlMinimum(110).value // 1.11
 */
export const controlMinimum = (controlV: number): Criterion => ({
  value: tidy(controlV / KILO + 1),
  source: practice("control wiring, rated kV + 1 in MΩ"),
});

/** Least DC test voltage on control wiring, V: 500, or 1000 where the devices allow it (practice). */
export const controlTestVoltage: Criterion = {
  value: 500,
  source: practice("control wiring, 500 V or 1000 V DC"),
};

/**
 * Least duration of the withstand test of control wiring on site, s (memory).
 *
 * @example controlSeconds.NETA.value // 60
 */
export const controlSeconds: Readonly<Record<Basis, Criterion>> = {
  IEC: {
    value: 1,
    source: {
      document: "IEC 62271-1",
      edition: "2017",
      place: "auxiliary and control circuits, routine test",
      certainty: "memory",
    },
  },
  NETA: {
    value: 60,
    source: {
      document: "IEEE C37.20.2",
      edition: "2015",
      place: "control wiring",
      certainty: "memory",
    },
  },
};
