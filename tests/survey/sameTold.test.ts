import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/check/findings/finding";
import { checked, drawSheet } from "./support";

/**
 * What is told of a table does not hang on how it is laid out: columns in another order, other titles for the same,
 * notes and blank lines, one table or two. Every table here is made up by the generator.
 */

type Row = Readonly<Record<string, string>>;
interface Table {
  readonly heading: string;
  readonly columns: readonly string[];
  readonly rows: readonly Row[];
}

/** Titles that mean the same, by column; the first is the usual one. Common practice, no source. */
const SYNONYMS: Readonly<Record<string, readonly string[]>> = {
  panel: ["Panel", "Cubicle", "Switchgear", "Feld", "Celda"],
  connection: ["Connection", "Phase", "Measured between", "Conexión"],
  insulation: ["Reading (GΩ)", "IR (GΩ)", "Insulation resistance GΩ", "Messwert [GΩ]"],
  minimum: ["Minimum (GΩ)", "Min. GΩ", "Not less than (GΩ)"],
  contact: ["Reading (µΩ)", "Resistance (µΩ)", "Measured µΩ"],
  maximum: ["Maximum (µΩ)", "Max. µΩ", "Not more than (µΩ)"],
  level: ["Applied kV", "Test voltage (kV)", "Level kV"],
  duration: ["Duration (s)", "Held (s)", "Prüfdauer (s)"],
  flashover: ["Flashover", "Breakdown?", "Disruptive discharge", "Durchschlag"],
  date: ["Date", "Test date", "Datum", "Fecha"],
  by: ["Tested by", "Technician", "Prüfer"],
  result: ["Result", "Verdict", "Assessment", "Ergebnis"],
};

/** Columns of one kind of test, and how a sound line of it reads. */
interface Kind {
  readonly heading: string;
  readonly columns: readonly string[];
  readonly line: (index: number, reading: number) => Row;
}

const common = (index: number) => ({
  panel: `W${Math.floor(index / 3) + 1}`,
  connection: `${"ABC"[index % 3]}-E`,
  date: "2031-04-02",
  by: "N. Example",
  result: "Pass",
});

const KINDS: readonly Kind[] = [
  {
    heading: "Insulation resistance",
    columns: ["panel", "connection", "insulation", "minimum", "date", "by", "result"],
    line: (index, reading) => ({
      ...common(index),
      insulation: (20 + reading / 7).toFixed(2),
      minimum: "5",
    }),
  },
  {
    heading: "Contact resistance",
    columns: ["panel", "connection", "contact", "maximum", "date", "by", "result"],
    line: (index, reading) => ({
      ...common(index),
      connection: "ABC"[index % 3] ?? "",
      contact: (25 + reading / 31).toFixed(1),
      maximum: "60",
    }),
  },
  {
    heading: "Power frequency withstand test",
    columns: ["panel", "connection", "level", "duration", "flashover", "date", "by", "result"],
    line: (index) => ({
      ...common(index),
      connection: "ABC"[index % 3] ?? "",
      level: "27",
      duration: "60",
      flashover: "no",
    }),
  },
];

/** What is put wrong into a line, by column. */
const FAULTS: readonly Row[] = [
  { insulation: "1.2", contact: "85", level: "22" },
  { insulation: "", contact: "", duration: "30" },
  { by: "" },
  { date: "2031-09-30" },
  { minimum: "0.5", maximum: "600", flashover: "yes" },
];

const table: fc.Arbitrary<Table> = fc
  .record({
    kind: fc.constantFrom(...KINDS),
    readings: fc.array(fc.nat(100), { minLength: 12, maxLength: 24 }),
    fault: fc.constantFrom(...FAULTS),
    at: fc.nat(),
  })
  .map(({ kind, readings, fault, at }) => {
    const rows = readings
      .slice(0, readings.length - (readings.length % 3))
      .map((reading, index) => kind.line(index, reading));
    const faulty = at % rows.length;
    const known = Object.entries(fault).filter(([column]) => kind.columns.includes(column));
    return {
      heading: kind.heading,
      columns: kind.columns,
      rows: rows.map((row, index) =>
        index === faulty ? { ...row, ...Object.fromEntries(known) } : row,
      ),
    };
  });

