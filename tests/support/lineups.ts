import { readFileSync } from "node:fs";
import { type Lineup, lineupSchema } from "../../src/lineup/lineup";
import { readLineup } from "../../src/lineup/readLineup";

export const SAMPLE = "sample-workbooks/harbour-substation.lineup.json";

/** The invented lineup of the samples. */
export function sampleLineup(): Lineup {
  const read = readLineup(readFileSync(SAMPLE, "utf8"));
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  return read.value;
}

/** An invented lineup of so many panels, each with a breaker, on sections of ten. */
export const longLineup = (panels: number, changes: Partial<Lineup> = {}): Lineup => ({
  ...lineupSchema.parse({
    note: "Invented for tests.",
    project: {
      name: "Invented",
      site: "Nowhere (invented)",
      specification: "INV-SPEC (invented)",
      drawings: [{ number: "INV-1", revision: "A", title: "Invented" }],
    },
    basis: "NETA",
    ratings: { voltagekV: 12, frequencyHz: 50, busbarA: 2000, controlV: 110 },
    panels: Array.from({ length: panels }, (_, index) => ({
      designation: `=K${String(index + 1).padStart(4, "0")}`,
      type: "feeder",
      section: `Section ${Math.floor(index / 10) + 1}`,
      breaker: {
        medium: "SF6",
        ratedA: 1250,
        contactLimit: 50,
        document: "invented",
        ...(index % 2 === 0 ? { poleSpreadMs: 2 } : {}),
        closingMs: { least: 40, most: 60 },
        openingMs: { least: 20, most: 35 },
        chargingS: 15,
        ...(index % 2 === 0 || changes.basis !== "IEC"
          ? { closingV: { least: 90, most: 125 }, openingV: { least: 70, most: 125 } }
          : {}),
        gas: {
          fillingMPa: 0.55,
          alarmMPa: 0.5,
          lockoutMPa: 0.48,
          pressure: index % 3 === 0 ? "absolute" : "gauge",
        },
      },
      joints: [
        { name: "Busbar", bolt: "M12", torqueNm: 60, document: "invented" },
        { name: "Earth bar", bolt: "M10" },
      ],
    })),
    instruments: [
      { id: "X-1", kind: "Invented", serial: "0", calibrated: "2026-01-01", due: "2027-01-01" },
    ],
  }),
  ...changes,
});
