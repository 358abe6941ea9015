import { gzipSync } from "node:zlib";
import { functions } from "../../src/functions/catalogue";
import type { CellValue } from "../../src/records/kind";
import { isErrorCode, ourOutcomes } from "../judge/functionBook";
import { type Argument, type Case, FUNCTION_CASES, isWord } from "../judge/functionCases";
import { functionsBundle } from "../support/functionsBundle";
import { type NativeCall, nativeCall } from "./nativeCall";

/**
 * `npm run bench:functions`: evaluations a second of each worksheet function, cell by cell as Excel calls
 * it and over one range of 10,000 rows, beside the same formula built up from the functions of
 * @formulajs/formulajs in the same process; then the size of the functions' bundle.
 */
const ROWS = 10_000;
const SECONDS = 0.25;

/** Evaluations a second, one call of `run` being so many. */
function rate(run: (turn: number) => unknown, evaluations: number): number {
  for (let turn = 0; turn < 3; turn++) run(turn);
  const start = performance.now();
  let turns = 0;
  let elapsed = 0;
  const batch = evaluations > 1 ? 1 : 50;
  while (elapsed < SECONDS) {
    for (let i = 0; i < batch; i++) run(turns++);
    elapsed = (performance.now() - start) / 1000;
  }
  return (turns * evaluations) / elapsed;
}

const flat = (args: Case): CellValue[] =>
  args.flatMap((argument) => {
    if (isWord(argument)) return [];
    return Array.isArray(argument) ? argument : [(argument as CellValue) ?? ""];
  });
const wordsOf = (args: Case) => JSON.stringify(args.filter(isWord));
const asRange = (argument: Argument): unknown =>
  isWord(argument) ? argument.word : Array.isArray(argument) ? [argument] : [[argument]];

interface Measured {
  readonly cases: readonly Case[];
  readonly values: readonly CellValue[];
  /** The library's form of the formula, or why there is none. */
  readonly library: NativeCall | string;
}

/** The answered cases of one choice of words, the one whose native formula asks most of the library. */
function measured(name: string, outcomes: readonly CellValue[]): Measured {
  const byWords = new Map<string, { cases: Case[]; values: CellValue[] }>();
  for (const [i, args] of (FUNCTION_CASES[name] ?? []).entries()) {
    const value = outcomes[i] ?? null;
    if (isErrorCode(value)) continue;
    const group = byWords.get(wordsOf(args)) ?? { cases: [], values: [] };
    group.cases.push(args);
    group.values.push(value);
    byWords.set(wordsOf(args), group);
  }
  const choices = [...byWords.values()].map((group): Measured & { calls: number } => {
    const library = equivalent(name, group.cases, group.values);
    return { ...group, library, calls: callsOf(library) };
  });
  return choices.reduce((most, one) => (one.calls > most.calls ? one : most));
}

/** How often a formula calls the library. */
const callsOf = (library: NativeCall | string) =>
  typeof library === "string" ? -1 : (String(library).match(/\bF\.(?!NA\b)/g) ?? []).length;

function equivalent(
  name: string,
  cases: readonly Case[],
  values: readonly CellValue[],
): NativeCall | string {
  try {
    const call = nativeCall(name, cases[0] ?? []);
    if (callsOf(call) === 0) return "arithmetic alone, no function of the library in it";
    const wrong = cases.findIndex((args, i) => !alike(call(flat(args)), values[i] ?? null));
    return wrong < 0 ? call : `gives ${call(flat(cases[wrong] ?? []))} for ${values[wrong]}`;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

const alike = (one: unknown, other: CellValue) =>
  typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other))
    : one === other;

const WHOLE = new Set(["SPREAD", "TIMESPREAD"]);

const perSecond = (value: number | undefined) =>
  (value === undefined ? "-" : Math.round(value).toLocaleString("en-US")).padStart(12);
const ratio = (ours: number | undefined, theirs: number | undefined) =>
  (ours === undefined || theirs === undefined ? "-" : (ours / theirs).toFixed(2)).padStart(7);

process.stdout.write(
  `evaluations a second; the ratio is ours over the library's, above 1 where ours is faster\n${"".padEnd(17)}${"one cell".padStart(12)}${"library".padStart(12)}${"ratio".padStart(7)}${"10,000 rows".padStart(13)}${"library".padStart(12)}${"ratio".padStart(7)}\n`,
);
const outcomes = ourOutcomes();
for (const name of Object.keys(FUNCTION_CASES)) {
  const { cases, library } = measured(name, outcomes[name] ?? []);
  const ours = functions[name] as (...args: unknown[]) => unknown;
  const calls = cases.map((args) => args.map(asRange));
  const cells = cases.map(flat);
  const one = rate((turn) => ours(...(calls[turn % calls.length] ?? [])), 1);
  const oneTheirs =
    typeof library === "string"
      ? undefined
      : rate((turn) => library(cells[turn % cells.length] ?? []), 1);

  let many: number | undefined;
  let manyTheirs: number | undefined;
  const rows = Array.from({ length: ROWS }, (_, row) => row);
  if (WHOLE.has(name)) {
    const list = rows.map((row) => 20 + ((row * 7919) % 997) / 10);
    many = rate(() => ours([list]), ROWS);
    const call = nativeCall(name, [list]);
    manyTheirs = rate(() => call(list), ROWS);
  } else if (name !== "KNEEPOINT") {
    const [first = []] = cases;
    const range = first.map((argument, place) =>
      isWord(argument)
        ? argument.word
        : rows.map((row) => [(cases[row % cases.length] ?? [])[place]]),
    );
    many = rate(() => ours(...range), ROWS);
    if (typeof library !== "string")
      manyTheirs = rate(() => rows.map((row) => library(cells[row % cells.length] ?? [])), ROWS);
  }
  process.stdout.write(
    `${name.padEnd(17)}${perSecond(one)}${perSecond(oneTheirs)}${ratio(one, oneTheirs)} ${perSecond(many)}${perSecond(manyTheirs)}${ratio(many, manyTheirs)}${typeof library === "string" ? `  no equivalent: ${library}` : ""}\n`,
  );
}

const bundle = await functionsBundle();
process.stdout.write(
  `bundle of the functions: ${(bundle.length / 1024).toFixed(1)} KB, gzipped ${(gzipSync(bundle).length / 1024).toFixed(1)} KB (at most 38 KB)\n`,
);
