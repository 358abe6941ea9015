/**
 * The instrument exports of the invented harbour scenario, made from its lineup by a seeded generator.
 * `npx tsx tests/intake/sampleExports.ts` writes them beside the lineup; a test holds them to what is made here.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Lineup } from "../../src/lineup/lineup";
import { readLineup } from "../../src/lineup/readLineup";
import { contact } from "../../src/records/contact";
import { insulation } from "../../src/records/insulation";
import type { Row } from "../../src/records/kind";
import { withstand } from "../../src/records/withstand";

const folder = new URL("../../sample-workbooks/", import.meta.url);

export const sampleLineup = (): Lineup => {
  const read = readLineup(readFileSync(new URL("harbour-substation.lineup.json", folder), "utf8"));
  if (!read.ok)
    throw new Error(read.errors.map(({ path, message }) => `${path} ${message}`).join("\n"));
  return read.value;
};

export const sampleFile = (name: string): string => readFileSync(new URL(name, folder), "utf8");

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
  const lines = insulation
    .rows(lineup)
    .filter(({ stage }) => stage === "before")
    .flatMap((row, index) => {
      const key = name(row);
      const oneMinute = soundGohm(row, random);
      const [early, late] = [
        oneMinute / (1.1 + 0.3 * random()),
        oneMinute * (1.3 + 0.6 * random()),
      ];
      const busbar = row.part === "Busbar";
      const line = (
        reading: string,
        { volts = "5000", time = clock(490, index), remarks = "" } = {},
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

/** Text of each export by the name of its file. */
export const sampleExports = (lineup: Lineup): Readonly<Record<string, string>> => ({
  "harbour-1-insulation-before.csv": insulationBefore(lineup),
  "harbour-2-contact-resistance.txt": contactResistance(lineup),
  "harbour-3-withstand-and-after.tsv": withstandAndAfter(lineup),
});

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const [name, text] of Object.entries(sampleExports(sampleLineup())))
    writeFileSync(new URL(name, folder), text);
