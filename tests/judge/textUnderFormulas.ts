import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { writeXlsx } from "hucre/xlsx";
import { convert, openpyxl } from "./outside";

/** What intake says of formulas that take a cell with a bound in it: A1 holds "> 200 GΩ", B1 holds 40. */
const SAID: readonly (readonly [formula: string, comes: unknown])[] = [
  ["A1*1.25", "#VALUE!"],
  ["A1+B1", "#VALUE!"],
  ["ROUND(A1,1)", "#VALUE!"],
  ['IF(A1>=100,"pass","FAIL")', "pass"],
  ['IF(A1<100,"FAIL","pass")', "pass"],
  ["AVERAGE(A1:B1)", 40],
  ["SUM(A1:B1)", 40],
  ["MIN(A1:B1)", 40],
];

/** Where LibreOffice computes otherwise than intake says. */
export async function textUnderFormulas(folder: string): Promise<string[]> {
  const file = join(folder, "text-under-formulas.xlsx");
  const cells = new Map(
    SAID.map(([formula], at) => [
      `0,${at + 2}`,
      { type: "formula" as const, formula, value: null },
    ]),
  );
  const row = ["> 200 GΩ", 40, ...SAID.map(() => null)];
  writeFileSync(file, await writeXlsx({ sheets: [{ name: "Own", rows: [row], cells }] }));
  const [computed = []] = openpyxl(convert(file, "xlsx", join(folder, "computed"))).Own ?? [];
  return SAID.flatMap(([formula, comes], at) =>
    computed[at + 2] === comes ? [] : [`=${formula} gives ${computed[at + 2]}, not ${comes}`],
  );
}
