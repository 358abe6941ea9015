import type { fields } from "./fields";

/** What helps to fill a field in, where its name does not say it. */
export const hints = {
  "project.specificationRevision": "The revision that the tests are made to.",
  basis: "IEC, or NETA for work to ANSI/NETA and IEEE: whose criteria apply.",
  purpose: "Acceptance of new gear where nothing is said.",
  "confirmed.criterion": "Copied from the sheet or report, where a limit names its source.",
  "ratings.voltagekV":
    "Ur on the plate (IEC), such as 12 or 17.5; rated maximum voltage (IEEE), such as 15 or 38.",
  "ratings.operatingkV": "What the network runs at, such as 11 or 13.8.",
  "ratings.controlV": "Nominal voltage of the supply that closes and trips the breakers.",
  "ratings.controlWireV": "300 or 600: it sets the test voltage of control wiring (ANSI/NETA).",
  "ratings.powerFrequencykV":
    "One minute, to earth. Where it differs from the table, the plate counts.",
  "ratings.degreeOfProtection":
    "As on the plate, such as IP3X: the widest opening follows from it.",
  "insulation.correction": "solid and oil: by table; halving: for every 10 K; none: as read.",
  "withstand.wave": "DC only where the maker and the practice allow it.",
  "withstand.gapM": "Given: the test voltage is corrected to the air of the day (IEC 60060-1).",
  "criteria.document": "Where it is written, with its revision.",
  phases: "In their order, such as L1, L2, L3 or A, B, C.",
  decisionRule:
    "simple: as read; guarded: only where the reading keeps inside its limit by the instrument's accuracy.",
  "panels.designation": "As on the drawings, such as =H01.",
  "panels.section": "Panels of one section have the same name here; their busbar is tested as one.",
  "panels.breaker.contactLimit": "The greatest that the maker allows for one pole.",
  "panels.breaker.document": "Where the maker says so, with its revision.",
  "panels.breaker.interrupter.ackV":
    "The maker's level for testing the vacuum interrupters on site.",
  "panels.breaker.gas.pressure":
    "Whether the plate and the gauge read above the atmosphere or absolute.",
  "panels.currentTransformers.name": "As on its terminals, such as 1S1-1S2.",
  "panels.currentTransformers.accuracy": "As on the plate: 0.5, 0.2S, 5P20, PX, 0.3, C200.",
  "panels.currentTransformers.kneeV": "For class PX and the like, as on the plate.",
  "panels.currentTransformers.encloses": "all phases: a ground sensor, which has one row.",
  "panels.voltageTransformers.primaryV": "Phase to earth for an earthed one: 11000 V/√3 is 6351.",
  "panels.voltageTransformers.secondaryV": "Phase to earth for an earthed one: 110 V/√3 is 63.5.",
  "panels.voltageTransformers.accuracy": "As on the plate: 0.5, 3P, 0.3.",
  "panels.meters.accuracyOf": "Of full scale where nothing is said.",
  "panels.protection.element": "As the settings order calls it: 51, 50N, 27, I>.",
  "panels.protection.pickup": "In the unit below, at the relay's terminals.",
  "panels.protection.setting": "For a definite time, its delay in s.",
  "panels.protection.multiples": "Below 1 for an element that operates below its setting.",
  "panels.cables.ratedkV": "Phase to phase, as on the sheath, or Um of its system.",
  "panels.cables.u0kV": "To earth: the first figure on the sheath.",
  "panels.cables.sheathMm": "Given: the oversheath is tested as well (IEC 60229).",
  "panels.joints.torqueNm": "Without it, and without the project's, no torque is accepted.",
} satisfies Partial<Record<keyof typeof fields, string>>;
