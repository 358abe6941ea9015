import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Placement } from "../../../src/intake/place/placement";
import { type PlaceOptions, placeReadings } from "../../../src/intake/place/placeReadings";
import type { ExportOptions } from "../../../src/intake/table/exportOptions";
import { readExport } from "../../../src/intake/table/readExport";
import type { CellValue, RecordKind, Row } from "../../../src/records/kind";
import { KINDS } from "../../../src/records/kinds";
import { rowsOf } from "../../../src/records/rowsOf";
import { english, inWords } from "../../support/inWords";
import { sampleLineup } from "../../support/lineups";

const lineup = sampleLineup();

interface Table {
  readonly kind: RecordKind;
  readonly rows: Row[];
}

/** The record tables of the invented lineup, blank. */
const blank = (): Table[] => KINDS.map((kind) => ({ kind, rows: rowsOf(kind, lineup) }));

const place = (
  text: string,
  tables: readonly Table[] = blank(),
  options: Partial<PlaceOptions & ExportOptions> = {},
) => {
  const { replace = false, name = "readings.csv", ...others } = options;
  const read = readExport(text, { name, ...others });
  if (!read.ok) throw new Error(read.say(english));
  return placeReadings(read.value, tables, { replace, instruments: lineup.instruments, ...others });
};

/** The tables with what was placed written into them. */
const write = (tables: readonly Table[], { placed }: Placement<Table>): Table[] =>
  tables.map((table) => ({
    kind: table.kind,
    rows: table.rows.map((row, index) => ({
      ...row,
      ...Object.fromEntries(
        placed
          .filter((cell) => cell.table.kind === table.kind && cell.row === index)
          .map(({ column, value }) => [column, value]),
      ),
    })),
  }));

/** What was placed, by column, of the only row that was. */
const cells = ({ placed }: Placement<Table>): Record<string, CellValue> =>
  Object.fromEntries(placed.map(({ column, value }) => [column, value]));

const keys = ({ placed }: Placement<Table>) =>
  placed
    .filter(({ column }) => ["reading", "applied", "l1"].includes(column))
    .map(({ table, row }) => {
      const { object, part, combination, pole, phase, stage } = table.rows[row] ?? {};
      return [table.kind.id, object, part, combination ?? pole ?? phase, stage].join(" ").trim();
    });

const reasons = ({ unplaced }: Placement<Table>) =>
  unplaced.map(({ source, reason }) => `${source.line}: ${reason(english)}`);

describe("a line finds its row", () => {
  test.each([
    ["Panel,Combination,Stage,R (GΩ)\nh01,L2-E,before,5.5", "insulation =H01 Circuit L2-E before"],
    ["Panel,Part,R (MΩ)\n=H01,spring charging,250", "control =H01 Spring charging"],
    ["Panel,Part,Drop (V)\n=H01,door,0.1", "earthing =H01 Door"],
    [
      "Panel,Part,L1 (ms),L2 (ms),L3 (ms)\n=H01,Q0 opening,31,31,32",
      "timing =H01 Breaker Q0 opening",
    ],
    [
      "Panel,Combination,Stage,R (GΩ)\nPanel H-01,E/L2,pre,5.5",
      "insulation =H01 Circuit L2-E before",
    ],
    [
      "Panel,Combination,Stage,R (GΩ)\n=H01,across L2,after,5.5",
      "insulation =H01 Breaker Q0 L2 open after",
    ],
    [
      "Section,Combination,Stage,R (GΩ)\nBus A,Y-B,after,5.5",
      "insulation Bus A Busbar L2-L3 after",
    ],
    [
      "Section,Panel,Combination,Stage,R (GΩ)\nBus A,H02,L1-E,after,5.5",
      "insulation =H02 Circuit L1-E after",
    ],
    ["Panel,Part,Pole,R (µΩ)\n=H01,CB,1,25", "contact =H01 Breaker Q0 L1"],
    ["Panel,Part,Pole,R (µΩ)\n=H01,Q0,1,25", "contact =H01 Breaker Q0 L1"],
    ["Panel,Part,Pole,R (µΩ)\n=H01,Busbar joint H01-H02,R,7.5", "contact =H01 Joint to =H02 L1"],
    ["Panel,Phase,Applied voltage (kV)\n=H01,L3,22.4", "withstand =H01 Circuit L3"],
    ["Panel,Phase,Applied voltage (kV)\n=H01,L3-E,22.4", "withstand =H01 Circuit L3"],
    ["Panel,Phase,Reading\n=H01,L3,22.4 kV", "withstand =H01 Circuit L3"],
    ["Test,Panel,Phase,Reading\nHi-pot,=H01,L3,22.4 kV", "withstand =H01 Circuit L3"],
    [
      "Stage,before\nPanel,=H01\n\nCombination,R (GΩ),Remarks\nL1-E,5.5,",
      "insulation =H01 Circuit L1-E before",
    ],
  ])("%j", (text, row) => {
    const placement = place(text);
    expect(reasons(placement)).toEqual([]);
    expect(keys(placement)).toEqual([row]);
  });
});

