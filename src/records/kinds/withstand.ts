import { airFactor } from "../../engineering/airFactor";
import { dewMargin } from "../../engineering/dewPoint";
import { busSections } from "../../lineup/busbar";
import type { Lineup } from "../../lineup/lineup";
import { withstandTolerance } from "../../standards/withstandTolerance";
import { withstandVoltage } from "../../standards/withstandVoltage";
import { blank, closing, gear, PHASES, quoted, result, trail } from "../columns/common";
import { figure } from "../figure";
import { isBlank, type RecordKind, type Row } from "../kind";
import { limitOf, ownOf, sourceOf, sources } from "../limits";
import { exactly } from "../quantity";

const ownVoltage = ownOf("withstand kV");
const ownDuration = ownOf("withstand duration s");

const standard = (row: Row, { basis, withstand: { wave } }: Lineup) =>
  withstandVoltage(Number(row.ratedkV), { basis, place: "site", wave, part: "main" });

const numberCell = (found: { ok: true; value: number } | { ok: false }) =>
  found.ok ? found.value : "not judged";

/** Withstand of the main circuit on site: each phase in turn, the other two earthed. */
export const withstand: RecordKind = {
  id: "withstand",
  title: "Withstand voltage, main circuit",
  sheet: "Withstand",
  table: "GearWithstand",
  purpose:
    "Power-frequency (or DC) withstand test on site of each phase against the other two and earth; no disruptive discharge may occur at the required voltage for the required time.",
  cautions: [
    "Only by people licensed for high-voltage tests, under the site's permit system, with the test area fenced, warned and watched.",
    "Isolate, prove dead, earth; disconnect cables, voltage transformers, surge arresters and whatever the test would damage.",
    "Insulation must have passed first, and every surface must be warmer than the dew point.",
    "After the test, earth and discharge before touching, for DC tests for as long as the maker and the local rule say.",
  ],
  columns: [
    { id: "object", header: "Panel or section", role: "key", width: 15 },
    { id: "part", header: "Part", role: "key", width: 13 },
    { id: "phase", header: "Phase", role: "key", width: 7 },
    { id: "ratedkV", header: "Rated kV", role: "given", width: 6, unit: "kV" },
    {
      id: "basekV",
      header: "Site value kV",
      role: "limit",
      width: 9,
      unit: "kV",
      format: "0.0##",
      own: ownVoltage,
      formula: (ref, { basis, withstand: { wave } }) =>
        `IFERROR(${gear("WITHSTAND", ref("ratedkV"), quoted(basis), '"site"', quoted(wave), '"main"')},"")`,
      value: (row, lineup) => limitOf(standard(row, lineup)),
    },
    sources((row, lineup) => [
      ["voltage", sourceOf(ownVoltage(row, lineup) ?? standard(row, lineup))],
      ["duration", sourceOf(ownDuration(row, lineup)) || "lineup"],
    ]),
    {
      id: "temperature",
      header: "Air °C",
      role: "entry",
      width: 8,
      unit: "°C",
      accepts: { type: "number", least: -45, most: 60 },
      need: "condition",
    },
    {
      id: "pressure",
      header: "Pressure kPa",
      role: "entry",
      width: 9,
      unit: "kPa",
      accepts: { type: "number", least: 40, most: 120 },
      need: "condition",
      needed: (_row, lineup) => lineup.withstand.gapM !== undefined,
      help: "Barometer on site, not reduced to sea level.",
    },
    {
      id: "humidity",
      header: "Humidity %",
      role: "entry",
      width: 10,
      unit: "%",
      accepts: { type: "number", least: 0, most: 100 },
      need: "condition",
    },
    {
      id: "surface",
      header: "Surface °C",
      role: "entry",
      width: 9,
      unit: "°C",
      accepts: { type: "number", least: -45, most: 80 },
      need: "trail",
      help: "Of the coldest insulation surface; a test on a surface at or below the dew point is none.",
    },
    {
      id: "dewMargin",
      header: "Above dew K",
      role: "computed",
      width: 9,
      format: "0.0",
      formula: (ref) =>
        `IF(OR(${blank(ref("surface"))},${blank(ref("temperature"))},${blank(ref("humidity"))}),"",IFERROR(${gear("DEWMARGIN", ref("surface"), ref("temperature"), ref("humidity"))},"not judged"))`,
      value: (row) => {
        if ([row.surface, row.temperature, row.humidity].some(isBlank)) return null;
        const surface = exactly(row.surface, "°C");
        const temperature = exactly(row.temperature, "°C");
        const humidity = exactly(row.humidity, "%");
        return surface === undefined || temperature === undefined || humidity === undefined
          ? "not judged"
          : numberCell(dewMargin(surface, temperature, humidity));
      },
      working: ({ surface, temperature, humidity, dewMargin: margin }) => {
        const cold = exactly(surface, "°C");
        return typeof margin === "number" && cold !== undefined
          ? `surface ${figure(cold)} °C − dew point ${figure(cold - margin)} °C (air ${figure(temperature)} °C, ${figure(humidity)} %) = ${figure(margin)} K`
          : "";
      },
    },
    {
      id: "airFactor",
      header: "Air factor",
      role: "computed",
      width: 8,
      format: "0.000",
      help: "Correction to the air of the day (IEC 60060-1); 1 where the project asks for none.",
      formula: (ref, { withstand: { gapM, wave } }) =>
        gapM === undefined
          ? "1"
          : `IF(OR(${blank(ref("temperature"))},${blank(ref("pressure"))},${blank(ref("humidity"))},${blank(ref("basekV"))}),"",IFERROR(${gear("AIRFACTOR", ref("temperature"), ref("pressure"), ref("humidity"), ref("basekV"), gapM, quoted(wave))},"not judged"))`,
      value: (row, { withstand: { gapM, wave } }) => {
        if (gapM === undefined) return 1;
        if ([row.temperature, row.pressure, row.humidity, row.basekV].some(isBlank)) return null;
        const temperature = exactly(row.temperature, "°C");
        const pressure = exactly(row.pressure, "kPa");
        const humidity = exactly(row.humidity, "%");
        const testkV = exactly(row.basekV, "kV");
        return temperature === undefined ||
          pressure === undefined ||
          humidity === undefined ||
          testkV === undefined
          ? "not judged"
          : numberCell(airFactor({ temperature, pressure, humidity, testkV, gap: gapM, wave }));
      },
      working: ({ temperature, pressure, humidity, airFactor: factor }, { withstand: { gapM } }) =>
        gapM !== undefined && typeof factor === "number"
          ? `k1 · k2 of IEC 60060-1 at ${figure(temperature)} °C, ${figure(pressure)} kPa, ${figure(humidity)} %, ${gapM} m = ${figure(factor)}`
          : "",
    },
    {
      id: "required",
      header: "Required kV",
      role: "computed",
      width: 9,
      unit: "kV",
      format: "0.0##",
      formula: (ref) =>
        `IF(AND(ISNUMBER(${ref("basekV")}),ISNUMBER(${ref("airFactor")})),${ref("basekV")}*${ref("airFactor")},"")`,
      value: (row) =>
        typeof row.basekV === "number" && typeof row.airFactor === "number"
          ? row.basekV * row.airFactor
          : null,
      working: ({ basekV, airFactor: factor, required }) =>
        typeof required === "number"
          ? `${figure(basekV)} kV × ${figure(factor)} = ${figure(required)} kV`
          : "",
    },
    {
      id: "durationLeast",
      header: "Required s",
      role: "limit",
      width: 9,
      unit: "s",
      own: ownDuration,
      formula: (_ref, lineup) => String(lineup.withstand.seconds),
      value: (_row, lineup) => lineup.withstand.seconds,
    },
    {
      id: "applied",
      header: "Applied kV",
      role: "entry",
      width: 9,
      unit: "kV",
      accepts: { type: "number", least: 0, most: 400 },
      need: "reading",
      help: "r.m.s. for AC.",
    },
    {
      id: "duration",
      header: "Duration s",
      role: "entry",
      width: 9,
      unit: "s",
      accepts: { type: "number", least: 0, most: 90000 },
      need: "condition",
    },
    {
      id: "current",
      header: "Current mA",
      role: "entry",
      width: 9,
      unit: "mA",
      accepts: { type: "number", least: 0, most: 100000 },
      need: "trail",
    },
    {
      id: "discharge",
      header: "Discharge",
      role: "entry",
      width: 9,
      accepts: { type: "list", values: ["No", "Yes"], right: "No" },
      need: "condition",
      help: "Did a disruptive discharge occur?",
    },
    ...trail(),
    result(
      (ref, lineup) => {
        const least = 1 - withstandTolerance(lineup.withstand.seconds).value;
        return `IF(${ref("discharge")}="Yes","Fail",IF(${blank(ref("applied"))},"Missing",IF(AND(${ref("discharge")}="No",ISNUMBER(${ref("applied")}),ISNUMBER(${ref("required")}),ISNUMBER(${ref("duration")}),ISNUMBER(${ref("durationLeast")}),OR(${blank(ref("dewMargin"))},N(${ref("dewMargin")})>0)),IF(AND(${ref("applied")}>=${least}*${ref("required")},${ref("duration")}>=${ref("durationLeast")}),"Pass","Inconclusive"),"Inconclusive")))`;
      },
      (row, lineup) => {
        // A spreadsheet compares text without regard to case.
        const discharge = String(row.discharge ?? "").toLowerCase();
        if (discharge === "yes") return "Fail";
        if (isBlank(row.applied)) return "Missing";
        const { applied, required, duration, durationLeast, dewMargin: margin } = row;
        if (
          discharge !== "no" ||
          typeof applied !== "number" ||
          typeof required !== "number" ||
          typeof duration !== "number" ||
          typeof durationLeast !== "number" ||
          !(isBlank(margin) || (typeof margin === "number" && margin > 0))
        )
          return "Inconclusive";
        const least = 1 - withstandTolerance(lineup.withstand.seconds).value;
        return applied >= least * required && duration >= durationLeast ? "Pass" : "Inconclusive";
      },
    ),
    ...closing(),
  ],
  rows: (lineup) => {
    const rows = (object: string, part: string): Row[] =>
      PHASES.map((phase) => ({ object, part, phase, ratedkV: lineup.ratings.voltagekV }));
    return [
      ...busSections(lineup).flatMap((section) => rows(section, "Busbar")),
      ...lineup.panels.flatMap(({ designation, breaker }) =>
        breaker ? rows(designation, "Circuit") : [],
      ),
    ];
  },
  after: [{ kind: "insulation", of: "before" }, { kind: "gas" }],
  accepted: [],
  enough: [
    { value: "applied", limit: "required", unit: "kV", sense: "least", tolerance: 0.01 },
    { value: "duration", limit: "durationLeast", unit: "s", sense: "least" },
  ],
  plot: { value: "applied", limit: "required", unit: "kV", log: false },
};
