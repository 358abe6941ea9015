import { when, within } from "./natives";
import { letters } from "./publishedSheet";

/** Lays a formula into the next free cell of a case's row, and refers to it. */
export type Put = (formula: string) => string;

/**
 * Worksheet functions whose equation has no closed form, put natively step by step: each step a cell of
 * the case's row. `put` lays a step down; the outcome is the last expression.
 */
export const STEPPED: Readonly<Record<string, (put: Put, ...args: string[]) => string>> = {
  /** IEC 60060-1 with m and w from g at the corrected voltage, which they correct in turn: repeated until nothing changes. */
  AIRFACTOR: (put, t = "", b = "", rh = "", testkV = "", gap = "", wave = '"AC"', rule = '"g"') => {
    const delta = put(`${b}/101.3*293/(273+${t})`);
    const h = put(`6.11*${rh}*EXP(17.6*${t}/(243+${t}))/(0.4615*(273+${t}))`);
    const x = `(${h}/${delta}-11)`;
    const k = put(
      {
        '"AC"': `1+0.012*${x}`,
        '"DC"': `1+0.014*${x}-0.00022*${x}^2`,
        '"impulse"': `1+0.01*${x}`,
      }[wave] ?? "NA()",
    );
    const most = wave === '"impulse"' ? 20 : 15;
    const ranges = [
      ...within(t, -40, 60),
      ...within(b, 50, 110),
      `${rh}>0`,
      `${rh}<=100`,
      `${testkV}>0`,
      `${gap}>0`,
    ];
    const [m, w] = rule === '"g"' ? byG() : ["1", put(`IF(${h}>11,0,1)`)];
    const [k1, factor] = [put(`${delta}^${m}`), put(`${delta}^${m}*${k}^${w}`)];
    if (rule === '"parallel"')
      return when(ranges, `IF(AND(${factor}>=0.95,${factor}<=1.05),${factor},1)`);
    return when(
      [
        ...ranges,
        `OR(${w}=0,AND(${h}/${delta}>=1,${h}/${delta}<=${most}))`,
        ...within(k1, 0.8, 1.05),
      ],
      factor,
    );

    function byG(): [string, string] {
      const plain = put(
        `1.1*${testkV}${wave === '"AC"' ? "*SQRT(2)" : ""}/(500*${gap}*${delta}*${k})`,
      );
      const at = (factor: string): [string, string] => {
        const g = put(`${plain}*${factor}`);
        const rising = put(`${g}*(${g}-0.2)/0.8`);
        return [
          put(`IF(${g}<0.2,0,IF(${g}<1,${rising},1))`),
          put(
            `IF(${g}<0.2,0,IF(${g}<1,${rising},IF(${g}<=1.2,1,IF(${g}<2,(2.2-${g})*(2-${g})/0.8,0))))`,
          ),
        ];
      };
      let [low, high] = ["0.2", "2"];
      for (let step = 0; step < 50; step++) {
        const middle = put(`(${low}+${high})/2`);
        const [m, w] = at(middle);
        const over = put(`${delta}^${m}*${k}^${w}>${middle}`);
        [low, high] = [put(`IF(${over},${middle},${low})`), put(`IF(${over},${high},${middle})`)];
      }
      return at(put(`(${low}+${high})/2`));
    }
  },

  /** Newton's steps on the state equation of SF6 (Beattie and Bridgeman), from the ideal gas. */
  GASPRESSURE: (put, p = "", t = "", to = "20", reference = '"gauge"', barometer = "101.3") => {
    const gauge = reference === '"gauge"';
    const absolute = put(gauge ? `${p}+${barometer}/1000` : p);
    const [from, target] = [put(`${t}+273.15`), put(`${to}+273.15`)];
    let density = put(`${absolute}/(0.000057*${from})`);
    for (let step = 0; step < 25; step++)
      density = put(
        `${density}-(${pressure(density, from)}-${absolute})/(0.000057*${from}*(1+2*0.00251*${density}-3*0.00251*0.000846*${density}^2)-2*0.000075*${density}+3*0.000075*0.000727*${density}^2)`,
      );
    const brought = put(pressure(density, target));
    return when(
      [
        ...within(barometer, 50, 110),
        ...within(t, -50, 80),
        ...within(to, -50, 80),
        ...within(absolute, 0.01, 1.5),
        gaseous(absolute, from),
        gaseous(brought, target),
      ],
      gauge ? `${brought}-0.1013` : brought,
    );
  },

  /**
   * The excitation curve as a monotone cubic through the logarithms (Fritsch and Butland, 1984), and the
   * place where half as much current again brings just the voltage that the rule asks, by halving.
   */
  KNEEPOINT: (put, volts = "", amps = "", rule = '"IEC 10/50"') => {
    const y = cellsOf(volts).map((cell) => put(`LN(${cell})`));
    const x = cellsOf(amps).map((cell) => put(`LN(${cell})`));
    const last = x.length - 1;
    const at = (list: readonly string[], i: number) => list[i] ?? "";
    const slope = x
      .slice(1)
      .map((to, i) => put(`(${at(y, i + 1)}-${at(y, i)})/(${to}-${at(x, i)})`));
    const tangent = x.map((here, i) => {
      if (i === 0) return put(at(slope, 0));
      if (i === last) return put(at(slope, last - 1));
      const [before, after] = [`(${here}-${at(x, i - 1)})`, `(${at(x, i + 1)}-${here})`];
      const share = `((${before}+2*${after})/(3*(${before}+${after})))`;
      const [s, next] = [at(slope, i - 1), at(slope, i)];
      return put(`${s}*${next}/(${share}*${next}+(1-${share})*${s})`);
    });
    const row = (cells: readonly string[]) => `${cells[0]}:${cells.at(-1)}`;
    const curve = (place: string) => {
      const i = put(`MIN(MATCH(${place},${row(x)},1),${last})`);
      const of = (cells: readonly string[], next = "") => `INDEX(${row(cells)},1,${i}${next})`;
      const width = `(${of(x, "+1")}-${of(x)})`;
      const u = put(`(${place}-${of(x)})/${width}`);
      return put(
        `${of(y)}+${width}*${u}*(${of(tangent)}+${u}*(3*${of(slope)}-2*${of(tangent)}-${of(tangent, "+1")}+${u}*(${of(tangent)}+${of(tangent, "+1")}-2*${of(slope)})))`,
      );
    };
    const gain = put(
      `IF(${rule}="IEC 10/50",LN(1.1),IF(${rule}="IEEE 45",LN(1.5),LN(1.5)*TAN(PI()/6)))`,
    );
    const excess = (place: string) =>
      put(`${curve(put(`${place}+LN(1.5)`))}-${curve(place)}-${gain}`);
    const [start, end] = [put(at(x, 0)), put(`${at(x, last)}-LN(1.5)`)];
    let [low, high] = [start, end];
    for (let step = 0; step < 46; step++) {
      const middle = put(`(${low}+${high})/2`);
      const over = excess(middle);
      [low, high] = [put(`IF(${over}>0,${middle},${low})`), put(`IF(${over}>0,${high},${middle})`)];
    }
    const knee = curve(put(`IF(${rule}="IEC 10/50",${low},${low}+LN(1.5)/2)`));
    return when([`${end}>${start}`, `${excess(start)}>0`, `${excess(end)}<=0`], `EXP(${knee})`);
  },
};

