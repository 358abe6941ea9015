import { notPositive } from "../engineering/notPositive";
import { answer, type Result, refuse } from "../quantities/result";
import { nationalCables } from "./bs6622.2007";
import type { Basis, Criterion, Source } from "./criterion";
import { type Chosen, type EditionOf, editionOf } from "./editions";
import * as iec2005 from "./iec60502-2.2005";
import * as iec2014 from "./iec60502-2.2014";
import { vlf, minutes as vlfMinutes } from "./ieee400.2.2013";
import { figureOf, noted, rowOf } from "./table";
import { tidy } from "./tidy";

export const CABLE_WAVES = ["AC", "DC", "VLF"] as const;
export type CableWave = (typeof CABLE_WAVES)[number];

/** The wave that each basis gives a value for first. */
export const usualCableWave: Readonly<Record<Basis, CableWave>> = { IEC: "AC", NETA: "VLF" };

/** A cable by the voltages on its sheath, kV. */
export interface CableRating {
  /** Rated voltage U, or the highest voltage U_m of its system. */
  readonly ratedkV: number;
  readonly u0kV?: number;
}

/** Voltage and duration of a withstand test, kV and min. */
export interface CableTest {
  readonly kV: Criterion;
  readonly minutes: Criterion;
}

/** Voltages of a cable, kV, with their source. */
interface Voltages {
  readonly u0: number;
  readonly u: number;
  readonly source: Source;
}

const ON_THE_SHEATH: Source = {
  document: "The cable's own U0",
  edition: "",
  certainty: "maker",
};

/**
 * U0 and U of a cable, kV: its own U0 where it is given, else by IEC 60502-2 (U_m or U) or its national
 * designation. A voltage that none of them has gives none: U0 is on the cable's sheath.
 *
 * A cable of 11 kV has U0 6.35 kV, one of 12 kV has U0 6 kV.
 */
export const cableVoltages = ({ ratedkV, u0kV }: CableRating): Result<Voltages> => {
  const byMost = rowOf(iec2014.cables, ratedkV);
  const byNominal = iec2014.cables.rows.find(({ u }) => u === ratedkV);
  const national = rowOf(nationalCables, ratedkV);
  const known = byMost.ok
    ? { ...byMost.value.row, source: byMost.value.source }
    : byNominal
      ? { ...byNominal, source: iec2014.cables.source }
      : national.ok
        ? { ...national.value.row, source: national.value.source }
        : undefined;
  if (u0kV !== undefined) {
    const u = nationalCables.rows.find(({ u0 }) => u0 === u0kV)?.u ?? known?.u ?? ratedkV;
    return answer({ u0: u0kV, u, source: ON_THE_SHEATH });
  }
  return known ? answer(known) : refuse("none", (text) => text.standards.noCableU0(ratedkV));
};

/**
 * Withstand tests of a medium-voltage cable after laying, phase to earth (AC and VLF: rms), any one of
 * which serves; the first is the usual one.
 *
 * - IEC: IEC 60502-2: AC U0 for 24 h or U for 5 min, DC 4 U0 for 15 min, 0.1 Hz 3 U0 for 15 min
 * - NETA: IEEE 400.2, table 3: very low frequency, by the purpose of the test, 30 min at least
 *
 * The level comes from the cable's own voltages and is never taken from another row. Local rules differ;
 * the cable maker's come first.
 *
 * @returns `none` where the standards give no such test, `range` for a voltage not above 0
 * @example cableTests({ ratedkV: 12 }, "DC", { basis: "IEC" }).value[0].kV.value // 24
 * @example cableTests({ ratedkV: 28 }, "VLF", { basis: "NETA" }).value[0].kV.value // 36
 */
export const cableTests = (
  rating: CableRating,
  wave: CableWave,
  chosen: Chosen,
): Result<readonly CableTest[]> =>
  notPositive("Rated voltage", rating.ratedkV, "kV") ??
  (rating.ratedkV <= LOW_VOLTAGE
    ? refuse("none", (text) => text.standards.lowVoltageCable(rating.ratedkV))
    : chosen.basis === "IEC"
      ? iecTests(rating, wave, chosen)
      : netaTest(rating, wave, chosen));

const LOW_VOLTAGE = 1;

/** The tests of each wave by their names in the standard, the usual one first. */
const OF_WAVE = { AC: ["ACu0", "ACu"], DC: ["DC"], VLF: ["VLF"] } as const;

/** Tests after laying by edition. */
const AFTER_LAYING: Readonly<
  Record<EditionOf<"IEC 60502-2">, Partial<typeof iec2014.afterLaying>>
> = { "2014": iec2014.afterLaying, "2005": iec2005.afterLaying };

const iecTests = (
  rating: CableRating,
  wave: CableWave,
  chosen: Chosen,
): Result<readonly CableTest[]> => {
  const voltages = cableVoltages(rating);
  if (!voltages.ok) return voltages;
  const edition = editionOf("IEC 60502-2", chosen);
  const tests = AFTER_LAYING[edition];
  const found = OF_WAVE[wave].flatMap((name): CableTest[] => {
    const test = tests[name];
    if (!test) return [];
    const { of, times, minutes, source } = test;
    return [
      {
        kV: {
          value: tidy(voltages.value[of] * times),
          source: noted(source, `U0 ${voltages.value.u0} kV, U ${voltages.value.u} kV`),
        },
        minutes: { value: minutes, source },
      },
    ];
  });
  return found.length > 0
    ? answer(found)
    : refuse("none", (text) => text.standards.noCableWave(`IEC 60502-2:${edition}`, wave));
};

const netaTest = (
  { ratedkV }: CableRating,
  wave: CableWave,
  { purpose = "acceptance" }: Chosen,
): Result<readonly CableTest[]> => {
  if (wave !== "VLF") return refuse("none", (text) => text.standards.noCableWaveNeta(wave));
  const kV = figureOf(rowOf(vlf, ratedkV), (row) => row[purpose]);
  return kV.ok
    ? answer([
        {
          kV: { ...kV.value, source: noted(kV.value.source, purpose) },
          minutes: vlfMinutes,
        },
      ])
    : kV;
};
