import { type WriteSheet, writeXlsx } from "hucre/xlsx";
import type { Lineup } from "../../../src/lineup/lineup";
import {
  type CellValue,
  keyIds,
  type RecordKind,
  type Row,
  rowKey,
} from "../../../src/records/kind";
import { contact } from "../../../src/records/kinds/contact";
import { insulation } from "../../../src/records/kinds/insulation";
import { pick, random } from "../../support/random";
import type { Truth } from "./exports";

/**
 * Invented workbooks in layouts of somebody's own, made from a start number: long and wide, titles of one
 * and two lines and joined, panels joined over their rows or written once, units in titles, a row or a column of
 * their own or the cells, four languages, sums and notes between, several blocks below and beside each
 * other. Each is a real workbook file, with what is true of it.
 */
export interface MadeBook {
  readonly name: string;
  readonly file: Promise<Uint8Array>;
  readonly truths: readonly Truth[];
  readonly ways: readonly string[];
}

type Next = () => number;

const WORDS = {
  en: ["Panel", "Part", "Phases", "Stage", "Resistance", "Temperature", "Date", "Remarks"],
  de: ["Feld", "Teil", "Leiter", "Stufe", "Widerstand", "Temperatur", "Datum", "Bemerkung"],
  fr: ["Cellule", "Organe", "Pôle", "Étape", "Résistance", "Température", "Date", "Remarque"],
  es: [
    "Celda",
    "Elemento",
    "Fase",
    "Etapa",
    "Resistencia",
    "Temperatura",
    "Fecha",
    "Observaciones",
  ],
} as const;
const SUMS = { en: "Average", de: "Mittelwert", fr: "Moyenne", es: "Promedio" } as const;
const UNITS = { en: "Unit", de: "Einheit", fr: "Unité", es: "Unidad" } as const;
const PHASES = ["L1", "L2", "L3"];

interface Block {
  readonly cells: (CellValue | undefined)[][];
  readonly merges: { startRow: number; startCol: number; endRow: number; endCol: number }[];
  readonly truths: Truth[];
}

export function madeBook(lineup: Lineup, start: number): MadeBook {
  const next = random(104_729 * start + 3);
  const ways = {
    language: pick(next, ["en", "de", "fr", "es"] as const),
    wide: start % 2 === 1,
    units: start % 4 === 1 ? "title" : pick(next, ["title", "row", "cell", "column"]),
    joined: next() < 0.5,
    once: start % 3 === 0,
    lines: start % 4 === 1 ? 2 : 1,
    sums: next() < 0.5,
    notes: next() < 0.4,
    several: pick(next, ["one", "below", "beside"]),
    headed: next() < 0.6,
  };
  const kinds = [
    [insulation, contact],
    [contact, insulation],
  ][start % 2] as RecordKind[];
  const panels = lineup.panels
    .slice(start % 4, (start % 4) + 3)
    .map(({ designation }) => designation);
  const blocks = kinds
    .slice(0, ways.several === "one" ? 1 : 2)
    .map((kind) => blockOf(kind, lineup, panels, ways, next));
  const sheet = sheetOf(blocks, ways.several === "beside", ways.headed);
  return {
    name: `layout-${start}.xlsx`,
    file: writeXlsx({ sheets: [sheet] }),
    truths: blocks.flatMap(({ truths }) => truths),
    ways: [
      ways.language,
      ways.wide ? "wide" : "long",
      `units in ${ways.units}`,
      `${ways.lines} lines of titles`,
      ways.several,
      ...(ways.joined ? ["joined"] : ways.once ? ["written once"] : []),
      ...(ways.sums ? ["sums"] : []),
      ...(ways.notes ? ["notes"] : []),
    ],
  };
}