describe("what is placed", () => {
  const HEAD =
    "Panel;Combination;Stage;R 1 min [GΩ];Test voltage;Insulation temperature;Date;Serial no";

  test("exact readings become numbers in the column's unit, bounds become canonical text", () => {
    const line = (reading: string) =>
      `${HEAD}\n=H01;L1-E;before;${reading};5 kV;21,4 °C;03.11.2026;inv-0417`;
    expect(cells(place(line("5,2")))).toEqual({
      reading: 5200,
      testVoltage: 5000,
      temperature: 21.4,
      date: 46329,
      instrument: "IR-1",
      origin: "readings.csv line 2",
    });
    expect(cells(place(line("OL (> 2000)"))).reading).toBe("> 2 TΩ");
    expect(cells(place(line("≥ 2 TOhm"))).reading).toBe("> 2 TΩ");
    expect(cells(place(line("750 MOhm"))).reading).toBe(750);
  });

  test("the temperature of the tested part comes before that of the air, which stands in alone", () => {
    const both =
      "Panel,Part,Pole,R (µΩ),Ambient (°C),Conductor temperature (°C)\n=H01,Q0,1,25,18,21";
    expect(cells(place(both)).temperature).toBe(21);
    expect(cells(place(both.replace(/21$/, ""))).temperature).toBe(18);
  });

  test("nothing is written into key, limit or computed columns", () => {
    const roles = new Map(
      KINDS.flatMap((kind) => kind.columns.map((c) => [`${kind.id}.${c.id}`, c.role])),
    );
    const text = "Panel,Part,Pole,R (µΩ),Maximum µΩ,R at 20 °C µΩ,Result\n=H01,Q0,1,25,1,1,Pass";
    for (const { table, column } of place(text).placed)
      expect(["entry", "note"]).toContain(roles.get(`${table.kind.id}.${column}`));
  });
});

