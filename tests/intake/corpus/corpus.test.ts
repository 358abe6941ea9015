import { describe, expect, test } from "vitest";
import { guessMaps } from "../../../src/intake/ownLayout/guessMaps";
import { mappedTables } from "../../../src/intake/ownLayout/mappedTables";
import { placeReadings } from "../../../src/intake/place/placeReadings";
import { readExport } from "../../../src/intake/table/readExport";
import { decode } from "../../../src/intake/text/decode";
import { delimited } from "../../../src/intake/text/delimited";
import {
  type CellValue,
  keyIds,
  type RecordKind,
  type Row,
  rowKey,
} from "../../../src/records/kind";
import { KINDS } from "../../../src/records/kinds";
import { rowsOf } from "../../../src/records/rowsOf";
import type { Snapshot } from "../../../src/sheets/snapshot";
import { english } from "../../support/inWords";
import { sampleLineup } from "../../support/lineups";
import { type MadeExport, madeExport } from "./exports";

const lineup = sampleLineup();
const COUNT = 48;
const corpus = Array.from({ length: COUNT }, (_, start) => madeExport(lineup, start));

/** How many readings of an export came to stand on their own row with their own value, and on another. */
function score({ name, bytes, truths, open }: MadeExport) {
  const decoded = decode(bytes);
  if (!decoded.ok) throw new Error(`${name} ${decoded.say(english)}`);
  const read = readExport(decoded.value.text, { name });
  if (!read.ok) throw new Error(read.say(english));
  const tables: { kind: RecordKind; rows: Row[] }[] = KINDS.map((kind) => ({
    kind,
    rows: rowsOf(kind, lineup),
  }));
  const placement = placeReadings(read.value, tables, {
    replace: false,
    instruments: lineup.instruments,
    panels: lineup.panels,
    wave: lineup.withstand.wave,
  });
  const placed = new Map<string, unknown>(
    placement.placed
      .filter(({ table, column }) =>
        table.kind.columns.some(({ id, need }) => id === column && need === "reading"),
      )
      .map(({ table, row, value }) => [
        `${table.kind.id} ${rowKey(table.rows[row] ?? {}, keyIds(table.kind))}`,
        value,
      ]),
  );
  const wanted = new Map<string, number | string>(
    truths.map(({ kind, key, value }) => [`${kind} ${key}`, value]),
  );
  const near = (one: unknown, other: unknown) =>
    typeof one === "number" && typeof other === "number"
      ? Math.abs(one - other) <= 1e-9 * Math.abs(other)
      : one === other;
  const right = [...wanted].filter(([key, value]) => near(placed.get(key), value)).length;
  const wrong = [...placed].filter(([key, value]) => !near(value, wanted.get(key)));
  const asked = new Set(placement.unplaced.map(({ source }) => source.line));
  return {
    right,
    wanted: wanted.size,
    wrong,
    silent: open.filter((line) => !asked.has(line)),
    reasons: placement.unplaced.filter(({ source }) => !open.includes(source.line)),
  };
}

const scores = corpus.map((made) => ({ made, ...score(made) }));
const sum = (of: (one: (typeof scores)[number]) => number) =>
  scores.reduce((total, one) => total + of(one), 0);

