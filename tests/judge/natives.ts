import { COMPOSITE, CT } from "../published/transformers";
import { depthOf, range, rowAtLeast, rowOf } from "./publishedSheet";

/**
 * Native spreadsheet expressions that stand in for our worksheet functions while an outside judge
 * computes. They are written from the published formulas and from the tests' own copies of the tables
 * (on the sheet `Published`), never from the program.
 *
 * A word of an enumeration comes as its text in quotes, an argument left out as undefined, everything
 * else as a reference. Whatever the function refuses is `NA()`.
 */
export const NATIVES: Readonly<Record<string, (...args: string[]) => string>> = {
  ABSORPTION: (first = "", last = "") => when([`${first}>0`, `${last}>0`], `${last}/${first}`),

  ALTITUDEFACTOR: (metres = "", exponent = "1") =>
    when(
      [...within(metres, -500, 6000), ...within(exponent, 0, 1)],
      `EXP(${exponent}*MAX(0,${metres}-1000)/8150)`,
    ),

  BOLTTORQUE: (size = "", grade = "", friction = "0.2", share = "0.56") => {
    const d = rowOf(size, "bolts", 1);
    const proof = `IF(${d}>16,${rowOf(grade, "proof", 2)},${rowOf(grade, "proof", 1)})`;
    return when(
      [...within(friction, 0.05, 0.5), ...within(share, 0.1, 0.9)],
      `${friction}*${share}*${rowOf(size, "bolts", 2)}*${proof}*${d}/1000`,
    );
  },

  BURDEN: (va = "", amps = "") => when([`${va}>=0`, `${amps}>0`], `${va}/${amps}^2`),

  CABLETEST: (
    kV = "",
    basis = '"IEC"',
    wave = basis === '"IEC"' ? '"AC"' : '"VLF"',
    purpose = '"acceptance"',
  ) => {
    if (basis === '"NETA"')
      return when(
        [`${wave}="VLF"`, `${kV}>1`],
        rowOf(kV, "vlf", purpose === '"maintenance"' ? 2 : 1),
      );
    const times = `IF(${wave}="AC",1,IF(${wave}="DC",4,IF(${wave}="VLF",3,NA())))`;
    const known = `IFERROR(${rowOf(kV, "cables", 1)},${rowOf(kV, "nominal", 1)})`;
    return when([`${kV}>1`], `${times}*${known}`);
  },

  COILLIMIT: (volts = "", does = "", end = "", wave = '"DC"', basis = '"IEC"') => {
    const most = end === '"most"' ? 1 : 0;
    if (basis === '"NETA"') {
      const column = (does === '"closing"' ? 1 : 3) + most;
      const direct = rowOf(volts, "coilsAnsi", column);
      // The lower of two printed least voltages for closing: 36, 90 and 180 V.
      const lower =
        end === '"lowest"' && does === '"closing"'
          ? `IF(${volts}=48,36,IF(${volts}=125,90,IF(${volts}=250,180,${direct})))`
          : direct;
      return `IF(${wave}="AC",${rowOf(volts, "coilsAnsiAc", 1 + most)},${lower})`;
    }
    const part = `SUMPRODUCT((${range("coilsIec", 0)}=${does})*(${range("coilsIec", 1)}=${wave})*${range("coilsIec", 2 + most)})`;
    return when([`${volts}>0`], `${volts}*${part}`);
  },

  CONTACTCORRECT: (r = "", t = "", metal = '"copper"', base = "20") => {
    const zero = metal === '"copper"' ? 234.5 : 228;
    return when(
      [`${sizeOf(r)}>0`, ...within(t, -50, 200), ...within(base, -50, 200)],
      carried(r, `${sizeOf(r)}*(${zero}+${base})/(${zero}+${t})`),
    );
  },

  CTLIMIT: (accuracy = "", percent = "", quantity = '"ratio"'): string => {
    // A class in a cell: one after the other of those that the tests' own tables have.
    if (!accuracy.startsWith('"'))
      return [...Object.keys(CT), "PX", "C100"].reduceRight(
        (otherwise, name) =>
          `IF(${accuracy}="${name}",${NATIVES.CTLIMIT?.(`"${name}"`, percent, quantity)},${otherwise})`,
        "NA()",
      );
    const name = accuracy.replaceAll('"', "");
    // Turns ratio of PX 0.25 % (quoted by two articles); relaying classes 3 % at rated current (memory).
    if (quantity === '"turns"') return name === "PX" ? "0.25" : "NA()";
    if (quantity === '"wrong"')
      return name === "PX" ? "10" : `IFERROR(${NATIVES.CTLIMIT?.(accuracy, percent)},10)`;
    // Neither limits the phase displacement.
    if (["PX", "C100"].includes(name) && quantity === '"phase"') return "NA()";
    if (name === "PX") return when([`${percent}=100`], "0.25");
    if (name === "C100") return when([`${percent}=100`], "3");
    if (quantity === '"composite"') return String(COMPOSITE[name] ?? "NA()");
    const column = quantity === '"phase"' ? 2 : 1;
    const rows = CT[name] ?? [];
    if (rows[0]?.[column] === undefined) return "NA()";
    if (rows.length === 1) return when([`${percent}=${rows[0]?.[0]}`], String(rows[0]?.[column]));
    return when(
      within(percent, rows[0]?.[0] ?? 0, rows.at(-1)?.[0] ?? 0),
      onLine(percent, `ct ${name}`, column),
    );
  },

  CURVETIME: (curve = "", multiple = "", setting = "") => {
    const [a, b, p] = [1, 2, 3].map((column) => rowOf(curve, "curves", column));
    return when(
      [`${multiple}>1`, `${multiple}<=20`, `${setting}>0`],
      `${setting}*(${a}/(${multiple}^${p}-1)+${b})`,
    );
  },

  DEWMARGIN: (surface = "", t = "", rh = "") =>
    when([...within(surface, -45, 105), ...moistAir(t, rh)], `${surface}-${dew(t, rh)}`),

  DEWPOINT: (t = "", rh = "") => when(moistAir(t, rh), dew(t, rh)),

  /** Knows the one word of the generated remarks that takes a pass back. */
  DOUBTFUL: (remark = "") => `IF(ISNUMBER(SEARCH("flashover at",${remark})),"Yes","No")`,

  EARTHRESISTANCE: (amps = "", volts = "") =>
    when([`${amps}>0`, `${volts}>=0`], `${volts}/${amps}*1000`),

  /** On the line between two points on log-log axes; beyond the last a bound, in proportion to the voltage. */
  EXCITING: (volts = "", amps = "", at = "") => {
    const count = `COUNT(${volts})`;
    const i = `MIN(MATCH(${at},${volts},1),${count}-1)`;
    const [low, high] = [`INDEX(${volts},${i})`, `INDEX(${volts},${i}+1)`];
    const [from, to] = [`INDEX(${amps},${i})`, `INDEX(${amps},${i}+1)`];
    const inside = `${from}*(${to}/${from})^(LN(${at}/${low})/LN(${high}/${low}))`;
    const bound = (sign: string, value: string, round: string) =>
      `"${sign} "&${round}(${value},5-INT(LOG10(${value})))`;
    const above = bound(">", `INDEX(${amps},${count})*${at}/MAX(${volts})`, "ROUNDDOWN");
    const below = bound("<", `INDEX(${amps},1)`, "ROUNDUP");
    return `IF(${at}>MAX(${volts}),${above},IF(${at}<MIN(${volts}),${below},${inside}))`;
  },

  IRCORRECT: (reading = "", t = "", method = '"solid"', base = "20") =>
    when(
      [`${sizeOf(reading)}>=0`],
      carried(reading, `${sizeOf(reading)}*${factorTo(t, method, base)}`),
    ),

  IRFACTOR: (t = "", method = '"solid"', base = "20") => factorTo(t, method, base),

  IRMINIMUM: (kV = "", basis = '"IEC"') =>
    basis === '"NETA"' ? when([`${kV}>0`], minimumRow(kV, 2)) : "NA()",

  IRTESTVOLTAGE: (kV = "", basis = '"IEC"') =>
    when(
      [`${kV}>0`],
      basis === '"NETA"'
        ? minimumRow(kV, 1)
        : `IF(${kV}<=0.5,500,IF(${kV}<=1,1000,IF(${kV}<=72.5,5000,NA())))`,
    ),

  JUDGE: (value = "", limit = "", sense = '"least"', tolerance = "0") => {
    const grace = tolerance === "0" ? "0" : `ABS(${limit})*${tolerance}`;
    const [least, most] = [`${limit}-${grace}`, `${limit}+${grace}`];
    const x = `VALUE(MID(${value},3,30))`;
    const above = `LEFT(${value},1)=">"`;
    const either = (test: string, verdict: string) => `IF(${test},"${verdict}","Inconclusive")`;
    const [exact, over, under] = {
      '"least"': [
        `${value}>=${least}`,
        either(`${x}>=${least}`, "Pass"),
        either(`${x}<${least}`, "Fail"),
      ],
      '"most"': [
        `${value}<=${most}`,
        either(`${x}>${most}`, "Fail"),
        either(`${x}<=${most}`, "Pass"),
      ],
      '"within"': [
        `ABS(${value})<=${most}`,
        either(`${x}>${most}`, "Fail"),
        either(`-(${x})>${most}`, "Fail"),
      ],
      '"equal"': [
        `ABS(${value}-${limit})<=${grace}`,
        either(`${x}>${most}`, "Fail"),
        either(`${x}<${least}`, "Fail"),
      ],
    }[sense] ?? ["NA()", "NA()", "NA()"];
    const unknown = tolerance.startsWith("-") ? "TRUE" : `OR(${limit}="",${tolerance}<0)`;
    const judged = (verdict: string) => `IF(${unknown},"Inconclusive",${verdict})`;
    const bound = `IF(ISNUMBER(${x}),${judged(`IF(${above},${over},${under})`)},NA())`;
    return `IF(${value}="","Missing",IF(ISNUMBER(${value}),${judged(`IF(${exact},"Pass","Fail")`)},${bound}))`;
  },

  LIMITFACTOR: (factor = "", winding = "", rated = "", actual = "") =>
    when(
      [`${factor}>0`, `${winding}>=0`, `${rated}>=0`, `${actual}>=0`, `${winding}+${actual}>0`],
      `${factor}*(${winding}+${rated})/(${winding}+${actual})`,
    ),

  MEGOHMS: (text = "", unit = '"MΩ"') => {
    const size = (of: string) =>
      Object.entries({ TΩ: 1e6, GΩ: 1e3, MΩ: 1, kΩ: 1e-3, Ω: 1e-6 }).reduceRight(
        (otherwise, [name, factor]) => `IF(EXACT(${of},"${name}"),${factor},${otherwise})`,
        "NA()",
      );
    const gap = `FIND(" ",${text})`;
    return `IF(ISNUMBER(${text}),${text}*${size(unit)},VALUE(LEFT(${text},${gap}-1))*${size(`MID(${text},${gap}+1,9)`)})`;
  },

  POLARIZATION: (first = "", last = "") =>
    when(
      [`${first}>0`, `${last}>0`],
      `IF(${first}>5000,"The index is not meaningful: "&${first}&" MΩ after 1 min is above 5000 MΩ (IEEE 43-2013).",${last}/${first})`,
    ),

  /** What stands as a number; text with a unit is not typed in the generated rows. */
  QUANTITY: (cell = "") => `IF(ISNUMBER(${cell}),${cell},NA())`,

  RATIOERROR: (primary = "", secondary = "", ratio = "") => {
    const slash = `FIND("/",${ratio})`;
    const k = `IF(ISTEXT(${ratio}),VALUE(LEFT(${ratio},${slash}-1))/VALUE(MID(${ratio},${slash}+1,20)),${ratio})`;
    return when(
      [`${primary}>0`, `${secondary}>=0`, `${k}>0`],
      `(${k}*${secondary}-${primary})/${primary}*100`,
    );
  },

  SPREAD: (values = "") =>
    when(
      [`COUNT(${values})>1`, `MIN(${values})>0`],
      `(MAX(${values})-MIN(${values}))/MIN(${values})`,
    ),

  TIMESPREAD: (times = "") =>
    when([`COUNT(${times})>1`, `MIN(${times})>=0`], `MAX(${times})-MIN(${times})`),

  VTLIMIT: (accuracy = "", percent = "", quantity = '"ratio"'): string => {
    const of = (column: number) => rowOf(accuracy, "vt", column);
    // A set holds its voltage to about half a percent of it.
    const range = [`${percent}>=${of(1)}*0.995`, `${percent}<=${of(2)}*1.005`];
    // From 2 % on the protective classes have twice their limits (quoted); between, the finer passes.
    const low = `AND(${of(1)}=5,${percent}>=2,${percent}<5*0.995)`;
    const isWrong = quantity === '"wrong"';
    const column = quantity === '"phase"' ? 4 : 3;
    const twice = isWrong ? `2*${of(column)}` : `IF(${percent}<=2.2,2,1)*${of(column)}`;
    const limit = `IF(${low},${twice},${when(range, of(column))})`;
    return isWrong ? `IFERROR(${limit},10)` : limit;
  },

  WITHSTAND: (kV = "", basis = '"IEC"', place = '"site"', wave = '"AC"', part = '"main"') => {
    const site = place === '"site"';
    if (part === '"control"')
      return wave === '"AC"'
        ? when([`${kV}>0`], basis === '"IEC"' ? (site ? "1" : "2") : `1.5${site ? "*3/4" : ""}`)
        : "NA()";
    if (basis === '"IEC"') {
      const first = rowOf(kV, "iec", part === '"main"' ? 1 : 2);
      const level = part === '"main"' ? `IFERROR(${first},${rowOf(kV, "seriesII", 1)})` : first;
      return wave === '"AC"' ? when([`${kV}>0`], `${level}${site ? "*0.8" : ""}`) : "NA()";
    }
    if (part === '"isolating"') return "NA()";
    const meant = `IFERROR(${rowOf(kV, "classes", 1)},${kV})`;
    const found = rowOf(meant, site ? "neta" : "factory", wave === '"AC"' ? 1 : 2);
    return when([`${kV}>0`, `${found}>0`], found);
  },
};

