import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { openBook } from "../../src/intake/openBook";
import { NO_ANSWERS, takeIn } from "../../src/intake/takeIn";
import { planFor } from "../../src/sheets/plan/plan";
import { english, inWords } from "../support/inWords";
import { sampleLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";

/**
 * Exports in words, orders and layouts that no list of titles holds, for the sample lineup.
 * What belongs where follows from the text itself.
 */

/** 24 November 2026. */
const TODAY = 46_350;
const book = openBook(memoryBook(planFor(sampleLineup())).snapshot);

const taken = (name: string, content: string) => {
  const intake = takeIn(book, [{ name, content }], NO_ANSWERS, TODAY);
  if (!intake.ok) throw new Error(intake.reason(english));
  return {
    cells: intake.cells,
    unplaced: intake.taken.flatMap(({ placement }) => placement.unplaced),
  };
};

/** What an export comes to: kind, row and column of each reading with its value, in one order. */
const placed = (name: string, content: string): string[] => {
  return taken(name, content)
    .cells.map(({ table, row, column, value }) => {
      const keys = table.kind.columns.filter(({ role }) => role === "key").map(({ id }) => id);
      const record = table.rows[row];
      return `${table.kind.id} ${keys.map((key) => record?.[key] ?? "").join(" ")} ${column}=${value}`;
    })
    .filter((line) => !line.includes(" origin="))
    .sort();
};
const readings = (name: string, content: string, columns: readonly string[]) =>
  placed(name, content).filter((line) => columns.some((column) => line.includes(` ${column}=`)));

describe("what an export is, is known by all of it together", () => {
  test("operating times under the letters of the phases are the breaker's", () => {
    const found = placed(
      "times.csv",
      "Asset;Op;A (ms);B (ms);C (ms)\n=H02;Close;61,2;61,5;61,9\n=H02;Open;38,1;38,4;38,2\n",
    );
    expect(found.filter((line) => /=(?:61|38)\.\d$/.test(line))).toHaveLength(6);
    expect(found.every((line) => line.startsWith("timing =H02"))).toBe(true);
  });

  test.each(["Control V", "Ctrl V", "Control voltage (V)", "Control V DC"])(
    "%s beside them is the voltage at the coil, and no fourth phase",
    (title) => {
      const found = placed(
        "times.csv",
        `Panel;Part;A(ms);B(ms);C(ms);${title}\n=H02;Closing;61,2;61,5;61,9;110\n=H02;Opening;38,1;38,4;38,2;109\n`,
      );
      expect(found.filter((line) => /=(?:61|38)\.\d$/.test(line))).toHaveLength(6);
      expect(found.filter((line) => line.includes(" controlV="))).toHaveLength(2);
      expect(found.every((line) => line.startsWith("timing =H02"))).toBe(true);
    },
  );

  test("where nothing says whether the breaker closed or opened, it is asked", () => {
    const { cells, unplaced } = taken(
      "times.csv",
      "Panel;Part;A(ms);B(ms);C(ms);Control V\n=H02;Breaker;61,2;61,5;61,9;110\n",
    );
    expect(cells).toEqual([]);
    expect(unplaced.length).toBeGreaterThan(0);
  });

  test("numbers of tests, and a title that no list holds, do not keep a pole resistance from its row", () => {
    const found = readings(
      "poles.csv",
      "Test #,Location,Apparatus,Ph,Ductor µΩ @100A\n1,=H02,Breaker,R,31.4\n2,=H02,Breaker,Y,32.9\n3,=H02,Breaker,B,30.8\n",
      ["reading"],
    );
    expect(found).toEqual([
      "contact =H02 Breaker Q0 L1 reading=31.4",
      "contact =H02 Breaker Q0 L2 reading=32.9",
      "contact =H02 Breaker Q0 L3 reading=30.8",
    ]);
  });

  test("a temperature beside phases is no fourth phase", () => {
    const content =
      "Panel,Part,Stage,A-G MΩ,B-G MΩ,C-G MΩ,Temp F\n=H02,Circuit,before,5200,6100,5900,68\n";
    const values = (column: string) =>
      taken("ir.csv", content).cells.flatMap((cell) => (cell.column === column ? cell.value : []));
    expect(values("reading")).toEqual([5200, 6100, 5900]);
    // 68 °F is 20 °C.
    expect(values("temperature")).toEqual([20, 20, 20]);
  });

  test("two columns that could be the same reading are asked about, and say how to settle it", () => {
    const content =
      "Panel;Breaker;Phase;R (µΩ);R2 (µΩ)\n=H02;Q0;L1;31.4;31.9\n=H02;Q0;L2;31.6;31.8\n";
    const { cells, unplaced } = taken("r.csv", content);
    expect(cells).toEqual([]);
    expect(inWords(unplaced[0]?.reason)).toContain(
      '"R (µΩ)" and "R2 (µΩ)" could each be R µΩ of Contacts',
    );
    const settled = takeIn(
      book,
      [{ name: "r.csv", content }],
      { ...NO_ANSWERS, columns: { "R2 (µΩ)": "reading" } },
      TODAY,
    );
    expect(settled.ok && settled.cells.map(({ value }) => value)).toEqual(
      expect.arrayContaining([31.9, 31.8]),
    );
  });

  test.each(["Test #", "Ensayo", "No.", "Lfd. Nr."])("%s with numbers is no test", (title) => {
    const found = placed(
      "r.csv",
      `${title};Celda;Interruptor;Fase;R (µΩ)\n1;=H02;Q0;L1;31.4\n2;=H02;Q0;L2;31.6\n`,
    );
    expect(found.filter((line) => !line.startsWith("contact =H02 Breaker Q0 L"))).toEqual([]);
    expect(found).toHaveLength(2);
  });

  test("part and stage in German, and one reading a line, are insulation and not its curve", () => {
    const found = readings(
      "iso.csv",
      "Feld;Teil;Zeitpunkt;Verbindung;MΩ;Prüfspannung V;Temperatur °C\n=H02;Abgang;vorher;L1-E;5200;5000;20\n",
      ["reading"],
    );
    expect(found).toEqual(["insulation =H02 Circuit L1-E before reading=5200"]);
  });

  test.each([
    ["correct", "As marked"],
    ["OK", "As marked"],
    ["reversed", "Reversed"],
    ["invertida", "Reversed"],
  ])("a polarity alone, %s, is placed", (written, meant) => {
    const found = placed("p.csv", `Panel;Core;Phase;Polarity\n=H02;1S1-1S2;L1;${written}\n`);
    expect(found).toEqual([`currentTransformer =H02 1S1-1S2 L1 polarity=${meant}`]);
  });

  test("a word of the file's own for a polarity can be said", () => {
    const content = "Panel;Core;Phase;Polarity\n=H02;1S1-1S2;L1;subtractive\n";
    const said = { ...NO_ANSWERS, means: { polarity: { subtractive: "As marked" } } };
    const intake = takeIn(book, [{ name: "p.csv", content }], said, TODAY);
    expect(intake.ok && intake.cells.map(({ value }) => value)).toContain("As marked");
  });

  // 1 kgf = 9.80665 N exactly (standard gravity, 3rd CGPM 1901); 1 lbf·ft = 1.3558179483314 N·m (NIST SP 811, B.8).
  test.each([
    ["Torque kgf·m", "7", 68.64655],
    ["Torque (daN·m)", "6,8", 68],
    ["Couple (pi-lb)", "50", 67.79089741657],
    ["Torque kgf·cm", "700", 68.64655],
  ])("%s is brought to N·m", (title, text, newtonMetres) => {
    const { cells } = taken("t.csv", `Panel;Joint;${title}\n=H02;Busbar;${text}\n`);
    const value = cells.find(({ column }) => column === "applied")?.value;
    expect(value).toBeCloseTo(newtonMetres, 9);
  });

  test("what names no record is not placed", () => {
    const odd = { name: "odd.csv", content: "Panel,Colour,Weight\n=H02,red,12\n" };
    const intake = takeIn(book, [odd], NO_ANSWERS, TODAY);
    expect(intake.ok && intake.cells.length > 0).toBe(false);
  });
});

describe("no rearrangement changes what is placed", () => {
  const TITLES = [
    "No.",
    "Cubicle",
    "Device",
    "Pole",
    "Contact resistance [µΩ]",
    "Test current A",
    "Remarks",
  ];
  const LINES = [
    ["1", "=H02", "Breaker", "L1", "31.4", "100", "dressed"],
    ["2", "=H02", "Breaker", "L2", "32.9", "100", ""],
    ["3", "=H02", "Breaker", "L3", "30.8", "100", ""],
    ["4", "=H03", "Breaker", "L1", "29.7", "100", ""],
    ["5", "=H03", "Breaker", "L2", "33.3", "100", ""],
    ["6", "=H03", "Breaker", "L3", "30.1", "100", ""],
  ];
  const written = (rows: readonly (readonly string[])[]) =>
    rows.map((row) => row.join(";")).join("\n");
  const usual = placed("export.csv", written([TITLES, ...LINES]));

  test("columns in any order", () => {
    expect(usual.filter((line) => line.includes(" reading="))).toHaveLength(6);
    const orders = fc.shuffledSubarray([...TITLES.keys()], { minLength: TITLES.length });
    fc.assert(
      fc.property(orders, (order) => {
        const moved = [TITLES, ...LINES].map((row) => order.map((at) => row[at] ?? ""));
        expect(placed("export.csv", written(moved))).toEqual(usual);
      }),
      { numRuns: 40 },
    );
  });

  test("other words of the trade for the same titles", () => {
    const words = fc.tuple(
      fc.constantFrom("Cubicle", "Panel", "Feld", "Celda", "Cellule"),
      fc.constantFrom("Pole", "Phase", "Pol", "Polo"),
      fc.constantFrom(
        "Contact resistance [µΩ]",
        "R (µΩ)",
        "Kontaktwiderstand µΩ",
        "Resistencia µΩ",
      ),
    );
    fc.assert(
      fc.property(words, ([panel, pole, resistance]) => {
        const titles = ["No.", panel, "Device", pole, resistance, "Test current A", "Remarks"];
        expect(placed("contact.csv", written([titles, ...LINES]))).toEqual(usual);
      }),
      { numRuns: 40 },
    );
  });

  test("blank lines between the lines, and notes over them", () => {
    const gaps = fc.array(fc.integer({ min: 1, max: LINES.length }), { maxLength: 3 });
    fc.assert(
      fc.property(gaps, (at) => {
        const lines = LINES.flatMap((line, index) => (at.includes(index) ? [[""], line] : [line]));
        const notes = [["Pole resistances of the incomers, made up for a trial"], [""]];
        expect(placed("export.csv", written([...notes, TITLES, ...lines]))).toEqual(usual);
      }),
      { numRuns: 30 },
    );
  });
});

describe("what stands over and between the lines holds for them", () => {
  test("an operation as a banner, under titles said once or twice, with the day above the first", () => {
    const titles = "Panel;Pole 1 (s);Pole 2 (s);Pole 3 (s)";
    const banners = (again: string) =>
      `Timing of the breakers\nDate;2026-11-20\n\nCLOSE\n${titles}\n=H02;0,0612;0,0615;0,0619\n=H03;0,0602;0,0605;0,0609\n\nOPEN\n${again}=H02;0,0381;0,0384;0,0382\n=H03;0,0371;0,0374;0,0372\n`;
    const found = placed("times.csv", banners(`${titles}\n`));
    expect(found.filter((line) => line.includes("closing l1="))).toHaveLength(2);
    expect(found.filter((line) => /opening l1=3[78]\.1$/.test(line))).toHaveLength(2);
    expect(found.filter((line) => line.includes(" date="))).toHaveLength(4);
    expect(placed("times.csv", banners("")).map((line) => line.replace(/at .*/, ""))).toEqual(
      found,
    );
  });

  test("minutes and seconds as a clock shows them, and an outcome in words", () => {
    const found = placed(
      "withstand.csv",
      "AC withstand\nPanel;Phase;kV;min:s;mA;Outcome\n=H02;L1;28,0;1:00;2,1;held, no breakdown\n=H02;L2;28,0;1:30;2,2;no flashover\n=H02;L3;28,0;0:42;2,2;breakdown\n",
    );
    for (const [phase, seconds, word] of [
      ["L1", 60, "No"],
      ["L2", 90, "No"],
      ["L3", 42, "Yes"],
    ] as const) {
      const own = found.filter((line) => line.includes(` ${phase} `));
      expect(own.some((line) => line.endsWith(` duration=${seconds}`))).toBe(true);
      expect(own.some((line) => line.endsWith(` discharge=${word}`))).toBe(true);
    }
  });

  test("the part that a heading speaks of, where a line fits a breaker and a joint", () => {
    const lines = "Celda;Polo;Resistencia (µΩ)\n=H02;L1;31,5\n=H02;L2;32,5\n=H02;L3;30,5\n";
    const of = (heading: string) =>
      readings("mediciones.csv", `${heading}\n\n${lines}`, ["reading"]);
    const breaker = of("Resistencia de los polos del interruptor");
    expect(breaker).toHaveLength(3);
    expect(breaker.every((line) => /contact =H02 (?:Breaker|Q)/i.test(line))).toBe(true);
    expect(of("Resistencias medidas")).toHaveLength(0);
  });
});
