/**
 * The instrument exports of the invented harbour scenario, made from its lineup by a seeded generator.
 * `npx tsx tests/tools/sampleExports.ts` writes them beside the lineup; a test holds them to what is made here.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Lineup } from "../../src/lineup/lineup";
import { evaluate } from "../../src/records/evaluate";
import { keyIds, type RecordKind, type Row } from "../../src/records/kind";
import { cable } from "../../src/records/kinds/cable";
import { contact } from "../../src/records/kinds/contact";
import { controlWiring } from "../../src/records/kinds/controlWiring";
import { currentTransformer } from "../../src/records/kinds/currentTransformer";
import { dimensions } from "../../src/records/kinds/dimensions";
import { documents } from "../../src/records/kinds/documents";
import { earthing } from "../../src/records/kinds/earthing";
import { excitation } from "../../src/records/kinds/excitation";
import { functionTest } from "../../src/records/kinds/function";
import { gas } from "../../src/records/kinds/gas";
import { handling } from "../../src/records/kinds/handling";
import { indexCurve } from "../../src/records/kinds/indexCurve";
import { inspection } from "../../src/records/kinds/inspection";
import { installation } from "../../src/records/kinds/installation";
import { insulation } from "../../src/records/kinds/insulation";
import { mechanism } from "../../src/records/kinds/mechanism";
import { metering } from "../../src/records/kinds/metering";
import { permits } from "../../src/records/kinds/permits";
import { protection } from "../../src/records/kinds/protection";
import { timing } from "../../src/records/kinds/timing";
import { torque } from "../../src/records/kinds/torque";
import { undervoltage } from "../../src/records/kinds/undervoltage";
import { voltageTransformer } from "../../src/records/kinds/voltageTransformer";
import { withstand } from "../../src/records/kinds/withstand";
import { sampleLineup } from "../support/lineups";

const folder = new URL("../../sample-workbooks/", import.meta.url);

export const sampleFile = (name: string): string => readFileSync(new URL(name, folder), "utf8");

export const HARBOUR = "harbour-substation";

const INVENTED = "Invented data: no such site, project, maker, instrument or person exists.";

/** Numbers from 0 to 1, the same for the same seed (Mulberry32, public domain). */
const seeded = (seed: number) => {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
};

const clock = (start: number, index: number, step = 3) => {
  const minutes = start + step * index;
  const two = (n: number) => String(n).padStart(2, "0");
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
};

/** Three significant figures, never with an exponent. */
const figures = (value: number) => String(Number(value.toPrecision(3)));

const name = ({ object, part, combination, pole, phase }: Row) =>
  [object, part, combination ?? pole ?? phase].join(" ");

/** A sound insulation resistance in GΩ: highest across open poles in vacuum, lowest in the oldest breaker. */
const soundGohm = ({ object, part, combination }: Row, random: () => number) => {
  const middle = String(combination).endsWith("open")
    ? 2200
    : part === "Busbar"
      ? 85
      : object === "=H07"
        ? 28
        : 140;
  return middle * Math.exp(1.1 * (random() - 0.5));
};

