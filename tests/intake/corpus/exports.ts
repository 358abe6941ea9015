import type { Lineup } from "../../../src/lineup/lineup";
import { keyIds, type RecordKind, type Row, rowKey } from "../../../src/records/kind";
import { contact } from "../../../src/records/kinds/contact";
import { insulation } from "../../../src/records/kinds/insulation";
import { withstand } from "../../../src/records/kinds/withstand";
import { pick, random, shown, spread } from "../../support/random";

/**
 * Invented exports, made from a start number and varied in every way that exports differ in, each with
 * what is true of it.
 */

/** One reading of an export: the record it is of, and its value in the column's unit. */
export interface Truth {
  readonly kind: string;
  readonly key: string;
  readonly value: number | string;
}

export interface MadeExport {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** What has to come to stand where, without asking. */
  readonly truths: readonly Truth[];
  /** Lines that nobody could place without asking: each is asked or refused by name. */
  readonly open: readonly number[];
  /** How it was varied, for the report. */
  readonly ways: readonly string[];
}

type Next = () => number;

const ENCODINGS = ["utf-8", "utf-8 mark", "utf-16le", "utf-16be", "utf-16le mark", "windows-1252"];
const DATES = ["iso", "points", "named", "two digits", "serial", "slash"];
const PHASES: Readonly<Record<string, readonly string[]>> = {
  L: ["L1", "L2", "L3"],
  R: ["R", "Y", "B"],
  A: ["A", "B", "C"],
  U: ["U", "V", "W"],
};
const EARTHS = [
  (phase: string) => `${phase}-E`,
  (phase: string) => `${phase} to earth`,
  (phase: string) => `E-${phase}`,
  (phase: string) => `phase ${phase} - ground`,
];
const BETWEEN = [
  (one: string, other: string) => `${one}-${other}`,
  (one: string, other: string) => `between ${one} and ${other}`,
  (one: string, other: string) => `${other}/${one}`,
];
const OPEN = [(phase: string) => `${phase} open`, (phase: string) => `across open pole ${phase}`];

const TITLES = {
  en: {
    object: "Panel",
    part: "Part",
    position: "Phases",
    stage: "Stage",
    r: "Resistance",
    date: "Date",
    t: "Temperature",
    by: "Tested by",
  },
  de: {
    object: "Feld",
    part: "Teil",
    position: "Leiter",
    stage: "Stufe",
    r: "Widerstand",
    date: "Prüfdatum",
    t: "Temperatur",
    by: "Prüfer",
  },
  fr: {
    object: "Cellule",
    part: "Organe",
    position: "Pôle",
    stage: "Étape",
    r: "Résistance",
    date: "Date d'essai",
    t: "Température",
    by: "Opérateur",
  },
  es: {
    object: "Celda",
    part: "Elemento",
    position: "Fase",
    stage: "Etapa",
    r: "Resistencia",
    date: "Fecha",
    t: "Temperatura",
    by: "Técnico",
  },
} as const;

const SUMMARIES = ["Average", "Total", "Min", "Max"];

/** One export. The kind, and nothing else, follows from the number directly, so that all come. */
export function madeExport(lineup: Lineup, start: number): MadeExport {
  const next = random(7919 * start + 17);
  const of = [insulation, contact, withstand][start % 3] as RecordKind;
  const wide = start % 4 === 1 && of !== withstand;
  const writing = {
    delimiter: pick(next, [",", ";", "\t", "|"]),
    comma: next() < 0.5,
    language: pick(next, ["en", "en", "de", "fr", "es"] as const),
    scheme: pick(next, Object.keys(PHASES)),
    encoding: ENCODINGS[start % ENCODINGS.length] as string,
    date: DATES[Math.floor(start / 2) % DATES.length] as string,
    units: pick(next, ["title", "row", "cell"]),
    unit:
      of === contact
        ? pick(next, ["µΩ", "mΩ"])
        : of === insulation
          ? pick(next, ["MΩ", "GΩ"])
          : "kV",
    above: pick(next, ["none", "facts", "remarks"]),
    page: pick(next, [0, 0, 7]),
    sums: next() < 0.4,
    blanks: next() < 0.4,
    panel: pick(next, [
      (name: string) => name,
      (name: string) => name.replace("=", ""),
      (name: string) => name.replace("=H", "h-"),
      (name: string) => `Panel ${name.replace("=", "")}`,
    ]),
    twoLines: next() < 0.5,
    repeats: next() < 0.4,
  };
  // A decimal comma between commas would need quotation marks: the library that writes them is not asked here.
  if (writing.comma && writing.delimiter === ",") writing.delimiter = ";";
  if (writing.encoding === "windows-1252" && writing.unit.includes("Ω")) {
    // Windows-1252 has no Ω: such files write ohm.
    writing.unit = writing.unit.replace("Ω", "Ohm");
  }
  return wide
    ? wideExport(lineup, of, writing, start, next)
    : longExport(lineup, of, writing, start, next);
}