const pressure = (density: string, kelvin: string) =>
  `(0.000057*${density}*${kelvin}*(1+0.00251*${density}*(1-0.000846*${density}))-${density}^2*0.000075*(1-0.000727*${density}))`;

/** Saturation pressure of SF6 by °C, MPa absolute: Guder and Wagner's reference equation, in a published table (read). */
const SATURATION = [
  [-40, 0.341],
  [-30, 0.492],
  [-25, 0.585],
  [-20, 0.689],
  [-10, 0.94],
  [0, 1.252],
  [10, 1.634],
  [20, 2.098],
] as const;

/** Below 97 % of the saturation pressure, straight lines between the logarithms; below −40 °C the triple point's 0.22 MPa. */
const gaseous = (pressure: string, kelvin: string) => {
  const celsius = `(${kelvin}-273.15)`;
  const between = SATURATION.slice(1).reduceRight((otherwise, [to, high], at) => {
    const [from, low] = SATURATION[at] ?? [0, 1];
    return `IF(${celsius}<=${to},EXP(LN(${low})+(LN(${high})-LN(${low}))*(${celsius}-(${from}))/${to - from}),${otherwise})`;
  }, "1E+99");
  return `${pressure}<IF(${celsius}>20,1E+99,0.97*IF(${celsius}<-40,0.22,${between}))`;
};

/** The cells of a reference to one row, such as A2:C2. */
function cellsOf(row: string): string[] {
  const [, from = "", number = "", to = ""] = /^([A-Z]+)(\d+):([A-Z]+)/.exec(row) ?? [];
  const index = (name: string) =>
    [...name].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return Array.from(
    { length: index(to) - index(from) + 1 },
    (_, i) => `${letters(index(from) + i)}${number}`,
  );
}