/** 1: insulation before the withstand test; comma, a block of facts above the table, GΩ in the titles. */
const insulationBefore = (lineup: Lineup): string => {
  const random = seeded(110301);
  const facts = [
    `# ${INVENTED}`,
    "Test,Insulation resistance",
    "Stage,before withstand",
    "Instrument,Insulation tester 5 kV (invented)",
    "Serial number,INV-0417",
    "Insulation temperature,18.5 °C",
    "Humidity,52 %",
    "Date,2026-11-03",
    "Tested by,Crew 1 (invented)",
    "",
  ];
  const titles =
    "No,Panel,Part,Combination,Test voltage (V),R 30 s (GΩ),R 1 min (GΩ),R 10 min (GΩ),Time,Remarks";
  const rows = insulation.rows(lineup).filter(({ stage }) => stage === "before");
  const busbars = rows.filter(({ part }) => part === "Busbar").length;
  const lines = rows.flatMap((row, index) => {
    const key = name(row);
    const oneMinute = soundGohm(row, random);
    const [early, late] = [oneMinute / (1.1 + 0.3 * random()), oneMinute * (1.3 + 0.6 * random())];
    const busbar = row.part === "Busbar";
    // Ten minutes of voltage on each of the busbars', which come first, and one minute on each of the others.
    const [long, short] = [Math.min(index, busbars), Math.max(index - busbars, 0)];
    const line = (
      reading: string,
      { volts = "5000", time = clock(450, 12 * long + 3 * short, 1), remarks = "" } = {},
    ) =>
      [
        index + 1,
        row.object,
        row.part,
        row.combination,
        volts,
        busbar ? figures(early) : "",
        reading,
        busbar ? figures(late) : "",
        time,
        remarks,
      ].join(",");
    switch (key) {
      case "=H08 Circuit L2-E":
        return [];
      case "=H09 Circuit L3-E":
        return [line("", { remarks: "lead off" })];
      case "=H07 Circuit L2-E":
        return [line("2.14", { remarks: "surface damp" })];
      case "=H02 Circuit L1-E":
        return [line("0.87"), line(figures(oneMinute), { time: "16:05", remarks: "repeated" })];
      case "=H03 Circuit L3-E":
        return [
          line(figures(oneMinute), { time: "" }),
          line(figures(oneMinute * 0.4), { time: "" }),
        ];
      case "=H10 Circuit L1-E":
        return [line(figures(oneMinute), { volts: "1000" })];
      default:
        return [line(oneMinute > 2400 ? "> 10 TΩ" : figures(oneMinute))];
    }
  });
  const stray = ["61", "=H13", "Circuit", "L1-E", "5000", "", "96.3", "", "16:20", ""].join(",");
  return `${[...facts, titles, ...lines, stray].join("\r\n")}\r\n`;
};

/** The one-minute readings of that export, MΩ, by panel, part and combination. */
const insulationMohm = (): ReadonlyMap<string, number> =>
  new Map(
    insulationBefore(sampleLineup())
      .split("\r\n")
      .map((line) => line.split(","))
      .map(([, panel, part, combination, , , reading]) => [
        [panel, part, combination].join(" "),
        1000 * Number(reading || Number.NaN),
      ]),
  );

/** 2: contact resistance; semicolon, decimal comma, poles by number, no sign before the panel's name. */
const contactResistance = (lineup: Lineup): string => {
  const random = seeded(110202);
  const titles =
    "Panel;Device;Pole;Test current [A];Resistance [µΩ];Conductor temperature [°C];Date;Serial number;Tested by";
  const lines = contact.rows(lineup).flatMap((row) => {
    const key = name(row);
    const joint = String(row.part).startsWith("Joint");
    const middle = joint ? 8 : row.object === "=H07" ? 52 : row.ratedA === 2000 ? 26 : 36;
    const sound = middle * (0.88 + 0.24 * random());
    const warm = 17 + 2 * random();
    const line = (reading: string, amps = "200") =>
      [
        String(row.object).replace("=", ""),
        String(row.part).replace("=", ""),
        String(row.pole).replace("L", ""),
        amps,
        reading,
        warm.toFixed(1).replace(".", ","),
        "02.11.2026",
        // The older set, out of calibration since, served for one joint.
        key.startsWith("=H09 Joint") ? "INV-0391" : "INV-0582",
        "Crew 2 (invented)",
      ].join(";");
    const comma = (value: number, digits = 1) => value.toFixed(digits).replace(".", ",");
    switch (key) {
      case "=H09 Breaker Q0 L2":
        return [];
      case "=H07 Breaker Q0 L2":
        return [line("88,4")];
      case "=H02 Breaker Q0 L3":
        return [line("49,2")];
      case "=H03 Joint to =H04 L1":
        return [line("16,9")];
      case "=H10 Breaker Q0 L1":
        return [line("OL")];
      case "=H08 Breaker Q0 L1":
        return [line("0,0371 mohm")];
      case "=H05 Breaker Q0 L1":
        return [line(comma(sound), "50")];
      case "=H01 Breaker Q0 L1":
        return [line(comma(sound, 3))];
      default:
        return [line(comma(sound))];
    }
  });
  return `${[`# ${INVENTED}`, "Test: Contact resistance, d.c., four-wire", titles, ...lines].join("\n")}\n`;
};