type Writing = {
  delimiter: string;
  comma: boolean;
  language: keyof typeof TITLES;
  scheme: string;
  encoding: string;
  date: string;
  units: string;
  unit: string;
  above: string;
  page: number;
  sums: boolean;
  blanks: boolean;
  panel: (name: string) => string;
  twoLines: boolean;
  repeats: boolean;
};

/** A value in the record's unit and as the file writes it. */
function reading(of: RecordKind, w: Writing, next: Next): { value: number; text: string } {
  const unit = w.unit.replace("Ohm", "Ω");
  if (of === withstand) {
    const value = shown(20 + 5 * next(), 1);
    return { value, text: String(value) };
  }
  if (of === contact) {
    const value = shown(20 + 20 * next(), 1);
    return {
      value,
      text: unit === "mΩ" ? String(Number((value / 1000).toFixed(4))) : value.toFixed(1),
    };
  }
  const value = Number(spread(next, 2000, 400_000).toPrecision(4));
  return { value, text: unit === "GΩ" ? String(Number((value / 1000).toFixed(6))) : String(value) };
}

const written = (text: string, w: Writing) => (w.comma ? text.replace(".", ",") : text);

function dayText(day: number, w: Writing): string {
  const two = String(day).padStart(2, "0");
  switch (w.date) {
    case "points":
      return `${two}.11.2026`;
    case "named":
      return `${day}-Nov-26`;
    case "two digits":
      return `${two}.11.26`;
    case "serial":
      return String(46326 + day);
    case "slash":
      return `${two}/11/2026`;
    default:
      return `2026-11-${two}`;
  }
}

function position(text: string, w: Writing, next: Next): string {
  const phases = PHASES[w.scheme] as readonly string[];
  const letter = (phase: string | undefined) => phases[Number(phase?.at(-1)) - 1] as string;
  const [one, other] = text.split("-");
  if (text.endsWith(" open")) return pick(next, OPEN)(letter(text.slice(0, 2)));
  if (other === "E") return pick(next, EARTHS)(letter(one));
  if (other !== undefined) return pick(next, BETWEEN)(letter(one), letter(other));
  return letter(text);
}

const positionOf = ({ combination, pole, phase }: Row) => String(combination ?? pole ?? phase);

function above(of: RecordKind, w: Writing): string[] {
  if (w.above === "none") return [];
  const test =
    of === contact
      ? "Contact resistance"
      : of === insulation
        ? "Insulation resistance"
        : "Withstand test";
  const d = w.delimiter;
  return w.above === "facts"
    ? [
        `Test${d}${test}`,
        `Project${d}Invented`,
        `Ambient temperature${d}${written("19.5", w)} °C`,
        "",
      ]
    : ["# Invented data", `Test: ${test}`, "Printed by nobody", ""];
}

const units = (w: Writing, text: string) => (w.units === "cell" ? `${text} ${w.unit}` : text);

function longExport(
  lineup: Lineup,
  of: RecordKind,
  w: Writing,
  start: number,
  next: Next,
): MadeExport {
  const t = TITLES[w.language];
  const staged = of === insulation;
  const r = of === withstand ? "Applied voltage" : t.r;
  const rTitle = w.units === "title" ? `${r} (${w.unit})` : r;
  const titles = [
    t.object,
    t.part,
    t.position,
    ...(staged ? [t.stage] : []),
    rTitle,
    t.t + (w.units === "row" ? "" : " (°C)"),
    t.date,
    t.by,
  ];
  const unitRow = [t.object, t.part, t.position, ...(staged ? [t.stage] : [])]
    .map(() => "")
    .concat([w.unit, "°C", "", ""]);
  const head = [titles, ...(w.units === "row" ? [unitRow] : [])].map((cells) =>
    cells.join(w.delimiter),
  );
  const lines = [...above(of, w), ...head];
  const truths: Truth[] = [];
  const open: number[] = [];
  const rows = of
    .rows(lineup)
    .filter((_, index) => Math.floor(index / 3) % 3 === start % 2)
    .slice(0, 40);
  rows.forEach((row, index) => {
    const { value, text } = reading(of, w, next);
    // The 25th proves that the day comes first.
    const day = index === 1 ? 25 : 1 + (index % 9);
    const cells = (panel: string, at: string, shownText: string, d = day) => [
      panel,
      String(row.part),
      at,
      ...(staged ? [String(row.stage)] : []),
      shownText,
      written((18 + (index % 5) + 0.5).toFixed(1), w),
      dayText(d, w),
      "Crew 1",
    ];
    const panel = String(row.object).startsWith("=")
      ? w.panel(String(row.object))
      : String(row.object);
    const at = position(positionOf(row), w, next);
    const key = rowKey(row, keyIds(of));
    if (index > 4 && index % 13 === 5) {
      // A name that no row has: asked with the nearest.
      lines.push(cells("H77", at, units(w, written(text, w))).join(w.delimiter));
      open.push(lines.length);
    } else if (index > 4 && index % 13 === 9) {
      lines.push(cells(panel, at, "see sheet 2").join(w.delimiter));
      open.push(lines.length);
    } else {
      lines.push(cells(panel, at, units(w, written(text, w))).join(w.delimiter));
      truths.push({ kind: of.id, key, value });
      if (w.repeats && index % 9 === 4) {
        // The very same line again, as an overlapping export has it.
        lines.push(lines.at(-1) as string);
      }
    }
    if (w.page > 0 && index % w.page === w.page - 1) lines.push(...head);
    if (w.blanks && index % 6 === 5) lines.push("", w.delimiter.repeat(titles.length - 1));
    if (w.sums && index % 10 === 9)
      lines.push(
        [
          pick(next, SUMMARIES),
          "",
          "",
          ...(staged ? [""] : []),
          written("44.5", w),
          "",
          "",
          "",
        ].join(w.delimiter),
      );
  });
  if (w.above === "remarks") lines.push("Note: none of this is real", "End of report");
  return made(lines, truths, open, w, start, of, "long");
}

