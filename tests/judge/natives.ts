import { FACTORS, MINIMUM } from "../published/insulation";
import { IEC, NETA } from "../published/withstand";

/**
 * Native spreadsheet expressions that stand in for our worksheet functions while an outside judge
 * computes. They are written from the published formulas and from the tests' own copies of the tables
 * (on the sheet `Published`), never from the program.
 */
export const NATIVES: Readonly<Record<string, (...args: string[]) => string>> = {
  IRCORRECT: (reading, temperature, method, base) =>
    `IF(${reading}<0,NA(),${reading}*${factorTo(temperature, method, base)})`,
  IRTESTVOLTAGE: (kV, basis) =>
    basis === '"NETA"' ? rowAtLeast(kV, "minimum", 1) : `IF(${kV}>1,5000,IF(${kV}>0.25,1000,500))`,
  IRMINIMUM: (kV, basis) => (basis === '"NETA"' ? rowAtLeast(kV, "minimum", 2) : "NA()"),
  ABSORPTION: (first, second) => `IF(OR(${first}<=0,${second}<=0),NA(),${second}/${first})`,
  POLARIZATION: (first, second) =>
    `IF(OR(${first}<=0,${second}<=0,${first}>5000),NA(),${second}/${first})`,
  WITHSTAND: (kV, basis, place, wave, part) => {
    if (place !== '"site"' || part !== '"main"') throw new Error(`no native for ${place} ${part}`);
    if (basis === '"IEC"') return wave === '"AC"' ? `0.8*${rowAtLeast(kV, "iec", 1)}` : "NA()";
    const found = rowAtLeast(kV, "neta", wave === '"AC"' ? 1 : 2);
    return `IF(${found}=0,NA(),${found})`;
  },
  AIRFACTOR: (t, b, rh, testkV, gap, wave) => {
    const delta = `(${b}/101.3*293/(273+${t}))`;
    const h = `(6.11*${rh}*EXP(17.6*${t}/(243+${t}))/(0.4615*(273+${t})))`;
    const x = `(${h}/${delta}-11)`;
    const k = wave === '"AC"' ? `(1+0.012*${x})` : `(1+0.014*${x}-0.00022*${x}^2)`;
    const most = `${h}/${delta}`;
    const g = `(1.1*${testkV}${wave === '"AC"' ? "*SQRT(2)" : ""}/(500*${gap}*${delta}*${k}))`;
    const rising = `(${g}*(${g}-0.2)/0.8)`;
    const m = `IF(${g}<0.2,0,IF(${g}<1,${rising},1))`;
    const w = `IF(${g}<0.2,0,IF(${g}<1,${rising},IF(${g}<=1.2,1,IF(${g}<2,(2.2-${g})*(2-${g})/0.8,0))))`;
    const k1 = `${delta}^${m}`;
    return `IF(OR(${most}<1,${most}>15,${k1}<0.8,${k1}>1.05),NA(),${k1}*${k}^${w})`;
  },
  DEWMARGIN: (surface, t, rh) => {
    const load = `(LN(${rh}/100)+17.62*${t}/(243.12+${t}))`;
    return `(${surface}-243.12*${load}/(17.62-${load}))`;
  },
  CONTACTCORRECT: (reading, t) =>
    `IF(OR(${reading}<=0,${t}<-50,${t}>200),NA(),${reading}*(234.5+20)/(234.5+${t}))`,
  JUDGE: (value, limit, sense) =>
    `IF(AND(ISNUMBER(${value}),ISNUMBER(${limit})),IF(${value}${sense === '"most"' ? "<=" : ">="}${limit},"Pass","Fail"),NA())`,
};

/** The tables of the sheet `Published`: each a block of columns from row 1. */
const BLOCKS = { factors: FACTORS, minimum: MINIMUM, iec: IEC, neta: NETA } as const;
type Block = keyof typeof BLOCKS;

/** First column of each block. */
const COLUMN: Record<Block, number> = { factors: 0, minimum: 4, iec: 8, neta: 11 };

/** Rows of the sheet `Published`. */
export function publishedRows(): (number | null)[][] {
  const depth = Math.max(...Object.values(BLOCKS).map((rows) => rows.length));
  return Array.from({ length: depth }, (_, row) => {
    const cells: (number | null)[] = Array(14).fill(null);
    for (const [name, rows] of Object.entries(BLOCKS))
      rows[row]?.forEach((value, at) => {
        cells[COLUMN[name as Block] + at] = value ?? null;
      });
    return cells;
  });
}

const range = (block: Block, column: number) => {
  const letter = String.fromCharCode(65 + COLUMN[block] + column);
  return `Published!$${letter}$1:$${letter}$${BLOCKS[block].length}`;
};

/** The value in the row with the least rated voltage that is not below the one given. */
const rowAtLeast = (kV: string, block: Block, column: number) =>
  `INDEX(${range(block, column)},COUNTIF(${range(block, 0)},"<"&${kV})+1)`;

/** Factor from a temperature to a base temperature: table values joined on the logarithm, or a halving per 10 K. */
function factorTo(t: string, method: string | undefined, base: string | undefined): string {
  if (method === '"none"') return "1";
  if (method === '"halving"') return `IF(OR(${t}<-10,${t}>105),NA(),2^((${t}-${base})/10))`;
  const column = method === '"oil"' ? 1 : 2;
  const at = (x: string) => {
    const i = `MIN(MATCH(${x},${range("factors", 0)},1),${FACTORS.length - 1})`;
    const cell = (of: number, next: string) => `INDEX(${range("factors", of)},${i}${next})`;
    const share = `(${x}-${cell(0, "")})/(${cell(0, "+1")}-${cell(0, "")})`;
    return `IF(OR(${x}<-10,${x}>105),NA(),EXP(LN(${cell(column, "")})+(LN(${cell(column, "+1")})-LN(${cell(column, "")}))*${share}))`;
  };
  return `(${at(t)}/${at(base ?? "20")})`;
}
