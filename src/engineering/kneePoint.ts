import type { InputName } from "../messages/inputName";
import { type Refusal, type Result, refuse } from "../quantities/result";
import { computed } from "./computed";
import type { Points } from "./interpolate";
import { monotoneCurve } from "./monotoneCurve";
import { upwards } from "./upwards";

export const KNEE_RULES = ["IEC 10/50", "IEEE 45", "IEEE 30"] as const;
export type KneeRule = (typeof KNEE_RULES)[number];

const FEWEST = 6;
const GRID = 1000;

/** Every rule looks at what the voltage gains while the current gains 50 %: in logarithms, along this chord. */
const CHORD = Math.log(1.5);

/** Gain of ln V along the chord at the knee, and where on the chord the knee lies. */
const RULES: Readonly<Record<KneeRule, { gain: number; place: number }>> = {
  "IEC 10/50": { gain: Math.log(1.1), place: 0 },
  "IEEE 45": { gain: CHORD, place: 0.5 },
  "IEEE 30": { gain: CHORD * Math.sqrt(1 / 3), place: 0.5 },
};

/** A current may fall from one point to the next by this much: noise, not a curve taken backwards. */
const NOISE = 0.03;

/** Points nearer to each other than this in ln I are taken as one, at their mean. */
const APART = 0.05;

/**
 * Knee-point voltage of a current transformer from its measured excitation curve.
 *
 * - `IEC 10/50`: 10 % more voltage takes 50 % more current (IEC 61869-2:2012, read in quotation)
 * - `IEEE 45`: where the curve, voltage over current on equal log-log axes, has a tangent at 45°, for
 *   ungapped cores (IEEE C57.13.1, read in quotation); `IEEE 30`: at 30°, for gapped cores
 *
 * The points may be uneven and noisy: those closer than 5 % in current are taken together, a smooth
 * rising curve is laid through the logarithms, and tangents are taken as chords over 50 % of current.
 * From the upper end down, the first place where the voltage still gains what the rule asks is the
 * knee. It is as sharp as the points about it are close.
 *
 * @param measuredVolts rms, V, six points or more, all above 0, rising throughout or falling throughout
 * @param measuredAmps rms exciting current, A, one for each voltage, rising with it
 * @returns V; `range` for points that do not rise, `none` where the curve does not hold the knee
 * @example kneePoint([10, 20, 40, 60, 80, 100, 110, 120, 130, 140], [0.004, 0.006, 0.009, 0.012, 0.016, 0.022, 0.03, 0.055, 0.13, 0.32]) // 103
 */
export const kneePoint = (
  measuredVolts: readonly number[],
  measuredAmps: readonly number[],
  rule: KneeRule = "IEC 10/50",
): Result<number> => {
  const [volts, amps] = upwards(measuredVolts, measuredAmps);
  if (!KNEE_RULES.includes(rule))
    return refuse("wrong", (text) => text.engineering.oneOf(text.name("Rule"), KNEE_RULES));
  if (volts.length !== amps.length)
    return refuse("wrong", (text) => text.engineering.unpaired(volts.length, amps.length));
  if (volts.length < FEWEST)
    return refuse("none", (text) => text.engineering.fewerPoints(FEWEST, volts.length));
  const refusal =
    notRising("Voltage", volts, "V", 0) ?? notRising("Exciting current", amps, "A", NOISE);
  if (refusal) return refusal;

  const points = merged(amps.map((ampere, i) => [Math.log(ampere), Math.log(volts[i] ?? 0)]));
  const curve = monotoneCurve(points);
  const { gain, place } = RULES[rule];
  const excess = (at: number) => curve(at + CHORD) - curve(at) - gain;
  const [from, to] = [points[0]?.[0] ?? 0, (points.at(-1)?.[0] ?? 0) - CHORD];
  const places = Array.from({ length: GRID + 1 }, (_, i) => to + ((from - to) * i) / GRID);
  const under = to > from ? places.findIndex((at) => excess(at) > 0) : 0;
  if (under === 0)
    return refuse("none", (text) => text.engineering.endsBelowKnee(volts.at(-1), rule));
  if (under < 0) return refuse("none", (text) => text.engineering.startsAboveKnee(volts[0], rule));
  const knee = crossing(excess, places[under] ?? from, places[under - 1] ?? to);
  return computed(Math.exp(curve(knee + place * CHORD)));
};

/** Takes points that lie closer than `APART`, or backwards, together at their mean. */
const merged = (points: Points): Points => {
  const groups: { x: number; y: number; count: number }[] = [];
  for (const [x, y] of points) {
    let group = { x, y, count: 1 };
    for (let last = groups.at(-1); last && group.x - last.x < APART; last = groups.at(-1)) {
      const count = last.count + group.count;
      group = {
        x: (last.x * last.count + group.x * group.count) / count,
        y: (last.y * last.count + group.y * group.count) / count,
        count,
      };
      groups.pop();
    }
    groups.push(group);
  }
  return groups.map(({ x, y }) => [x, y]);
};

/** Place between `low`, where f is above 0, and `high`, where it is not, by halving. */
const crossing = (f: (at: number) => number, low: number, high: number): number => {
  let [under, over] = [low, high];
  for (let step = 0; step < 40; step++) {
    const middle = (under + over) / 2;
    if (f(middle) > 0) under = middle;
    else over = middle;
  }
  return (under + over) / 2;
};

const notRising = (
  what: InputName,
  values: readonly number[],
  unit: string,
  noise: number,
): Refusal | undefined => {
  const at = values.findIndex(
    (value, index) => !(value > (values[index - 1] ?? 0) * (1 - noise) && value < Infinity),
  );
  if (at < 0) return undefined;
  if (Number.isNaN(values[at]))
    return refuse("wrong", (text) => text.engineering.noPoint(text.name(what), unit, at + 1));
  return refuse("range", (text) =>
    at === 0
      ? text.engineering.firstPoint(text.name(what), unit, values[0])
      : text.engineering.fallingPoint(text.name(what), unit, at + 1, values[at], values[at - 1]),
  );
};