function wideExport(
  lineup: Lineup,
  of: RecordKind,
  w: Writing,
  start: number,
  next: Next,
): MadeExport {
  const t = TITLES[w.language];
  const staged = of === insulation;
  const sets = of === insulation ? ["L1-E", "L2-E", "L3-E"] : ["L1", "L2", "L3"];
  // One spelling for each phase of the titles, as the letters of a scheme.
  const names = sets.map((one) =>
    position(one, { ...w, scheme: w.scheme === "A" ? "L" : w.scheme }, () => 0),
  );
  const keys = [t.object, t.part, ...(staged ? [t.stage] : [])];
  const d = w.delimiter;
  const inTitle = w.units !== "cell";
  const head = w.twoLines
    ? [
        [...keys, inTitle ? `${t.r} (${w.unit})` : t.r, "", "", t.date].join(d),
        [...keys.map(() => ""), ...names, ""].join(d),
      ]
    : [
        [
          ...keys,
          ...names.map((name) => (inTitle ? `${t.r} ${name} (${w.unit})` : `${t.r} ${name}`)),
          t.date,
        ].join(d),
      ];
  const lines = [...above(of, w), ...head];
  const truths: Truth[] = [];
  const groups = new Map<string, Row[]>();
  for (const row of of.rows(lineup)) {
    if (!sets.includes(positionOf(row))) continue;
    const key = [row.object, row.part, row.stage].join("|");
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  [...groups.values()].slice(0, 24).forEach((rows, index) => {
    const [first] = rows;
    if (!first || rows.length < 3) return;
    const panel = String(first.object).startsWith("=")
      ? w.panel(String(first.object))
      : String(first.object);
    const cells = rows.map((row) => {
      if (next() < 0.1) return "";
      const { value, text } = reading(of, w, next);
      truths.push({ kind: of.id, key: rowKey(row, keyIds(of)), value });
      return units({ ...w, units: inTitle ? "title" : "cell" }, written(text, w));
    });
    lines.push(
      [
        panel,
        String(first.part),
        ...(staged ? [String(first.stage)] : []),
        ...cells,
        dayText(index === 1 ? 25 : 1 + (index % 9), w),
      ].join(d),
    );
    if (w.page > 0 && index % w.page === w.page - 1) lines.push(...head);
    if (w.sums && index % 10 === 9)
      lines.push(
        [
          "Average",
          ...keys.slice(1).map(() => ""),
          written("1.5", w),
          written("1.5", w),
          written("1.5", w),
          "",
        ].join(d),
      );
  });
  return made(lines, truths, [], w, start, of, "wide");
}

function made(
  lines: readonly string[],
  truths: readonly Truth[],
  open: readonly number[],
  w: Writing,
  start: number,
  of: RecordKind,
  shape: string,
): MadeExport {
  return {
    name: `made-${start}.csv`,
    bytes: encoded(lines.join(start % 2 === 0 ? "\r\n" : "\n"), w.encoding),
    truths,
    open,
    ways: [
      of.id,
      shape,
      w.encoding,
      w.delimiter,
      w.comma ? "comma" : "point",
      w.language,
      w.scheme,
      w.date,
      w.units,
      w.unit,
      w.above,
    ],
  };
}

function encoded(text: string, encoding: string): Uint8Array {
  if (encoding === "windows-1252") return new Uint8Array(Buffer.from(text, "latin1"));
  if (!encoding.startsWith("utf-16"))
    return new TextEncoder().encode(encoding === "utf-8" ? text : `\ufeff${text}`);
  const bytes = Buffer.from(encoding.endsWith("mark") ? `\ufeff${text}` : text, "utf16le");
  return new Uint8Array(encoding.includes("be") ? bytes.swap16() : bytes);
}
