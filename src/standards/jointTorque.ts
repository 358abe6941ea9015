import { gradeNamed } from "../engineering/bolts";
import { answer, type Result, refuse } from "../quantities/result";
import type { Criterion, Source } from "./criterion";

const SIZES = ["1/4", "5/16", "3/8", "7/16", "1/2", "9/16", "5/8", "3/4", "7/8", "1"];

/** Torque by size, lbf·ft; from the first size named on. */
const column = (from: string, values: readonly number[]): ReadonlyMap<string, number> =>
  new Map(values.map((value, at) => [SIZES[SIZES.indexOf(from) + at] ?? "", value]));

/** By size alone, of the sizes that the table has. */
const some = (rows: Readonly<Record<string, number>>): ReadonlyMap<string, number> =>
  new Map(Object.entries(rows));

const STEEL_1_2 = column("1/4", [4, 7, 12, 19, 30, 42, 59, 96, 150, 225]);

/** Tables 100.12.1 to .4 by material and grade, lbf·ft (memory; the layout was read, the values were not). */
const TABLE: Readonly<
  Record<string, { readonly place: string; readonly rows: ReadonlyMap<string, number> }>
> = {
  "SAE 1": { place: "table 100.12.1", rows: STEEL_1_2 },
  "SAE 2": { place: "table 100.12.1", rows: STEEL_1_2 },
  "SAE 5": {
    place: "table 100.12.1",
    rows: column("1/4", [6, 11, 20, 32, 48, 70, 96, 160, 240, 370]),
  },
  "SAE 7": {
    place: "table 100.12.1",
    rows: column("1/4", [8, 15, 27, 44, 68, 96, 135, 225, 350, 530]),
  },
  "SAE 8": {
    place: "table 100.12.1",
    rows: column("1/4", [8, 18, 30, 48, 74, 105, 145, 235, 380, 570]),
  },
  "silicon bronze": {
    place: "table 100.12.2, dry",
    rows: some({ "5/16": 15, "3/8": 20, "1/2": 40, "5/8": 55, "3/4": 70 }),
  },
  "silicon bronze, lubricated": {
    place: "table 100.12.2, lubricated",
    rows: some({ "5/16": 10, "3/8": 15, "1/2": 25, "5/8": 40, "3/4": 60 }),
  },
  aluminum: {
    place: "table 100.12.3, lubricated",
    rows: some({ "5/16": 10, "3/8": 14, "1/2": 25, "5/8": 40, "3/4": 60 }),
  },
  stainless: {
    place: "table 100.12.4, uncoated",
    rows: some({ "5/16": 15, "3/8": 20, "1/2": 40, "5/8": 55, "3/4": 70 }),
  },
};

const MATERIALS: readonly (readonly [RegExp, string])[] = [
  [/silicon bronze.*lubric/i, "silicon bronze, lubricated"],
  [/bronze/i, "silicon bronze"],
  [/alumin/i, "aluminum"],
  [/stainless/i, "stainless"],
];

const source = (place: string): Source => ({
  document: "ANSI/NETA ATS",
  edition: "2025",
  place,
  certainty: "memory",
  note: "where the maker gives none; the layout of the table was read, its values were not",
});

/**
 * Torque of a bolted electrical joint where its maker gives none, lbf·ft: ANSI/NETA table 100.12 by material
 * and grade (memory).
 *
 * @param bolt size, inches: 1/4 to 1
 * @param grade SAE 1, 2, 5, 7 or 8, silicon bronze, aluminum or stainless
 * @returns `none` for metric bolts and what the tables have no row for
 * @example jointTorque("1/2", "SAE 5") // 48
 */
export const jointTorque = (bolt: string, grade: string): Result<Criterion> => {
  const name = MATERIALS.find(([words]) => words.test(grade))?.[1] ?? gradeNamed(grade);
  const material = Object.hasOwn(TABLE, name) ? TABLE[name] : undefined;
  const value = material?.rows.get(bolt);
  return material && value !== undefined
    ? answer({ value, source: source(material.place) })
    : refuse(
        "none",
        `NETA table 100.12 has no torque for ${bolt} of ${grade}: the maker gives it.`,
      );
};