/** A figure of table 100.1: of the nominal voltage that a rated maximum voltage belongs to, else of the next row. */
const minimumRow = (kV: string, column: number): string =>
  rowAtLeast(`MIN(46,IFERROR(${rowOf(kV, "maximum", 1)},${kV}))`, "minimum", column);

/** The value where all conditions hold, taken one after the other, else no answer. */
export const when = (conditions: readonly string[], value: string): string =>
  conditions.reduceRight((inner, condition) => `IF(${condition},${inner},NA())`, value);

export const within = (x: string, least: number, most: number): string[] => [
  `${x}>=${least}`,
  `${x}<=${most}`,
];

const moistAir = (t: string, rh: string) => [...within(t, -45, 60), `${rh}>0`, `${rh}<=100`];

const dew = (t: string, rh: string): string => {
  const load = `(LN(${rh}/100)+17.62*${t}/(243.12+${t}))`;
  return `(243.12*${load}/(17.62-${load}))`;
};

/** The number of a reading: a number, or one in text between its bound's sign and its unit. */
const sizeOf = (reading: string) =>
  `IF(ISTEXT(${reading}),VALUE(MID(${reading},3,FIND(" ",${reading},3)-3)),${reading})`;

/** What was computed from a bound: text with the same sign, six figures, rounded to the safe side. */
const carried = (reading: string, value: string) => {
  const places = `(5-INT(LOG10(${value})))`;
  return `IF(ISTEXT(${reading}),LEFT(${reading},2)&IF(LEFT(${reading},1)=">",ROUNDDOWN(${value},${places}),ROUNDUP(${value},${places})),${value})`;
};

