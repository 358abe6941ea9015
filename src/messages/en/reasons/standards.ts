/** Why a standard gives no figure, and what would give one. */
export const standards = {
  noRow: (source: string, ratedkV: number, near: readonly string[], isStress: boolean) =>
    `${source} has no row for ${ratedkV} kV (nearest: ${near.join(" and ")})${
      isStress ? ", and a test voltage is never taken from another row" : ""
    }. Give the plate's level or a project criterion.`,
  noComposite: (name: string) =>
    `Class ${name} gives no composite error; classes 5P, 10P and C do.`,
  noTurns: (name: string) => `Class ${name} gives no limit of the turns ratio; PX and PXR do.`,
  noOpening: (degree: string) =>
    `Degree of protection ${degree} says nothing of openings: its first numeral does, from 1 to 6.`,
  noPhase: (name: string) => `Class ${name} gives no limit of phase displacement.`,
  offClass: (
    name: string,
    from: number | undefined,
    to: number | undefined,
    of: "current" | "voltage",
    percent: number,
  ) =>
    `Class ${name} gives limits ${from === to ? `at ${from} %` : `from ${from} % to ${to} %`} of rated ${of}, not at ${percent} %.`,
  noCableU0: (ratedkV: number) =>
    `U0 of a ${ratedkV} kV cable is not known here; give the U0 that is printed on its sheath (u0kV).`,
  lowVoltageCable: (ratedkV: number) =>
    `No withstand test is known here for a ${ratedkV} kV cable: the rows begin above 1 kV.`,
  noCableWave: (document: string, wave: string) =>
    `${document} has no test by ${wave}: take AC or DC.`,
  noCableWaveNeta: (wave: string) =>
    `No ${wave} value is known here for NETA: take VLF, or give the project's.`,
  noCoil: (ratedV: number, wave: string) =>
    `No range is known here for ${ratedV} V ${wave} under NETA: rows are 24, 48, 125 and 250 V DC, 120 and 240 V AC. The maker's plate gives it.`,
  noRelease: (ratedV: number, wave: string) =>
    `No undervoltage release of ${ratedV} V ${wave} is known here under NETA: the maker's plate gives its voltages.`,
  noMinimum:
    "IEC 62271 gives no minimum insulation resistance: set a project criterion or use NETA.",
  noDcWithstand:
    "IEC 62271 gives no DC withstand test for switchgear: test with AC or set a project criterion.",
  noIsolatingLevel: (ratedkV: number) =>
    `IEC 62271-1 has no level across the isolating distance here for ${ratedkV} kV.`,
  noIsolatingLevelNeta:
    "No isolating-distance voltage is known here for NETA: set a project criterion from the maker's documents.",
  noDcLevel: (document: string, ratedkV: number) =>
    `${document} gives no DC voltage for ${ratedkV} kV: test with AC or set a project criterion.`,
  controlByAc: "Control wiring is tested with AC here: set a project criterion for DC.",
};