function blockOf(
  kind: RecordKind,
  lineup: Lineup,
  panels: readonly string[],
  ways: {
    readonly language: keyof typeof WORDS;
    readonly wide: boolean;
    readonly units: string;
    readonly joined: boolean;
    readonly once: boolean;
    readonly lines: number;
    readonly sums: boolean;
    readonly notes: boolean;
  },
  next: Next,
): Block {
  const [object, part, position, stage, resistance, temperature, , remarks] = WORDS[ways.language];
  const unit = kind === contact ? "µΩ" : pick(next, ["MΩ", "GΩ"]);
  const key = kind === contact ? "pole" : "combination";
  const titled = (name: string, of: string) => (ways.units === "title" ? `${name} (${of})` : name);
  const inColumn = ways.units === "column";
  const degreesTitle = inColumn ? `${temperature} (°C)` : titled(temperature, "°C");
  const unitTitle = inColumn ? [UNITS[ways.language]] : [];
  const unitCell = inColumn ? [unit] : [];
  const across = kind === contact ? PHASES : PHASES.map((phase) => `${phase}-E`);
  const keys = [object, part, ...(kind === insulation ? [stage] : [])];
  const titles: string[][] = ways.wide
    ? ways.lines === 2
      ? [
          [...keys, titled(resistance, unit), "", "", ...unitTitle, degreesTitle, remarks],
          [...keys.map(() => ""), ...across, ...unitTitle.map(() => ""), "", ""],
        ]
      : [
          [
            ...keys,
            ...across.map((one) => titled(`${resistance} ${one}`, unit)),
            ...unitTitle,
            degreesTitle,
            remarks,
          ],
        ]
    : [[...keys, position, titled(resistance, unit), ...unitTitle, degreesTitle, remarks]];
  const block: Block = { cells: titles.map((row) => [...row]), merges: [], truths: [] };
  const width = titles[0]?.length ?? 0;
  if (ways.wide && ways.lines === 2) {
    block.merges.push({ startRow: 0, endRow: 0, startCol: keys.length, endCol: keys.length + 2 });
    for (const at of keys.keys())
      block.merges.push({ startRow: 0, endRow: 1, startCol: at, endCol: at });
  }
  const first = ways.wide ? keys.length : keys.length + 1;
  const measured = ways.wide ? 3 : 1;
  if (ways.units === "row")
    block.cells.push(
      Array.from({ length: width }, (_, at) =>
        at >= first && at < first + measured ? unit : at === first + measured ? "°C" : "",
      ),
    );
  const value = (): { cell: CellValue; number: number } => {
    const tenths = 11 + Math.floor(next() * 900);
    const number = kind === contact ? tenths / 10 : unit === "GΩ" ? tenths * 100 : tenths * 10;
    const shown = unit === "GΩ" ? tenths / 10 : number;
    return { cell: ways.units === "cell" ? `${shown} ${unit}` : shown, number };
  };
  const degrees = () => {
    const number = 15 + Math.floor(next() * 20);
    return ways.units === "cell" ? `${number} °C` : number;
  };
  const truth = (row: Row, number: number) =>
    block.truths.push({ kind: kind.id, key: rowKey(row, keyIds(kind)), value: number });

  for (const panel of panels) {
    const rows = kind
      .rows(lineup)
      .filter((row) => row.object === panel && across.includes(String(row[key])));
    const groups = new Map<string, Row[]>();
    for (const row of rows) {
      const name = JSON.stringify([row.part, row.stage]);
      groups.set(name, [...(groups.get(name) ?? []), row]);
    }
    const from = block.cells.length;
    for (const group of groups.values()) {
      const named = (row: Row) => [
        block.cells.length === from || !(ways.joined || ways.once) ? panel : undefined,
        row.part,
        ...(kind === insulation ? [row.stage] : []),
      ];
      if (ways.wide) {
        const cells = across.map((one) => {
          const row = group.find((row) => row[key] === one);
          if (!row) return null;
          const { cell, number } = value();
          truth(row, number);
          return cell;
        });
        block.cells.push([...named(group[0] ?? {}), ...cells, ...unitCell, degrees(), null]);
      } else
        for (const row of group) {
          const { cell, number } = value();
          truth(row, number);
          block.cells.push([...named(row), row[key], cell, ...unitCell, degrees(), null]);
        }
    }
    const last = block.cells.length - 1;
    if (ways.joined && last > from)
      block.merges.push({ startRow: from, endRow: last, startCol: 0, endCol: 0 });
    if (ways.sums)
      block.cells.push([
        SUMS[ways.language],
        ...Array.from({ length: width - 1 }, (_, at) =>
          at + 1 >= first && at + 1 < first + measured ? 33.3 : null,
        ),
      ]);
    if (ways.notes) block.cells.push(["Note: invented, like all of this"]);
  }
  return block;
}

function sheetOf(blocks: readonly Block[], beside: boolean, headed: boolean): WriteSheet {
  const rows: CellValue[][] = headed ? [["Test log of an invented site"], []] : [];
  const merges: Block["merges"] = [];
  let [top, left] = [rows.length, 0];
  for (const block of blocks) {
    block.cells.forEach((cells, at) => {
      const row = rows[top + at] ?? [];
      rows[top + at] = row;
      while (row.length < left) row.push(null);
      cells.forEach((cell, column) => {
        row[left + column] = cell === undefined || cell === "" ? null : cell;
      });
    });
    for (const { startRow, endRow, startCol, endCol } of block.merges)
      merges.push({
        startRow: top + startRow,
        endRow: top + endRow,
        startCol: left + startCol,
        endCol: left + endCol,
      });
    if (beside) left += (block.cells[0]?.length ?? 0) + 1;
    else {
      rows.push([]);
      top = rows.length;
    }
  }
  return { name: "Own", rows: Array.from(rows, (row) => row ?? []), merges };
}