const usual = (column: string) => SYNONYMS[column]?.[0] ?? column;
const headOf = ({ columns }: Table, title = usual) => columns.map(title).join("|");
const lineOf = ({ columns }: Table, row: Row) => columns.map((column) => row[column]).join("|");
const draw = (one: Table, title = usual) => [
  one.heading,
  headOf(one, title),
  ...one.rows.map((row) => lineOf(one, row)),
];

/** What is told of a drawing, but not where: rule, kind, line and message without the title. */
const toldOf = (lines: readonly string[]): string[] =>
  checked([drawSheet("Sheet", lines)])
    .findings.map(inWords)
    .toSorted();

const inWords = ({ rule, weight, record, row, found }: Finding): string =>
  [weight, rule, record, row, found].join("; ");

const RUNS = { numRuns: 25 };

describe("what is told of a table", () => {
  it("is the fault that was put in, at a line of its panel", () => {
    fc.assert(
      fc.property(table, (one) => {
        const sound = one.rows.every(
          (row) => row.by !== "" && row.date === "2031-04-02" && row.minimum !== "0.5",
        );
        const findings = toldOf(draw(one));
        fc.pre(!sound);
        expect(findings.length).toBeGreaterThan(0);
      }),
      RUNS,
    );
  });

  it("stays the same when the columns stand in another order", () => {
    fc.assert(
      fc.property(
        table.chain((one) =>
          fc
            .shuffledSubarray([...one.columns], { minLength: one.columns.length })
            .map((columns) => ({ one, other: { ...one, columns } })),
        ),
        ({ one, other }) => {
          expect(toldOf(draw(other))).toEqual(toldOf(draw(one)));
        },
      ),
      RUNS,
    );
  });

  it("stays the same under other titles of the same meaning", () => {
    fc.assert(
      fc.property(table, fc.array(fc.nat(), { minLength: 8, maxLength: 8 }), (one, picks) => {
        const title = (column: string) => {
          const titles = SYNONYMS[column] ?? [];
          const pick = picks[one.columns.indexOf(column)] ?? 0;
          return titles[pick % titles.length] ?? column;
        };
        expect(toldOf(draw(one, title))).toEqual(toldOf(draw(one)));
      }),
      RUNS,
    );
  });

  it("stays the same with a blank line between panels, and with notes above and below", () => {
    fc.assert(
      fc.property(table, fc.array(fc.nat({ max: 7 })), (one, blanks) => {
        const [heading = "", head = "", ...lines] = draw(one);
        const parted = lines.flatMap((line, index) =>
          index > 0 && index % 3 === 0 && blanks.includes(index / 3) ? ["", line] : [line],
        );
        const noted = [
          "Invented board, for practice only",
          "",
          heading,
          head,
          ...parted,
          "",
          "",
          "",
          "Doors were closed while the panels were tested.",
        ];
        expect(toldOf(noted)).toEqual(toldOf(draw(one)));
      }),
      RUNS,
    );
  });
});

describe("a table in two, its head repeated", () => {
  const halves = (one: Table, cut: number) => {
    const [heading = "", head = "", ...lines] = draw(one);
    return [heading, head, ...lines.slice(0, cut), "", "", "", heading, head, ...lines.slice(cut)];
  };

  it("holds the same readings of the same panels, each judged alike", () => {
    fc.assert(
      fc.property(table, (one) => {
        const cut = Math.floor(one.rows.length / 6) * 3;
        const [whole, split] = [draw(one), halves(one, cut)].map((lines) =>
          checked([drawSheet("Sheet", lines)]),
        );
        const sum = (report: typeof whole) =>
          report?.blocks.reduce((total, { readings }) => total + readings, 0);
        expect(split?.blocks.length).toBe(2);
        expect(sum(split)).toBe(sum(whole));
        expect(split?.blocks.flatMap(({ panels }) => panels)).toEqual(
          whole?.blocks.flatMap(({ panels }) => panels),
        );
        expect(split?.counts).toEqual(whole?.counts);
      }),
      RUNS,
    );
  });

  it("is told the same, where each half has lines enough to show its habits", () => {
    fc.assert(
      fc.property(table, (one) => {
        const cut = Math.floor(one.rows.length / 6) * 3;
        expect(toldOf(halves(one, cut))).toEqual(toldOf(draw(one)));
      }),
      RUNS,
    );
  });
});