/** The same tests as sheets that somebody keeps: cells in place of text, plain numbers as numbers in half of them. */
const sheets = corpus
  .filter((_, start) => start % 4 < 2)
  .map((made, at) => {
    const decoded = decode(made.bytes);
    if (!decoded.ok) throw new Error(decoded.say(english));
    const rows = [...delimited(decoded.value.text, made.ways[3] ?? ",")].map(({ cells }) =>
      cells.map(
        (cell): CellValue =>
          cell === "" ? null : at % 2 === 0 && /^-?\d+(?:\.\d+)?$/.test(cell) ? Number(cell) : cell,
      ),
    );
    const snapshot: Snapshot = {
      lineup,
      sheets: [
        {
          name: "Own",
          tables: [],
          cells: {
            rowCount: rows.length,
            columnCount: Math.max(...rows.map(({ length }) => length)),
            cell: (row, column) => rows[row]?.[column] ?? null,
            formula: () => undefined,
          },
        },
      ],
    };
    const maps = guessMaps(snapshot, lineup).map(({ map }) => map);
    const { tables, problems } = mappedTables(snapshot, lineup, maps);
    const found = new Map<string, number>(
      tables.flatMap(({ kind, rows }) =>
        rows.flatMap((row) => {
          const value = row[kind.id === "withstand" ? "applied" : "reading"];
          return typeof value === "number"
            ? [[`${kind.id} ${rowKey(row, keyIds(kind))}`, value] as const]
            : [];
        }),
      ),
    );
    const wanted = new Map<string, number | string>(
      made.truths.map(({ kind, key, value }) => [`${kind} ${key}`, value]),
    );
    const near = (one: unknown, other: unknown) =>
      Math.abs(Number(one) - Number(other)) <= 1e-9 * Math.abs(Number(other));
    return {
      made,
      wanted: wanted.size,
      right: [...wanted].filter(([key, value]) => near(found.get(key), value)).length,
      wrong: [...found].filter(([key, value]) => !near(value, wanted.get(key))),
      problem: problems[0]?.message,
    };
  });

describe("the same as sheets of somebody's own", () => {
  test("no reading is another record's", () => {
    expect(sheets.flatMap(({ made, wrong }) => wrong.map((one) => [made.name, ...one]))).toEqual(
      [],
    );
  });
  test("at least 98 % is read without asking", () => {
    const right = sheets.reduce((total, one) => total + one.right, 0);
    const wanted = sheets.reduce((total, one) => total + one.wanted, 0);
    process.stdout.write(
      `${sheets.length} sheets of somebody's own: ${right} of ${wanted} readings found (${((100 * right) / wanted).toFixed(2)} %)\n`,
    );
    expect(
      right / wanted,
      JSON.stringify(
        sheets
          .filter(({ right, wanted }) => right < wanted)
          .map(({ made, right, wanted, problem }) => [
            made.name,
            made.ways.join(" "),
            right,
            wanted,
            problem,
          ]),
        null,
        1,
      ),
    ).toBeGreaterThanOrEqual(0.98);
  });
});

describe("invented exports, varied in every way", () => {
  test("every way of writing is among them", () => {
    const ways = new Set(corpus.flatMap(({ ways }) => ways));
    for (const way of [
      "long",
      "wide",
      "utf-8",
      "utf-8 mark",
      "utf-16le",
      "utf-16be",
      "windows-1252",
      ",",
      ";",
      "\t",
      "|",
      "comma",
      "point",
      "en",
      "de",
      "fr",
      "es",
      "L",
      "R",
      "A",
      "U",
      "iso",
      "points",
      "named",
      "two digits",
      "serial",
      "slash",
      "title",
      "row",
      "cell",
      "facts",
      "remarks",
    ])
      expect(ways).toContain(way);
  });

  test("nothing stands on a wrong row: precision 100 %", () => {
    expect(scores.flatMap(({ made, wrong }) => wrong.map((one) => [made.name, ...one]))).toEqual(
      [],
    );
  });

  test("at least 98 % is placed without asking", () => {
    const [right, wanted] = [sum(({ right }) => right), sum(({ wanted }) => wanted)];
    const share = right / wanted;
    process.stdout.write(
      `corpus of ${COUNT} exports: ${right} of ${wanted} readings placed without asking (${(100 * share).toFixed(2)} %), ${sum(({ wrong }) => wrong.length)} on a wrong row\n`,
    );
    expect(
      share,
      JSON.stringify(
        scores
          .filter(({ right, wanted }) => right < wanted)
          .map(({ made, right, wanted, reasons }) => [
            made.name,
            made.ways.join(" "),
            right,
            wanted,
            reasons[0]?.reason,
          ]),
        null,
        1,
      ),
    ).toBeGreaterThanOrEqual(0.98);
  });

  test("everything else is asked or refused by name", () => {
    expect(scores.flatMap(({ made, silent }) => silent.map((line) => [made.name, line]))).toEqual(
      [],
    );
    expect(sum(({ made }) => made.open.length)).toBeGreaterThan(20);
  });
});