describe("what is not placed, and why", () => {
  const insulation = (line: string) => `Panel,Combination,Stage,R (MΩ),Temp (°C)\n${line}`;
  const contact = (line: string) => `Panel,Part,Pole,R (µΩ),Temp (°C)\n${line}`;
  test.each([
    [
      "Panel,Drop (V)\n=H04,0.1",
      /^2: names no part of =H04; add a column "Part" with Enclosure, Door\.$/,
    ],
    [
      "Panel,Part,Pole,Drop (V)\n=H04,door,L1,0.1",
      /^2: =H04 has no row by combination, phase or pole for such a reading\.$/,
    ],
    [
      insulation("=H13,L1-E,before,5000,20"),
      /^2: panel or section "=H13" has no row\. .*Insulation has Bus A, Bus B, =H01, =H02, .*=H10\.$/,
    ],
    [insulation(",L1-E,before,5000,20"), /^2: names no panel or section; add a column "Panel"\.$/],
    [
      insulation("=H01,L1-L2,before,5000,20"),
      /^2: Unknown combination, phase or pole "L1-L2" for =H01; use one of .*L1-E, L2-E, L3-E, L1 open/,
    ],
    [insulation("=H01,N-E,before,5000,20"), /^2: "N-E" is not a phase, pole or combination/],
    [
      insulation("=H01,L1-E,,5000,20"),
      /^2: names no stage; add a column "Stage" with before, after\.$/,
    ],
    [
      insulation("=H01,L1-E,during,5000,20"),
      /^2: stage "during" is neither before nor after the withstand test; use "before" or "after"\.$/,
    ],
    [insulation("=H01,L1-E,before,,20"), /^2: has no reading: blank under "R \(MΩ\)"\.$/],
    [
      insulation("=H01,L1-E,before,OL,20"),
      /^2: "OL" is over range but does not say of which range/,
    ],
    [
      insulation("=H01,L1-E,before,-5,20"),
      /^2: "-5" is negative; R 1 min MΩ takes zero or more\.$/,
    ],
    [insulation("=H01,L1-E,before,5 mohm,20"), /^2: "mohm" could be milliohm or megohm/],
    [
      insulation("=H01,L1-E,before,5000,20,,7"),
      /^2: has 7 cells under 5 titles; where a comma is decimal/,
    ],
    [
      insulation("=H01,L1-E,before,5000,500"),
      /^2: "500" is 500 °C; Temperature °C takes -40 to 120 °C\. \(Temperature °C only; the rest of the line stands\)$/,
    ],
    [
      insulation("=H01,L1-E,before,5000,> 20"),
      /"> 20" is only a bound; Temperature °C needs an exact value/,
    ],
    [
      contact("=H01,,1,25,20"),
      /^2: fits 2 rows: =H01 · Breaker Q0 · L1, =H01 · Joint to =H02 · L1; say which in a column "Part"/,
    ],
    [
      contact("=H01,Arrester,1,25,20"),
      /^2: Unknown part "Arrester" of =H01; use one of Breaker Q0, Joint to =H02\.$/,
    ],
    [
      "Test,Panel,Pole,R (µΩ)\nNoise survey,=H01,1,25",
      /^2: Unknown test "Noise survey"; use the name of a record table here: .*Contacts, .*Insulation, Insulation over time, Withstand.*\.$/,
    ],
    [
      "Test,Panel,Pole,Reading\nWithstand,=H01,1,25 µΩ",
      /^2: "25 µΩ" under "Reading" is of another quantity than Applied kV\.$/,
    ],
    [
      "Panel,Pole,Temp (°C)\n=H01,1,25",
      /^2: there is no column with a reading; give one a title that says what was measured, with its unit\.$/,
    ],
    [
      "Panel,Part,Pole,R\n=H01,Q0,1,25",
      /^2: "25" has no unit for R µΩ; write it in the title, such as "R \(µΩ\)", or in the cell\.$/,
    ],
    [
      "Panel;Part;Pole;R (µΩ)\n=H01;Q0;1;31,250",
      /^2: "31,250" could be 31\.25 or 31250; .* \(The file: decimal mark unknown, because "31,250" on line 2/,
    ],
    [
      "Panel,Phase,Reading,Discharge\n=H01,L1,22.4 kV,perhaps",
      /^2: Unknown word "perhaps"; use one of "No", "Yes"\. \(Discharge only/,
    ],
  ])("%j", (text, reason) => {
    const [first = ""] = reasons(place(text));
    expect(first).toMatch(reason);
  });

  test("a DC voltage is not taken for an AC withstand test", () => {
    const text = "Panel,Phase,Applied voltage (kV DC)\n=H01,L1,22.4";
    expect(reasons(place(text, blank(), { wave: "AC" }))).toEqual([
      '2: "Applied voltage (kV DC)" is of DC; the withstand test of this lineup is AC.',
    ]);
    expect(place(text, blank(), { wave: "DC" }).placed).not.toEqual([]);
  });
});

describe("two lines for one row", () => {
  const HEAD = "Panel,Part,Pole,R (µΩ),Date,Time";
  test("the later is taken, and that is said", () => {
    const placement = place(
      `${HEAD}\n=H01,Q0,1,60,2026-11-02,09:00\n=H01,Q0,1,25,2026-11-02,11:00`,
    );
    expect(cells(placement)).toMatchObject({ reading: 25, origin: "readings.csv line 3 at 11:00" });
    expect(reasons(placement)).toEqual([
      "2: line 3 gives other values for =H01 · Breaker Q0 · L1 and is later; line 3 is taken.",
    ]);
  });
  test.each(["2026-11-02,", ",", "2026-11-02,09:00"])("none is taken with %j on both", (when) => {
    const placement = place(`${HEAD}\n=H01,Q0,1,60,${when}\n=H01,Q0,1,25,${when}`);
    expect(placement.placed).toEqual([]);
    expect(reasons(placement)).toHaveLength(2);
    expect(reasons(placement)[0]).toMatch(
      /^2: lines 2 and 3 give different values for =H01 · Breaker Q0 · L1; none of them is taken/,
    );
  });
  test("lines that say the same, or add to each other, are taken together", () => {
    const placement = place(
      `${HEAD},Test current (A)\n=H01,Q0,1,25,2026-11-02,,\n=H01,Q0,1,25,,,200`,
    );
    expect(cells(placement)).toEqual({
      reading: 25,
      date: 46328,
      testCurrent: 200,
      origin: "readings.csv line 2, 3",
    });
    expect(reasons(placement)).toEqual([]);
  });
});

describe("what the workbook holds already", () => {
  const text = "Panel,Part,Pole,R (µΩ),Temp (°C)\n=H01,Q0,1,25,20";
  const held = (reading: CellValue) => {
    const tables = blank();
    const contact = tables.find(({ kind }) => kind.id === "contact");
    if (contact) contact.rows[0] = { ...contact.rows[0], reading, origin: "typed" };
    return tables;
  };

  test("another reading is not written over, and its line is held back as a whole", () => {
    const { placed, conflicts, same } = place(text, held(31));
    expect(placed).toEqual([]);
    expect(same).toEqual([]);
    expect(conflicts).toMatchObject([
      { row: 0, column: "reading", old: 31, value: 25, source: { file: "readings.csv", line: 2 } },
    ]);
  });

  test("unless replacing is asked for; the origin is then the export's", () => {
    const placement = place(text, held(31), { replace: true });
    expect(placement.conflicts).toEqual([]);
    expect(cells(placement)).toEqual({
      reading: 25,
      temperature: 20,
      origin: "readings.csv line 2",
    });
  });

  test("the same reading, written otherwise, is the same", () => {
    const placement = place(text, held("0.025 mΩ"));
    expect(placement.conflicts).toEqual([]);
    expect(placement.same).toMatchObject([{ column: "reading", old: "0.025 mΩ", value: 25 }]);
    expect(cells(placement)).toEqual({ temperature: 20, origin: "typed; readings.csv line 2" });
  });
});

describe("history", () => {
  const HEAD = "Panel,Part,Pole,R (µΩ),Date,Time";
  const kept = ({ kept }: Placement<Table>) =>
    kept.map(({ row, column, value, when, source }) => [row, column, value, when, source]);
  test("the earlier of two lines is kept", () => {
    const placement = place(
      `${HEAD}\n=H01,Q0,1,60,2026-11-02,06:00\n=H01,Q0,1,25,2026-11-02,12:00`,
    );
    expect(kept(placement)).toEqual([[0, "reading", 60, 46328.25, "readings.csv line 2"]]);
    expect(placement.placed[0]?.source).toEqual({ file: "readings.csv", line: 3, when: 46328.5 });
  });

  const held = (date: CellValue) => {
    const tables = blank();
    const contact = tables.find(({ kind }) => kind.id === "contact");
    if (contact)
      contact.rows[0] = { ...contact.rows[0], reading: 31, date, origin: "old.csv line 9" };
    return tables;
  };
  const text = `${HEAD}\n=H01,Q0,1,25,2026-11-02,`;
  test("what is replaced is kept, with its date and origin", () => {
    const placement = place(text, held(46320), { replace: true });
    expect(kept(placement)).toEqual([
      [0, "reading", 31, 46320, "old.csv line 9"],
      [0, "date", 46320, 46320, "old.csv line 9"],
    ]);
    expect(cells(placement)).toMatchObject({ reading: 25, date: 46328 });
  });
  test("an earlier reading is not written over a later one", () => {
    const placement = place(text, held(46330), { replace: true });
    expect(placement.placed).toEqual([]);
    expect(kept(placement)[0]).toEqual([0, "reading", 25, 46328, "readings.csv line 2"]);
    expect(reasons(placement)).toEqual([
      "2: is of an earlier day than what stands there, and is not written over it; it goes to the history.",
    ]);
  });
  test.each([
    [46320, "earlier"],
    [46330, "later"],
    [46328, "open"],
    [null, "open"],
  ])("where %j stands, that is said of the conflict", (date, stands) => {
    expect(place(text, held(date)).conflicts[0]).toMatchObject({ column: "reading", stands });
  });
});

describe("suggestions", () => {
  const asked = ({ suggested }: Placement<Table>) =>
    suggested.map(({ field, written, candidates, lines }) => [
      field,
      written,
      candidates[0]?.name,
      candidates[0]?.score,
      lines,
    ]);
  test("a name that no row has is asked with the nearest, and never placed", () => {
    const text = "Panel,Part,Pole,R (µΩ)\n=H1,Q0,1,25\nH1,Q0,2,26";
    const placement = place(text.replaceAll("=H1", "H1"));
    expect(placement.placed).toEqual([]);
    expect(asked(placement)).toEqual([["object", "H1", "=H01", 0.95, [2, 3]]]);
    const confirmed = place(text, blank(), { means: { object: { H1: "=H01" } } });
    expect(keys(confirmed)).toEqual(["contact =H01 Breaker Q0 L1", "contact =H01 Breaker Q0 L2"]);
  });
  test("so is a part", () => {
    const text = "Panel,Part,Pole,R (µΩ)\n=H01,Braker,1,25";
    expect(asked(place(text))).toEqual([["part", "Braker", "Breaker Q0", 0.67, [2]]]);
    expect(keys(place(text, blank(), { means: { part: { braker: "Breaker Q0" } } }))).toEqual([
      "contact =H01 Breaker Q0 L1",
    ]);
  });
  test("a circuit's name is the lineup's to tell, unless two panels have it", () => {
    const text = "Circuit,Part,Pole,R (µΩ)\nPump 1,Q0,1,25";
    const panels = [{ designation: "=H02", name: "Pump 1" }];
    expect(keys(place(text, blank(), { panels }))).toEqual(["contact =H02 Breaker Q0 L1"]);
    expect(
      place(text, blank(), { panels: [...panels, { designation: "=H03", name: "pump 1" }] }).placed,
    ).toEqual([]);
  });
  test("two panels whose names differ in signs alone are told apart by these, or asked", () => {
    const tables = blank().map(({ kind, rows }) => ({
      kind,
      rows: rows.map((row) => (row.object === "=H02" ? { ...row, object: "-H01" } : row)),
    }));
    const line = (panel: string) => place(`Panel,Part,Pole,R (µΩ)\n${panel},Q0,1,25`, tables);
    expect(keys(line("-H01"))).toEqual(["contact -H01 Breaker Q0 L1"]);
    expect(reasons(line("H01"))).toEqual([
      '2: panel or section "H01" could be =H01, -H01; write it as it stands there.',
    ]);
  });
});

describe("hostile text", () => {
  test("a formula never gets into a cell", () => {
    const formula = "=cmd|' /C calc'!A0";
    const placement = place(
      `Panel,Part,Pole,R (µΩ),Tested by,Instrument,Remarks\n=H01,Q0,1,25,${formula},+1+1,＝HYPERLINK("x")`,
      blank(),
      { name: "=evil.csv" },
    );
    expect(cells(placement)).toEqual({ reading: 25, origin: "evil.csv line 2" });
    expect(reasons(placement)).toHaveLength(3);
    expect(reasons(placement)[0]).toMatch(/begins like a formula and is not taken over/);
  });

  test("control characters become spaces, and long text is refused", () => {
    const placement = place(
      `Panel,Part,Pole,R (µΩ),Tested by,Remarks\n=H01,Q0,1,25,A\u0007\u202eB,${"x".repeat(1_000_000)}`,
    );
    expect(cells(placement)).toMatchObject({ by: "A B" });
    expect(reasons(placement)[0]).toMatch(/has 1000000 characters; at most 250 are taken over/);
  });

  test("no cell that is placed is a formula, has a control character or is no finite number", () => {
    const hostile = fc.oneof(
      fc.string({ unit: "binary", maxLength: 12 }),
      fc.constantFrom(
        "=1+1",
        "@x",
        "-5",
        "+5",
        "|x",
        "\t=1",
        " =1",
        "25",
        "> 5 µΩ",
        "1e308",
        "\u0000",
        "\u0001",
      ),
    );
    const quotedCell = (text: string) =>
      `"${text.replaceAll('"', '""').replaceAll("\0", "").replaceAll("\ufffd", "")}"`;
    // A line whose reading cannot be taken is not placed at all, so that most have a sound one.
    const reading = fc.oneof(
      { weight: 4, arbitrary: fc.constantFrom("25", "> 5 µΩ", "0.03 mΩ") },
      { weight: 1, arbitrary: hostile },
    );
    let runs = 0;
    let withText = 0;
    fc.assert(
      fc.property(fc.tuple(reading, hostile, hostile, hostile, hostile), (texts) => {
        const { placed } = place(
          `Panel,Part,Pole,R (µΩ),Date,Tested by,Remarks,Discharge\n=H01,Q0,1,${texts.map(quotedCell).join(",")}`,
        );
        runs += 1;
        if (placed.some(({ column }) => column === "by" || column === "remarks")) withText += 1;
        for (const { value } of placed)
          if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
          else expect(value).toMatch(/^[^=+\-@|\p{Cc}][^\p{Cc}]*$/u);
      }),
      { numRuns: 200 },
    );
    expect(withText).toBeGreaterThan(runs / 3);
  });
});

test("placing twice: the second time everything is there already", () => {
  const contactRows = KINDS.find(({ id }) => id === "contact")?.rows(lineup) ?? [];
  const reading = fc.oneof(
    fc.integer({ min: 1, max: 9999 }).map((n) => `${n / 10}`),
    fc.integer({ min: 1, max: 9999 }).map((n) => `> ${n} µΩ`),
    fc.integer({ min: 1, max: 9999 }).map((n) => `0.0${n}5 mΩ`),
    fc.constant("OL"),
    fc.constant(""),
  );
  const line = fc.tuple(
    fc.nat({ max: contactRows.length - 1 }),
    reading,
    fc.integer({ min: 0, max: 40 }),
  );
  fc.assert(
    fc.property(fc.array(line, { minLength: 1, maxLength: 30 }), (lines) => {
      const text = [
        "Panel,Part,Pole,R (µΩ),Temp (°C),Date,Time",
        ...lines.map(([index, written, degrees], at) => {
          const { object, part, pole } = contactRows[index] ?? {};
          return [
            object,
            part,
            pole,
            written,
            degrees,
            "2026-11-02",
            `10:${String(at).padStart(2, "0")}`,
          ].join(",");
        }),
      ].join("\n");
      const tables = blank();
      const first = place(text, tables);
      // Of the lines of a row the last with a reading counts.
      const last = new Map(lines.flatMap(([row, text]) => (text === "" ? [] : [[row, text]])));
      const measured = [...last].flatMap(([row, text]) => (text === "OL" ? [] : [row]));
      const rowsPlaced = first.placed.flatMap(({ column, row }) =>
        column === "reading" ? [row] : [],
      );
      expect(rowsPlaced).toEqual(expect.arrayContaining(measured));
      const second = place(text, write(tables, first));
      expect(first.conflicts).toEqual([]);
      expect(second.placed).toEqual([]);
      expect(second.conflicts).toEqual([]);
      expect(inWords(second.unplaced)).toEqual(inWords(first.unplaced));
      const values = ({
        column,
        value,
        row,
      }: {
        column: string;
        value: CellValue;
        row: number;
      }) => [row, column, value];
      expect(second.same.map(values)).toEqual(
        first.placed.filter(({ column }) => column !== "origin").map(values),
      );
    }),
    { numRuns: 100 },
  );
});

test("lines said again, numbered or at other times, come to the same as when each is read by itself", () => {
  const line = fc.record({
    pole: fc.constantFrom("L1", "L2"),
    reading: fc.constantFrom("31", "33", "0,035 mΩ", "abc"),
    date: fc.constantFrom("2026-11-02", "2026-11-03", ""),
    time: fc.constantFrom("08:00", "09:30:15", "17:00", "", "noon"),
    // Text in quotation marks is read by the library, line by line, and never as said again.
    numbered: fc.boolean(),
  });
  fc.assert(
    fc.property(fc.array(line, { minLength: 1, maxLength: 14 }), (lines) => {
      const text = (pole: (name: string) => string) =>
        [
          "No.;Panel;Part;Pole;Time;R (µΩ);Date",
          ...lines.map(
            (one, at) =>
              `${one.numbered ? at + 1 : ""};=H01;Q0;${pole(one.pole)};${one.time};${one.reading};${one.date}`,
          ),
        ].join("\n");
      const [again, apart] = [text((name) => name), text((name) => `"${name}"`)].map((one) => {
        const { placed, kept, unplaced } = place(one);
        return {
          placed: placed.map(({ row, column, value, source }) => [row, column, value, source]),
          kept: kept.map(({ row, column, value, when, source }) => [
            row,
            column,
            value,
            when,
            source,
          ]),
          unplaced,
        };
      });
      expect(inWords(again)).toEqual(inWords(apart));
    }),
    { numRuns: 100 },
  );
});
