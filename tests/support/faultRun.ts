import { readFileSync } from "node:fs";
import type { Lineup } from "../../src/lineup/lineup";
import { readLineup } from "../../src/records/readLineup";
import { mesaPlan } from "../tools/samples/mesaEntries";
import { type FaultBook, faultBook } from "./faultBook";
import { FAULTS, type Injected, isFound } from "./faults";
import { filledPlan, SOUND } from "./fill";
import { EARTH_BAR, equipped, longLineup } from "./lineups";
import { random } from "./random";

const TODAY = 46_352;
const OWN: Lineup["criteria"] = [
  { from: "project", quantity: "joint resistance µΩ", value: 50, document: "invented" },
];

/** What is recorded under voltage: the sample has no such entries. */
const UNDER_VOLTAGE: ReadonlySet<string> = new Set([
  "phasing",
  "rotation",
  "energization",
  "partialDischarge",
]);

/** The sample lineup by American practice, which has the equipment of the later kinds, with sound entries alone. */
function soundMesa(): FaultBook {
  const read = readLineup(readFileSync("sample-workbooks/mesa-metal-clad.lineup.json", "utf8"));
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  const lineup: Lineup = {
    ...read.value,
    // The kinds that faults are put in by have these in their heads.
    phases: ["L1", "L2", "L3"],
    furtherRecords: read.value.furtherRecords.filter(({ kind }) => !UNDER_VOLTAGE.has(kind)),
  };
  return faultBook(mesaPlan(lineup, {}), TODAY);
}

/** Clean workbooks of several lineups, over nearly every record kind. */
export function cleanBooks(): FaultBook[] {
  const withOwn = (lineup: Lineup): Lineup => ({
    ...lineup,
    instruments: lineup.instruments.map((one) => ({
      ...one,
      ranges: [{ most: 4, unit: "kA" }],
    })),
    criteria: [
      ...lineup.criteria,
      ...OWN,
      EARTH_BAR,
      ...(lineup.basis === "IEC"
        ? [
            {
              from: "project" as const,
              quantity: "insulation minimum MΩ" as const,
              value: 2000,
              document: "invented",
            },
            {
              from: "project" as const,
              quantity: "current transformer ratio error %" as const,
              value: 1,
              document: "invented",
            },
          ]
        : []),
    ],
  });
  const lineups: readonly (readonly [Lineup, number])[] = [
    [withOwn(longLineup(3)), 27],
    [withOwn(equipped(longLineup(4, { basis: "IEC" }))), 22.4],
    [withOwn(equipped(longLineup(7, { basis: "IEC" }))), 22.4],
    [withOwn(longLineup(12)), 27],
  ];
  const generated = lineups.map(([lineup, kV], at) =>
    faultBook(
      filledPlan(lineup, 11 + at, {
        ...SOUND,
        GearWithstand: (row, next) => ({ ...SOUND.GearWithstand?.(row, next), applied: kV }),
        GearExcitation: (row, next) => ({
          ...SOUND.GearExcitation?.(row, next),
          kneeLeast: row.kneeLeast ?? 60,
        }),
      }),
      TODAY,
    ),
  );
  return [...generated, soundMesa()];
}

export interface FamilyResult {
  readonly family: string;
  readonly rules: readonly string[];
  readonly injected: number;
  readonly found: number;
  /** Findings at rows that have nothing to do with the fault. */
  readonly alarms: number;
  readonly missed: readonly Injected[];
}

/** Puts so many single faults of every family into clean workbooks, one at a time, and asks whether each is found. */
export function faultRun(books: readonly FaultBook[], each: number, start = 1): FamilyResult[] {
  return Object.entries(FAULTS).map(([family, inject], at) => {
    const next = random(start + 1000 * at);
    const rules = new Set<string>();
    const missed: Injected[] = [];
    let injected = 0;
    let alarms = 0;
    for (let attempt = 0; injected < each && attempt < 20 * each; attempt++) {
      const book = books[Math.floor(next() * books.length)];
      const fault = book && inject(book, next);
      if (!fault) continue;
      injected++;
      for (const rule of fault.rules) rules.add(rule);
      if (!isFound(fault)) missed.push(fault);
      alarms += fault.findings.filter((finding) => !isOf(fault, finding)).length;
    }
    return {
      family,
      rules: [...rules],
      injected,
      found: injected - missed.length,
      alarms,
      missed,
    };
  });
}

/** Rules that rightly speak on other rows than the one at fault, since what they look at hangs together. */
const ECHOES: ReadonlySet<string> = new Set([
  "withstand-before-insulation",
  "withstand-on-failed",
  "records-contradict",
  "after-before-withstand",
  "before-predecessor",
  "fallen-after",
  "hold-not-released",
  "stands-out",
  "result-disagrees",
]);

const rowOf = (address: string) => address.replace(/^[A-Z]+/, "");

/** Whether a finding is of the fault: at its row, by its rule, by a rule that looks across, or of the table as a whole. */
const isOf = (
  { rules, sheet, addresses, also = [] }: Injected,
  { rule, ...at }: Injected["findings"][number],
) =>
  rules.includes(rule) ||
  ECHOES.has(rule) ||
  also.includes(rule) ||
  (at.sheet === sheet && addresses.some((address) => rowOf(address) === rowOf(at.address))) ||
  (at.sheet === sheet && addresses.some((address) => ["A1", "A4"].includes(address)));