/** 3: withstand, then insulation after it; tabs, units in the cells, over-range marks, phases R Y B. */
const withstandAndAfter = (lineup: Lineup): string => {
  const random = seeded(110503);
  const letters = (text: unknown) =>
    String(text).replace(/L[123]/g, (phase) => "RYB".charAt(Number(phase[1]) - 1));
  const titles = [
    "Test",
    "Stage",
    "Panel",
    "Part",
    "Phases",
    "Test voltage",
    "Reading",
    "Duration",
    "Current",
    "Discharge",
    "Air temperature",
    "Surface temperature",
    "Relative humidity",
    "Barometer",
    "Date",
    "Time",
    "Instrument",
  ];
  const withstandLines = withstand.rows(lineup).flatMap((row, index) => {
    const key = name(row);
    const current = row.part === "Busbar" ? 9 + 3 * random() : 2.4 + random();
    const line = (applied: string, duration: string, discharge: string) =>
      [
        "Withstand",
        "",
        row.object,
        row.part,
        letters(row.phase),
        "",
        applied,
        duration,
        `${current.toFixed(1)} mA`,
        discharge,
        "17.8 °C",
        "17.1 °C",
        "55 %",
        "101.2 kPa",
        "2026-11-05",
        clock(505, index, 4),
        "HV-1",
      ].join("\t");
    const applied = `${(22.4 + 0.1 * Math.floor(3 * random())).toFixed(1)} kV`;
    switch (key) {
      case "=H09 Circuit L3":
        return [];
      case "=H07 Circuit L2":
        return [line("19.6 kV", "12 s", "Yes")];
      case "=H03 Circuit L1":
        return [line(applied, "45 s", "No")];
      case "=H10 Circuit L2":
        return [line("21.0 kV", "60 s", "No")];
      default:
        return [line(applied, index % 4 === 0 ? "1 min" : "60 s", "No")];
    }
  });
  const insulationLines = insulation.rows(lineup).flatMap((row, index) => {
    const key = name(row);
    const open = String(row.combination).endsWith("open");
    const gohm = soundGohm(row, random);
    const line = (stage: unknown, reading: string) =>
      [
        "Insulation",
        stage,
        row.object,
        row.part,
        open ? `across ${letters(String(row.combination).slice(0, 2))}` : letters(row.combination),
        "5 kV",
        reading,
        "",
        "",
        "",
        "18.2 °C",
        "",
        "54 %",
        "",
        "2026-11-06",
        clock(480, index % 60),
        "IR-1",
      ].join("\t");
    if (row.stage === "before")
      return key === "=H01 Circuit L1-E" ? [line("before", "61.0 GΩ")] : [];
    switch (key) {
      case "=H01 Circuit L2-E":
        return [];
      case "=H05 Breaker Q0 L3 open":
        return [line("after", "OL")];
      case "=H07 Circuit L2-E":
        return [line("after", "640 MOhm")];
      case "=H10 Circuit L3-E":
        return [line("after", "> 2 GΩ")];
      default:
        return [
          line(
            "after",
            gohm > 2400
              ? "OL > 10 TΩ"
              : gohm >= 1000
                ? `${figures(gohm / 1000)} TΩ`
                : `${figures(gohm)} GΩ`,
          ),
        ];
    }
  });
  return `${[`# ${INVENTED}`, "Tested by\tCrew 1 (invented)", "", titles.join("\t"), ...withstandLines, ...insulationLines].join("\r\n")}\r\n`;
};

type Random = () => number;

/** How one export of one record kind is written. */
interface Sheet {
  readonly kind: RecordKind;
  readonly test: string;
  readonly seed: number;
  readonly delimiter: "," | ";" | "\t";
  /** Facts above the table: day, instrument, who, conditions. */
  readonly facts: readonly (readonly [title: string, text: string])[];
  /** Titles after the keys, which go by the names that the records use. */
  readonly titles: readonly string[];
  readonly sound: (row: Row, random: Random) => readonly (string | number)[];
  /** Rows, by their keys, that are not sound: what stands there in place of it; none where the row is left out. */
  readonly faults: Readonly<
    Record<string, ((cells: readonly (string | number)[]) => (string | number)[]) | undefined>
  >;
}

