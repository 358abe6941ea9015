import { notPositive } from "../engineering/notPositive";
import { answer, type Result, refuse } from "../quantities/result";
import type { Basis, Criterion, Source } from "./criterion";
import { rowFor } from "./rowFor";
import { tidy } from "./tidy";
import {
  iecSource,
  iecWithstand,
  metalCladFactory,
  metalCladSite,
  netaSources,
} from "./withstandTables";

/** What is to be withstood: under which basis, where, with which voltage, by which part. */
export interface WithstandTest {
  readonly basis: Basis;
  readonly place: "factory" | "site";
  readonly wave: "AC" | "DC";
  readonly part: "main" | "isolating" | "control";
}

/** Voltages up to this, kV, are low voltage, which the IEC table does not speak of. */
const LOW_VOLTAGE = 1;

/**
 * Voltage of a one-minute withstand test on metal-clad switchgear, kV (AC: rms).
 *
 * - IEC, factory: IEC 62271-1, common values (memory); site: 80 % of that, where agreed (read in a
 *   gear maker's manual). IEC gives no DC test.
 * - NETA, factory: IEEE C37.20.2 (read in a handbook); site: ANSI/NETA MTS-2019, table 100.2 (read),
 *   three quarters of the factory value.
 * - Control wiring: IEC 2 kV, on site 1 kV; IEEE C37.20.2 1.5 kV, on site three quarters (memory).
 *
 * A rated voltage between two rows takes the higher row; beyond the last there is no answer.
 *
 * @param ratedkV rated voltage of the switchgear, kV; above 1 kV for IEC
 * @returns `none` where the basis gives no such test, `range` for a voltage not above 0
 * @example withstandVoltage(12, { basis: "IEC", place: "site", wave: "AC", part: "main" }) // 22.4
 * @example withstandVoltage(12, { basis: "NETA", place: "site", wave: "DC", part: "main" }) // 37.5
 */
export const withstandVoltage = (ratedkV: number, test: WithstandTest): Result<Criterion> =>
  notPositive("Rated voltage", ratedkV, "kV") ??
  (test.part === "control" ? control(test) : test.basis === "IEC" ? iec : neta)(ratedkV, test);

type Rule = (ratedkV: number, test: WithstandTest) => Result<Criterion>;

const iec: Rule = (ratedkV, { place, wave, part }) => {
  if (wave === "DC")
    return refuse(
      "none",
      "IEC 62271 gives no DC withstand test for switchgear: test with AC or set a project criterion.",
    );
  const row = ratedkV > LOW_VOLTAGE ? rowFor(iecWithstand, ratedkV) : undefined;
  if (!row || part === "control")
    return beyond(ratedkV, "IEC 62271-1", "from above 1 kV to 72.5 kV");
  const factory = row[part];
  return answer(
    place === "factory"
      ? { value: factory, source: iecSource }
      : { value: tidy(factory * 0.8), source: siteSources[part] },
  );
};

const neta: Rule = (ratedkV, { place, wave, part }) => {
  if (part === "isolating")
    return refuse(
      "none",
      "No isolating-distance voltage is known here for NETA: set a project criterion from the maker's documents.",
    );
  const [rows, span] =
    place === "factory"
      ? [ratedkV > 1.058 ? metalCladFactory : [], "from above 1.058 kV to 38 kV"]
      : [metalCladSite, "up to 38 kV"];
  const row = rowFor(rows, ratedkV);
  const source = netaSources[place];
  if (!row) return beyond(ratedkV, source.document, span);
  if (wave === "AC") return answer({ value: row.AC, source });
  return row.DC === undefined
    ? refuse(
        "none",
        `${source.document} gives no DC voltage for ${ratedkV} kV: test with AC or set a project criterion.`,
      )
    : answer({
        value: row.DC,
        source: { ...source, certainty: row.certaintyDC ?? source.certainty },
      });
};

const control =
  ({ basis, place, wave }: WithstandTest): Rule =>
  () =>
    wave === "AC"
      ? answer(controlWithstand[basis][place])
      : refuse("none", "Control wiring is tested with AC here: set a project criterion for DC.");

const beyond = (ratedkV: number, document: string, span: string) =>
  refuse(
    "none",
    `${document} has no row for ${ratedkV} kV: its rows reach ${span}. Set a project criterion.`,
  );

const siteSource: Source = {
  document: "IEC 62271-200",
  edition: "2021",
  place: "test after erection on site, 80 % of the rated value",
  certainty: "memory",
  note: "80 % read in a gear maker's manual, where agreed; rated value and edition from memory",
};

/** What the site values rest on. */
export const siteSources: Readonly<Record<"main" | "isolating", Source>> = {
  main: siteSource,
  isolating: {
    document: "IEC 62271-200",
    edition: "2021",
    place: "80 % of the rated value, as for the main circuit",
    certainty: "practice",
    note: "where agreed; rated value from memory",
  },
};

const controlSource = (document: string, edition: string, note: string): Source => ({
  document,
  edition,
  place: "auxiliary and control circuits",
  certainty: "memory",
  note,
});

/** Control wiring, kV, with what is known of each value. */
export const controlWithstand: Readonly<Record<Basis, Record<WithstandTest["place"], Criterion>>> =
  {
    IEC: {
      factory: { value: 2, source: controlSource("IEC 62271-1", "2017", "1 min") },
      site: { value: 1, source: controlSource("IEC 62271-1", "2017", "1 s, the routine value") },
    },
    NETA: {
      factory: { value: 1.5, source: controlSource("IEEE C37.20.2", "2015", "1 min") },
      site: {
        value: 1.125,
        source: controlSource(
          "IEEE C37.20.2",
          "2015",
          "1 min, three quarters of the factory value",
        ),
      },
    },
  };
