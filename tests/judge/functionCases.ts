import type { CellValue } from "../../src/records/kind";
import { between, pick, random, shown, spread } from "../support/random";

/** A word of an enumeration; it may be left out. */
export interface Word {
  readonly word: string | undefined;
}

/** One argument: a cell, a row of cells, or a word. */
export type Argument = CellValue | readonly CellValue[] | Word;
export type Case = readonly Argument[];

type Next = () => number;
type Make = (next: Next) => Case;

const words =
  (...list: readonly (string | undefined)[]) =>
  (next: Next): Word => ({ word: pick(next, list) });

/** Mostly inside a range, now and then on its ends or beyond them. */
const about =
  (least: number, most: number, digits = 2) =>
  (next: Next): number => {
    const beyond = between(next, 0.02, 0.2) * (most - least);
    return pick(next, [
      ...Array.from({ length: 12 }, () => shown(between(next, least, most), digits)),
      least,
      most,
      shown(least - beyond, digits),
      shown(most + beyond, digits),
    ]);
  };

/** Above zero over decades, now and then zero or below. */
const size =
  (least: number, most: number, digits = 3) =>
  (next: Next): number => {
    const number = shown(spread(next, least, most), digits);
    return pick(next, [...Array<number>(12).fill(number), 0, -number]);
  };

/** Rated voltages: tabulated ones, ones between them, ones beyond them. */
const rated = (...rows: readonly number[]) => {
  const most = Math.max(...rows);
  return (next: Next): number =>
    pick(next, [
      ...Array.from({ length: 8 }, () => pick(next, rows)),
      ...Array.from({ length: 8 }, () => shown(spread(next, 0.2, 1.3 * most), 2)),
      0,
      -12,
    ]);
};

const BASIS = words("IEC", "NETA", "NETA", undefined);
const METHOD = words("solid", "oil", "halving", "none", undefined);
const insulationTemperature = about(-10, 105, 1);
const base = (next: Next) => pick(next, [20, 40, 20, 40, shown(between(next, -15, 110), 1)]);

/** A reading in its unit: a number, or a bound in text. */
const reading = (unit: string, least: number, most: number) => {
  const number = size(least, most, 2);
  return (next: Next): CellValue => {
    const bound = shown(spread(next, least, most), 2);
    return pick<CellValue>(next, [
      number(next),
      number(next),
      number(next),
      `> ${bound} ${unit}`,
      `< ${bound} ${unit}`,
    ]);
  };
};

const severalOf = (make: (next: Next) => CellValue) => (next: Next) =>
  Array.from({ length: 6 }, () => (next() < 0.3 ? null : make(next)));

/** An excitation curve, its points unevenly spaced, over the knee or ending short of it. */
const excitation: Make = (next) => {
  const knee = between(next, 60, 900);
  const [rise, wall] = [between(next, 0.55, 0.85), between(next, 8, 20)];
  const from = pick(next, [0.08, 0.08, 0.08, 0.85]);
  const to = pick(next, [1.5, 1.5, 1.5, 0.6]);
  const steps = Array.from({ length: 12 }, () => between(next, 0.6, 1.4));
  const whole = steps.slice(1).reduce((sum, step) => sum + step, 0);
  let part = 0;
  const volts = steps.map((step, i) => {
    if (i > 0) part += step / whole;
    return shown(knee * from * (Math.max(to, from + 0.3) / from) ** part, 3);
  });
  const amps = volts.map((v) =>
    shown(0.01 * (v / knee) ** rise + 0.02 * (v / knee) ** (1 + wall), 9),
  );
  return [volts, amps, words("IEC 10/50", "IEEE 45", "IEEE 30", undefined)(next)];
};

const moist = [about(-45, 60, 1), about(0, 100, 0)] as const;
const CLASSES = ["0.1", "0.2", "0.5", "1", "0.2S", "0.5S", "3", "5", "5P", "10P"];