const number = (value: number, digits: number) => Number(value.toFixed(digits));

/** A cell replaced. */
const at =
  (index: number, value: string | number) =>
  (cells: readonly (string | number)[]): (string | number)[] =>
    cells.with(index, value);

const crew = (day: string, instrument: string): Sheet["facts"] => [
  ["Date", day],
  ["Tested by", "Crew 2 (invented)"],
  ["Instrument", instrument],
];

const sheetText = (lineup: Lineup, sheet: Sheet): string => {
  const { kind, delimiter, facts, titles, sound, faults } = sheet;
  const random = seeded(sheet.seed);
  const comma = delimiter === ";";
  const written = (cell: unknown) =>
    typeof cell === "number" && comma
      ? String(cell).replace(".", ",")
      : String(cell ?? "").includes(delimiter)
        ? `"${cell}"`
        : String(cell ?? "");
  const keys = keyIds(kind);
  const headers = keys.map((id) => kind.columns.find((column) => column.id === id)?.header ?? id);
  const lines = evaluate(kind, kind.rows(lineup), lineup).flatMap((row) => {
    const cells = sound(row, random);
    const name = keys.map((id) => row[id]).join(" ");
    if (name in faults && !faults[name]) return [];
    return [[...keys.map((id) => row[id]), ...(faults[name]?.(cells) ?? cells)].map(written)];
  });
  return `${[
    `# ${INVENTED}`,
    ...[["Test", sheet.test], ...facts].map((fact) => fact.join(comma ? ": " : delimiter)),
    "",
    ...[[...headers, ...titles].map(written), ...lines].map((cells) => cells.join(delimiter)),
  ].join("\r\n")}\r\n`;
};

/** Ten points of an excitation curve through a knee at about this voltage, of a core that takes so much more than another. */
const curveThrough = (knee: number, size = 1): number[] => {
  const shares = Array.from({ length: 10 }, (_, point) => 0.1 * 13.5 ** (point / 9));
  return [
    ...shares.map((share) => number(knee * share, 1)),
    ...shares.map((share) => number(size * (0.01 * share ** 0.7 + 0.02 * share ** 14), 5)),
  ];
};

const headersOf = (kind: RecordKind, ids: readonly string[]) =>
  ids.map((id) => kind.columns.find((column) => column.id === id)?.header ?? id);

/** A check sheet that was filled in by hand and typed off: the record's own titles. */
const checked = (
  kind: RecordKind,
  number: number,
  day: string,
  ids: readonly string[],
  sound: Sheet["sound"],
  faults: Sheet["faults"] = {},
): Sheet => ({
  kind,
  test: kind.sheet,
  seed: 110100 + number,
  delimiter: ",",
  facts: crew(day, "").slice(0, 2),
  titles: headersOf(kind, ids),
  sound,
  faults,
});

const points = (letter: string) =>
  Array.from({ length: 10 }, (_, point) => `${letter} ${point + 1}`);

/** Closed up when the joints behind it are tightened and measured, days after the rest of the installation. */
export const COVERS = "Busbar supports, barriers and covers fitted";

/** When each inspection was asked for and held: with the work that it looks at, not before it. */
const INSPECTIONS: Readonly<Record<string, readonly [requested: string, held: string]>> = {
  "Drawings, procedures and calibration": ["2026-10-09", "2026-10-13"],
  "Busbar joints before they are covered": ["2026-10-20", "2026-10-26"],
  "Release for the withstand test": ["2026-10-29", "2026-11-04"],
  "Withstand test": ["2026-10-29", "2026-11-05"],
  "Function tests": ["2026-11-02", "2026-11-09"],
};

const SHEETS: Readonly<Record<string, Sheet>> = {
  "harbour-4-earthing.csv": {
    kind: earthing,
    test: "Earth continuity",
    seed: 110104,
    delimiter: ",",
    facts: crew("2026-10-27", "EB-1"),
    titles: ["Test current (A)", "Drop (mV)"],
    // Two earth bars of one make and length are alike.
    sound: ({ part }, random) => [
      100,
      number(part === "Earth bar" ? 104 + 20 * random() : 60 + 240 * random(), 0),
    ],
    faults: { "=H07 Door": at(1, 14_200) },
  },
  "harbour-5-torque.csv": {
    kind: torque,
    test: "Torque",
    seed: 110105,
    delimiter: ",",
    facts: crew("2026-10-26", "TW-1"),
    titles: ["Applied N·m", "Marked", "Re-checked"],
    // What the wrench showed: near its target, not on it.
    sound: ({ required }, random) => [
      number(Number(required) * (0.99 + 0.025 * random()), 1),
      "Yes",
      "Yes",
    ],
    faults: { "=H03 Earth bar": undefined, "=H09 Cable lugs": at(2, "No") },
  },
  "harbour-6-control-wiring.csv": {
    kind: controlWiring,
    test: "Control wiring",
    seed: 110106,
    delimiter: ",",
    facts: crew("2026-10-28", "IR-2"),
    titles: [
      ...headersOf(controlWiring, ["continuity", "ferrules"]),
      "Test voltage (V)",
      "R 1 min (MΩ)",
      "Applied kV",
      "Duration (s)",
      "Discharge",
    ],
    sound: (_row, random) => ["OK", "OK", 500, figures(60 * 20 ** random()), 1, 60, "No"],
    faults: { "=H08 Tripping": at(3, 0.6) },
  },
  "harbour-7-breaker-times.csv": {
    kind: timing,
    test: "Operating times",
    seed: 110107,
    delimiter: ",",
    facts: crew("2026-10-30", "BT-1"),
    titles: ["Control V", "L1 (ms)", "L2 (ms)", "L3 (ms)"],
    sound: ({ operation, least, most }, random) => {
      const middle =
        typeof least === "number" && typeof most === "number"
          ? (least + most) / 2
          : operation === "closing"
            ? 54
            : 31;
      return [110, ...[0, 0, 0].map(() => number(middle + 0.8 * random(), 1))];
    },
    faults: { "=H02 Breaker Q0 opening": at(3, 36.4) },
  },
  "harbour-8-gas.csv": {
    kind: gas,
    test: "SF6 pressure",
    seed: 110108,
    delimiter: ",",
    facts: crew("2026-10-30", "PG-1"),
    titles: [
      "Pressure MPa",
      "Gas °C",
      "Barometer kPa",
      ...headersOf(gas, ["alarmAt", "lockoutAt", "tight"]),
    ],
    sound: ({ filling, alarm, lockout }) => [
      number(Number(filling) + 0.004, 3),
      21,
      101.3,
      number(Number(alarm) + 0.004, 3),
      number(Number(lockout) + 0.003, 3),
      "No leak found",
    ],
    faults: {},
  },
  "harbour-9-current-transformers.csv": {
    kind: currentTransformer,
    test: "Current transformers",
    seed: 110109,
    delimiter: ";",
    facts: crew("29.10.2026", "PI-1"),
    titles: [
      "Injected A",
      "Secondary A",
      "Polarity",
      "Rct Ω",
      "Winding °C",
      "Test voltage (V)",
      "Insulation MΩ",
      "Burden VA",
    ],
    sound: ({ ratedPrimary, ratedSecondary, accuracy }, random) => [
      Number(ratedPrimary),
      number(Number(ratedSecondary) * (0.998 + 0.003 * random()), 4),
      "As marked",
      number((accuracy === "PX" ? 5.6 : 2.6) + 0.2 * random(), 2),
      19,
      500,
      number(400 * 6 ** random(), 0),
      accuracy === "PX" ? "" : number(3 + 3 * random(), 1),
    ],
    faults: { "=H09 2S1-2S2 L2": at(2, "Reversed"), "=H08 1S1-1S2 L1": undefined },
  },
  "harbour-10-excitation.csv": {
    kind: excitation,
    test: "Excitation",
    seed: 110110,
    delimiter: ";",
    facts: crew("29.10.2026", "PI-1"),
    titles: [...points("V"), ...points("A")],
    sound: ({ kneeLeast }, random) =>
      curveThrough(Number(kneeLeast) * (1.5 + 0.15 * random()), 0.92 + 0.16 * random()),
    faults: { "=H03 2S1-2S2 L3": () => curveThrough(88) },
  },
  "harbour-11-voltage-transformers.csv": {
    kind: voltageTransformer,
    test: "Voltage transformers",
    seed: 110111,
    delimiter: ",",
    facts: crew("2026-10-29", "PI-1"),
    titles: [
      "Primary V",
      "Secondary V",
      "Polarity",
      "Test voltage (V)",
      "Insulation MΩ",
      "Fuses",
      "Secondary earth",
      "Burden VA",
    ],
    sound: (_row, random) => [
      6351,
      number(63.51 * (0.998 + 0.004 * random()), 2),
      "As marked",
      500,
      number(500 * 5 ** random(), 0),
      "To drawing",
      "One point",
      number(9 + 4 * random(), 1),
    ],
    faults: { "=H04 1a-1n L3": at(1, 62.9) },
  },
  "harbour-12-meters.csv": {
    kind: metering,
    test: "Meters",
    seed: 110112,
    delimiter: ",",
    facts: crew("2026-10-31", "RT-1"),
    titles: ["Reference", "Meter shows"],
    sound: ({ pointPercent, fullScale }, random) => {
      const applied = (Number(pointPercent) / 100) * Number(fullScale);
      const off = 0.008 * (2 * random() - 1) * Number(fullScale);
      return [applied, number(applied + off, Number(fullScale) > 100 ? 0 : 2)];
    },
    faults: { "=H01 P1 100 %": at(1, 2044) },
  },
  "harbour-13-protection.csv": {
    kind: protection,
    test: "Protection relays",
    seed: 110113,
    delimiter: ",",
    facts: crew("2026-10-31", "RT-1"),
    titles: ["Measured", "Trips and shows"],
    sound: ({ expected }, random) => [
      number(Number(expected) * (0.99 + 0.025 * random()), 3),
      "Yes",
    ],
    faults: { "=H08 F1 51 5 × pick-up": at(0, 0.83) },
  },
  "harbour-14-cables.csv": {
    kind: cable,
    test: "Cables",
    seed: 110114,
    delimiter: ",",
    facts: crew("2026-11-10", "VL-1"),
    titles: [
      "Test voltage (V)",
      "Insulation MΩ",
      "Sheath MΩ",
      "Applied kV",
      "Held min",
      "Current mA",
      "Discharge",
    ],
    sound: (_row, random) => [
      5000,
      number(6000 * 5 ** random(), 0),
      number(40 + 160 * random(), 0),
      18,
      30,
      number(0.4 + random(), 2),
      "No",
    ],
    faults: { "=H02 W1 L1": at(4, 10) },
  },
  "harbour-15-absorption.csv": {
    kind: indexCurve,
    test: "Absorption ratio",
    seed: 110115,
    delimiter: ",",
    facts: [...crew("2026-11-04", "IR-1"), ["Insulation temperature", "18.5 °C"]],
    titles: [
      "Test voltage (V)",
      ...["15 s", "30 s", "45 s", "1 min", "2 min", "3 min", "5 min", "10 min"].map(
        (time) => `After ${time} MΩ`,
      ),
    ],
    // The same circuits a day after the insulation record: one reading again, a few per cent off.
    sound: (row, random) => {
      const oneMinute = (insulationMohm().get(name(row)) ?? 25_000) * (0.97 + 0.06 * random());
      return [
        5000,
        ...[0.68, 0.82, 0.93, 1, 1.14, 1.22, 1.33, 1.46].map((part) =>
          number(oneMinute * part * (part === 1 ? 1 : 0.99 + 0.02 * random()), 0),
        ),
      ];
    },
    faults: {},
  },
  "harbour-16-documents.csv": checked(
    documents,
    16,
    "2026-10-12",
    ["found"],
    ({ approved }) => [String(approved)],
    { "Lineup INV-E-1044": at(0, "B") },
  ),
  "harbour-17-permits.csv": checked(
    permits,
    17,
    "2026-10-19",
    ["number", "from", "to"],
    (_row, random) => [`INV-PW-${Math.floor(100 + 800 * random())}`, "2026-10-19", "2026-11-13"],
  ),
  "harbour-18-handling.csv": checked(
    handling,
    18,
    "2026-10-14",
    ["gear", "capacity", "gearDue", "condition", "indicator"],
    () => ["Pallet truck INV-L-2", 2500, "2027-03-31", "Sound", "Not tripped"],
  ),
  "harbour-19-inspection-points.csv": {
    ...checked(inspection, 19, "", ["requested", "released", "date", "by"], ({ part }) => {
      const [requested = "", held = ""] = INSPECTIONS[String(part)] ?? [];
      return [requested, "Released", held, "Client's inspector (invented)"];
    }),
    facts: [],
  },
  "harbour-20-installation.csv": {
    ...checked(
      installation,
      20,
      "",
      ["state", "date"],
      ({ part }) => ["OK", part === COVERS ? "2026-11-03" : "2026-10-23"],
      { "=H06 Labels and warning signs as on the drawing": at(0, "Not OK") },
    ),
    facts: [["Tested by", "Crew 2 (invented)"]],
  },
  "harbour-21-dimensions.csv": checked(
    dimensions,
    21,
    "2026-10-22",
    ["reading", "instrument"],
    ({ least, most }, random) => [
      typeof most === "number"
        ? number(most * (0.3 + 0.5 * random()), 1)
        : typeof least === "number"
          ? number(least + 20 + 60 * random(), 0)
          : number(1 + random(), 1),
      "LR-1",
    ],
  ),
  "harbour-22-mechanisms.csv": checked(
    mechanism,
    22,
    "2026-10-30",
    [
      "closingLow",
      "closingHigh",
      "openingLow",
      "openingHigh",
      "charged",
      "counterBefore",
      "counterAfter",
      "made",
      "instrument",
    ],
    (_row, random) => [85, 126, 65, 126, number(9 + 3 * random(), 1), 30, 42, 12, "BT-1"],
    { "=H09 Breaker Q0": at(6, 41) },
  ),
  "harbour-25-undervoltage.csv": checked(
    undervoltage,
    25,
    "2026-10-30",
    ["pickup", "dropout", "instrument"],
    (_row, random) => [number(84 + 4 * random(), 1), number(55 + 6 * random(), 1), "BT-1"],
  ),
  "harbour-23-functions.csv": checked(functionTest, 23, "2026-11-09", ["state"], () => ["OK"], {
    "=H02 Trip circuit supervision shows a broken circuit, open and closed": at(0, "Not OK"),
  }),
};

/** Text of each export by the name of its file. */
export const sampleExports = (lineup: Lineup): Readonly<Record<string, string>> => ({
  "harbour-1-insulation-before.csv": insulationBefore(lineup),
  "harbour-2-contact-resistance.txt": contactResistance(lineup),
  "harbour-3-withstand-and-after.tsv": withstandAndAfter(lineup),
  ...Object.fromEntries(
    Object.entries(SHEETS).map(([name, sheet]) => [name, sheetText(lineup, sheet)]),
  ),
});

/** The retest of the door of =H07 after its repair, which the demo takes in after the others. */
export const RETEST = "retest/harbour-24-earthing-retest.csv";
export const retestExport = (): string =>
  `${[
    `# ${INVENTED}`,
    "Test,Earth continuity",
    "Date,2026-11-10",
    "Tested by,Crew 2 (invented)",
    "Instrument,EB-1",
    "",
    "Panel or section,Earthed part,Test current (A),Drop (mV)",
    "=H07,Door,100,236",
  ].join("\r\n")}\r\n`;

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const [name, text] of Object.entries({
    ...sampleExports(sampleLineup()),
    [RETEST]: retestExport(),
  }))
    writeFileSync(new URL(name, folder), text);
