import { notPositive } from "../engineering/notPositive";
import { answer, type Result, refuse } from "../quantities/result";
import type { Basis, Criterion } from "./criterion";
import { type Chosen, type EditionOf, editionOf } from "./editions";
import * as iec2007 from "./iec62271-1.2007";
import * as iec2017 from "./iec62271-1.2017";
import { siteShare } from "./iec62271-200.2021";
import { controlFactory, controlSite, factory, fieldShare } from "./ieeeC37.20.2.2015";
import { netaStandard } from "./netaEditions";
import { figureOf, noted, rowOf } from "./table";
import { tidy } from "./tidy";

/** What is to be withstood: by which standards, where, with which voltage, by which part. */
export interface WithstandTest extends Chosen {
  readonly place: "factory" | "site";
  readonly wave: "AC" | "DC";
  readonly part: "main" | "isolating" | "control";
}

/**
 * Voltage of a one-minute withstand test on metal-clad switchgear, kV (AC: rms).
 *
 * - IEC, factory: IEC 62271-1, series I and II; site: 80 % of that, where agreed. IEC gives no DC test.
 * - NETA, factory: IEEE C37.20.2; site: ANSI/NETA table 100.2, three quarters of the factory value.
 * - Control wiring: IEC 2 kV, on site 1 kV; IEEE C37.20.2 1.5 kV, on site three quarters.
 *
 * A test voltage is never taken from another row: a rated voltage that the table does not have, by its
 * value or as the name of a nominal class (5, 25 and 35 kV class), has none.
 *
 * @param ratedkV rated voltage of the switchgear, kV
 * @returns `none` where the standards give no such test, `range` for a voltage not above 0
 * @example withstandVoltage(12, { basis: "IEC", place: "site", wave: "AC", part: "main" }) // 22.4
 * @example withstandVoltage(5, { basis: "NETA", place: "site", wave: "AC", part: "main" }) // 14
 */
export const withstandVoltage = (ratedkV: number, test: WithstandTest): Result<Criterion> =>
  notPositive("Rated voltage", ratedkV, "kV") ??
  (test.part === "control" ? control(test) : MAIN[test.basis](ratedkV, test));

/** The share of the rated level that is tested on site. */
export const siteShareOf: Readonly<Record<Basis, Criterion>> = { IEC: siteShare, NETA: fieldShare };

/** Rated insulation levels by edition. */
const LEVELS: Readonly<
  Record<EditionOf<"IEC 62271-1">, Pick<typeof iec2017, "seriesI" | "seriesII">>
> = { "2017": iec2017, "2007": iec2007 };

const iec = (ratedkV: number, test: WithstandTest): Result<Criterion> => {
  if (test.wave === "DC") return refuse("none", (text) => text.standards.noDcWithstand);
  const { seriesI, seriesII } = LEVELS[editionOf("IEC 62271-1", test)];
  const known = [seriesI, seriesII].map((table) => rowOf(table, ratedkV));
  const found = known.find(({ ok }) => ok) ?? known[0];
  const isolating = test.part === "isolating";
  const level = figureOf(
    found as NonNullable<typeof found>,
    (row) => (isolating ? row.isolating : row.main),
    (text) => text.standards.noIsolatingLevel(ratedkV),
  );
  if (!level.ok) return level;
  const { value } = level.value;
  const source = isolating
    ? { ...level.value.source, certainty: "memory" as const, by: undefined }
    : level.value.source;
  return answer(
    test.place === "factory"
      ? { value, source }
      : {
          value: tidy(value * siteShare.value),
          source: {
            ...noted(source, `on site ${siteShare.value * 100} %: IEC 62271-200, where agreed`),
          },
        },
  );
};

const neta = (ratedkV: number, test: WithstandTest): Result<Criterion> => {
  if (test.part === "isolating")
    return refuse("none", (text) => text.standards.noIsolatingLevelNeta);
  const table = test.place === "factory" ? factory : netaStandard(test).site;
  return figureOf(
    rowOf(table, ratedkV),
    (row) => row[test.wave],
    (text) => text.standards.noDcLevel(table.source.document, ratedkV),
  );
};

const MAIN = { IEC: iec, NETA: neta } as const;

const CONTROL: Readonly<Record<Basis, Record<WithstandTest["place"], Criterion>>> = {
  IEC: { factory: iec2017.auxiliary.type, site: iec2017.auxiliary.routine },
  NETA: { factory: controlFactory, site: controlSite },
};

const control = ({ basis, place, wave }: WithstandTest): Result<Criterion> =>
  wave === "AC"
    ? answer(CONTROL[basis][place])
    : refuse("none", (text) => text.standards.controlByAc);