/** How arguments are generated for each worksheet function, and how many times. */
const MAKERS: Readonly<Record<string, readonly [count: number, make: Make]>> = {
  ABSORPTION: [100, (next) => [size(10, 1e6)(next), size(10, 1e6)(next)]],
  AIRFACTOR: [
    300,
    (next) => [
      about(-5, 45, 1)(next),
      about(78, 105, 1)(next),
      about(15, 100, 0)(next),
      size(5, 200, 1)(next),
      size(0.02, 1, 3)(next),
      words("AC", "DC", "impulse", undefined)(next),
      words("g", "switchgear", "parallel", undefined)(next),
    ],
  ],
  ALTITUDEFACTOR: [
    100,
    (next) => [about(-500, 6000, 0)(next), pick(next, [1, 1, 0.5, about(0, 1)(next)])],
  ],
  BOLTTORQUE: [
    150,
    (next) => [
      words("M8", "M10", "M12", "M14", "M16", "M20", "M24")(next),
      words("8.8", "10.9", "12.9")(next),
      about(0.05, 0.5)(next),
      about(0.1, 0.9)(next),
    ],
  ],
  BURDEN: [80, (next) => [size(0.5, 100)(next), size(0.5, 10)(next)]],
  CABLETEST: [
    150,
    (next) => [
      rated(7.2, 12, 17.5, 24, 36, 5, 8, 15, 25, 28, 35, 11, 22, 33)(next),
      BASIS(next),
      words("AC", "DC", "VLF", undefined)(next),
      words("acceptance", "maintenance", undefined)(next),
    ],
  ],
  COILLIMIT: [
    150,
    (next) => [
      pick(next, [48, 125, 250, 48, 125, 250, 24, 60, 110, 220, 0, -110]),
      words("closing", "opening")(next),
      words("least", "most")(next),
      words("DC", "AC")(next),
      BASIS(next),
    ],
  ],
  CONTACTCORRECT: [
    200,
    (next) => [
      reading("µΩ", 5, 500)(next),
      about(-50, 200, 1)(next),
      words("copper", "aluminium", undefined)(next),
      pick(next, [20, 75, about(-50, 200, 1)(next)]),
    ],
  ],
  CTLIMIT: [
    300,
    (next) => [
      words(...CLASSES)(next),
      pick(next, [1, 5, 20, 50, 100, 100, 120, shown(between(next, 0, 130), 2)]),
      words("ratio", "phase", "composite", undefined)(next),
    ],
  ],
  CURVETIME: [
    200,
    (next) => [
      words(
        "IEC standard",
        "IEC very",
        "IEC extremely",
        "IEC long-time",
        "IEEE moderately",
        "IEEE very",
        "IEEE extremely",
      )(next),
      pick(next, [
        1,
        0.9,
        20,
        21,
        ...Array.from({ length: 12 }, () => shown(spread(next, 1.02, 20), 2)),
      ]),
      size(0.05, 15, 2)(next),
    ],
  ],
  DEWMARGIN: [120, (next) => [about(-45, 105, 1)(next), moist[0](next), moist[1](next)]],
  DEWPOINT: [120, (next) => [moist[0](next), moist[1](next)]],
  EARTHRESISTANCE: [80, (next) => [size(1, 200)(next), size(0.01, 5)(next)]],
  GASPRESSURE: [
    150,
    (next) => [
      about(0.05, 1.2, 4)(next),
      about(-50, 80, 1)(next),
      pick(next, [20, 20, about(-50, 80, 1)(next)]),
      words("gauge", "absolute", undefined)(next),
      about(50, 110, 1)(next),
    ],
  ],
  IRCORRECT: [
    250,
    (next) => [reading("MΩ", 1, 2e6)(next), insulationTemperature(next), METHOD(next), base(next)],
  ],
  IRFACTOR: [200, (next) => [insulationTemperature(next), METHOD(next), base(next)]],
  IRMINIMUM: [120, (next) => [rated(0.25, 0.6, 1, 2.5, 5, 8, 15, 25, 34.5, 46)(next), BASIS(next)]],
  IRTESTVOLTAGE: [
    120,
    (next) => [rated(0.25, 0.5, 0.6, 1, 2.5, 5, 8, 15, 25, 34.5, 46, 72.5)(next), BASIS(next)],
  ],
  JUDGE: [
    200,
    (next) => [
      pick<CellValue>(next, [
        null,
        "OL",
        ...Array.from({ length: 5 }, () => shown(between(next, -120, 120), 1)),
        `> ${shown(between(next, -120, 120), 1)}`,
        `< ${shown(between(next, -120, 120), 1)}`,
      ]),
      pick<CellValue>(next, [100, 100, 50, -50, shown(between(next, -100, 100), 1)]),
      words("least", "most", "within", undefined)(next),
      pick(next, [0, 0, 0.05, 0.2, -0.1]),
    ],
  ],
  KNEEPOINT: [90, excitation],
  LIMITFACTOR: [
    100,
    (next) => [
      size(5, 40, 1)(next),
      size(0.1, 10)(next),
      size(0.1, 10)(next),
      size(0.05, 10)(next),
    ],
  ],
  MEGOHMS: [
    120,
    (next) => {
      const number = shown(spread(next, 0.5, 5000), 2);
      const unit = pick(next, ["TΩ", "GΩ", "MΩ", "kΩ", "Ω"]);
      return [
        pick<CellValue>(next, [
          number,
          number,
          `${number} ${unit}`,
          `${number} ${unit}`,
          `> ${number} ${unit}`,
          "n/a",
          "5 kV",
        ]),
        words("TΩ", "GΩ", "MΩ", "kΩ", "Ω", undefined)(next),
      ];
    },
  ],
  POLARIZATION: [100, (next) => [size(10, 1e5)(next), size(10, 1e5)(next)]],
  RATIOERROR: [
    120,
    (next) => {
      const ratio = pick(next, [10, 80, 120, 240]);
      const primary = size(50, 2000, 1)(next);
      return [
        primary,
        pick(next, [
          -1,
          0,
          ...Array.from({ length: 10 }, () =>
            shown((Math.abs(primary) / ratio) * between(next, 0.97, 1.03), 4),
          ),
        ]),
        pick<CellValue>(next, [ratio, ratio, `${ratio * 5}/5`, `${ratio * 110}/110`, 0, -ratio]),
      ];
    },
  ],
  SPREAD: [
    120,
    (next) => [severalOf((next) => (next() < 0.03 ? 0 : shown(between(next, 20, 80), 1)))(next)],
  ],
  TIMESPREAD: [
    120,
    (next) => [severalOf((next) => (next() < 0.03 ? -1 : shown(between(next, 20, 80), 1)))(next)],
  ],
  VTLIMIT: [
    150,
    (next) => [
      words("0.2", "0.5", "1", "3P", "6P")(next),
      pick(next, [2, 5, 80, 100, 120, 190, 200, shown(between(next, 0, 200), 1)]),
      words("ratio", "phase", undefined)(next),
    ],
  ],
  WITHSTAND: [
    300,
    (next) => [
      rated(
        3.6,
        7.2,
        12,
        17.5,
        24,
        36,
        52,
        72.5,
        0.635,
        1.058,
        4.76,
        8.25,
        15,
        27,
        38,
        5,
        25,
        35,
      )(next),
      BASIS(next),
      words("site", "factory", undefined)(next),
      words("AC", "AC", "DC", undefined)(next),
      words("main", "main", "main", "isolating", "control", undefined)(next),
    ],
  ],
};

/**
 * Functions without a native formula, and why: SOURCE answers with the text of its sources and computes
 * nothing that a formula could compute again. EXCITING and QUANTITY are computed again natively in the
 * records that use them (`natives.ts`), whose every cell is compared. INRANGE
 * answers with a word and reads its ranges from text; `tests/records/agree.test.ts` compares it row by row
 * with what the records work out. DOUBTFUL reads language; its cases are sentences, in
 * `tests/check/rules/remarkContradicts.test.ts`, and its native knows one word of them.
 */
export const NOT_NATIVE: readonly string[] = [
  "SOURCE",
  "EXCITING",
  "QUANTITY",
  "INRANGE",
  "DOUBTFUL",
];

/** Generated arguments of each worksheet function, the same at every run. */
export const FUNCTION_CASES: Readonly<Record<string, readonly Case[]>> = Object.fromEntries(
  Object.entries(MAKERS).map(([name, [count, make]], start) => {
    const next = random(start + 101);
    return [name, Array.from({ length: count }, () => make(next))];
  }),
);

export const isWord = (argument: Argument): argument is Word =>
  typeof argument === "object" && argument !== null && "word" in argument;