/** Place of x among the rows of a block, so that a row follows. */
const place = (x: string, block: string) =>
  `MIN(MATCH(${x},${range(block, 0)},1),${depthOf(block) - 1})`;

/** Value on the straight line between the two rows of a block about x. */
function onLine(x: string, block: string, column: number): string {
  const i = place(x, block);
  const cell = (of: number, next: string) => `INDEX(${range(block, of)},${i}${next})`;
  return `(${cell(column, "")}+(${cell(column, "+1")}-${cell(column, "")})*(${x}-${cell(0, "")})/(${cell(0, "+1")}-${cell(0, "")}))`;
}

/** Factor from a temperature to a base temperature: table values joined on the logarithm, or a halving per 10 K. */
function factorTo(t: string, method: string, base: string): string {
  if (method === '"none"') return "1";
  const inside = [...within(t, -10, 105), ...within(base, -10, 105)];
  if (method === '"halving"') return when(inside, `2^((${t}-${base})/10)`);
  const column = method === '"oil"' ? 1 : 2;
  const at = (x: string) => {
    const i = place(x, "factors");
    const cell = (of: number, next: string) => `INDEX(${range("factors", of)},${i}${next})`;
    const share = `(${x}-${cell(0, "")})/(${cell(0, "+1")}-${cell(0, "")})`;
    return `EXP(LN(${cell(column, "")})+(LN(${cell(column, "+1")})-LN(${cell(column, "")}))*${share})`;
  };
  return when(inside, `${at(t)}/${at(base)}`);
}
