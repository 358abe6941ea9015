import { expect, test } from "vitest";
import { messagesFor } from "../../src/messages/messages";
import {
  echarts,
  pictureLayout,
  pictureOption,
  pictureSvg,
  steps,
} from "../../src/report/pictureOption";
import { picturesOf } from "../../src/report/pictures";
import { panelsPicture, plotSvg } from "../../src/report/plot";
import { check } from "../support/checkBook";
import { filledPlan, SOUND } from "../support/fill";
import { equipped, longLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";

const messages = messagesFor("en");
const checked = check(memoryBook(filledPlan(equipped(longLineup(4)), 5, SOUND)).snapshot, 46_400);
if (!checked.ok) throw new Error(checked.reason);
const table = (id: string) => {
  const found = checked.report.context.tables.find(({ kind }) => kind.id === id);
  if (!found) throw new Error(id);
  return found;
};

test("insulation: phases before and after, with the limit, on a logarithmic axis", () => {
  const [own, across] = picturesOf(table("insulation"), 0, messages);
  expect(own?.upward.log).toBe(true);
  expect(own?.series.map(({ name, shape }) => `${name} ${shape}`)).toEqual([
    "before points",
    "after points",
    "before to after joins",
    "Minimum MΩ limit",
  ]);
  expect(own?.names?.slice(0, 3)).toEqual(["L1-E", "L2-E", "L3-E"]);
  expect(own?.series[0]?.points.length).toBe(own?.names?.length);
  expect(across).toBeUndefined();
});

test("contact resistance: the breaker's poles, then across the lineup", () => {
  const [own, across] = picturesOf(table("contact"), 0, messages);
  expect(own?.names).toEqual(["L1", "L2", "L3"]);
  expect(across?.title).toContain("across the lineup");
  expect(across?.names?.length).toBe(4 * 3);
});

test("excitation: the curve with its knee; insulation over time: the curve", () => {
  const [curve] = picturesOf(table("excitation"), 0, messages);
  expect(curve?.along).toEqual({ header: "Exciting current, A", log: true });
  expect(curve?.series.map(({ points }) => points.length)).toEqual([10, 2]);
  const knee = Number(table("excitation").judged[0]?.knee);
  expect(curve?.series[1]?.points.map((point) => point?.[1])).toEqual([knee, knee]);
});

test("before and after are joined name by name", () => {
  const [own] = picturesOf(table("insulation"), 0, messages);
  const joins = own?.series.find(({ shape }) => shape === "joins")?.points ?? [];
  expect(joins.length).toBe(3 * (own?.names?.length ?? 0));
  for (let at = 0; at < joins.length; at += 3) {
    expect(joins[at]?.[0]).toBe(joins[at + 1]?.[0]);
    expect(joins[at + 2]).toBeUndefined();
  }
});

test("every reading of a picture knows its row", () => {
  const contact = table("contact");
  const [own, across] = picturesOf(contact, 4, messages);
  for (const picture of [own, across])
    for (const point of picture?.series[0]?.points ?? []) {
      const row = contact.judged[point?.[2] ?? -1];
      expect(row?.corrected).toBe(point?.[1]);
      expect(picture?.names?.[point?.[0] ?? -1]).toContain(String(row?.pole));
    }
});

test("operating times: the poles within the maker's window, then how far apart they lie", () => {
  const timing = table("timing");
  const [poles, spread] = picturesOf(timing, 0, messages);
  expect(poles?.names).toEqual(["L1", "L2", "L3"]);
  expect(poles?.series[0]?.points.map((point) => point?.[1])).toEqual(
    ["l1", "l2", "l3"].map((id) => timing.judged[0]?.[id]),
  );
  expect(spread?.upward.header).toBe("Pole spread ms");
  const { least, most } = timing.judged[0] ?? {};
  const limits = poles?.series.filter(({ shape }) => shape === "limit") ?? [];
  expect(limits.map(({ points }) => points.map((point) => point?.[1]))).toEqual(
    [least, most].filter((one) => typeof one === "number").map((one) => [one, one, one]),
  );
});

test("a curve measured up and down is two sweeps, each with its points", () => {
  const excitation = table("excitation");
  const volts = [10, 40, 80, 110, 130, 140, 120, 90, 50, 20];
  const turned = {
    ...excitation.judged[0],
    ...Object.fromEntries(volts.map((volt, at) => [`v${at + 1}`, volt])),
    knee: null,
  };
  const [curve] = picturesOf({ ...excitation, judged: [turned] }, 0, messages);
  expect(curve?.series.map(({ name, points }) => `${name} ${points.length}`)).toEqual([
    "Rising voltage 6",
    "Falling voltage 5",
  ]);
});

test("the report's plot: every reading within its panel, by its result, under its own limit as a step", () => {
  const contact = table("contact");
  const { report } = messagesFor("en");
  const order = ["=K0002", "=K0001", "=K0003", "=K0004"];
  const picture = panelsPicture(contact, order, report);
  expect(picture?.names).toEqual(order);
  const series = picture?.series ?? [];
  const points = series.filter(({ shape }) => shape === "points");
  expect(points.flatMap((one) => one.points)).toHaveLength(contact.judged.length);
  for (const { look, points: some } of points)
    for (const point of some) {
      const row = contact.judged[point?.[2] ?? -1] ?? {};
      expect(picture?.names?.[Math.floor(point?.[0] ?? -1)]).toBe(row.object);
      expect(row.result).toBe(
        { pass: "Pass", fail: "Fail", inconclusive: "Inconclusive", above: row.result }[
          look ?? "above"
        ],
      );
      expect(point?.[1]).toBe(row.corrected);
    }
  const limit = series.find(({ shape }) => shape === "limit")?.points ?? [];
  // Both ends of each step, and the pen lifted before each panel.
  expect(limit.filter((point) => point === undefined)).toHaveLength(order.length);
  const ends = limit.filter((point) => point !== undefined);
  const limited = contact.judged.filter(({ maximum }) => typeof maximum === "number");
  expect(limited.length).toBeGreaterThan(order.length);
  expect(ends).toHaveLength(2 * limited.length);
  for (const [x, y] of ends) {
    const object = picture?.names?.[Math.floor(x)];
    expect(limited.some((row) => row.object === object && row.maximum === y)).toBe(true);
  }
  const { svg = "", upward } = plotSvg(contact, order, report) ?? {};
  expect(upward).toBe("R at 20 °C µΩ");
  expect(svg).not.toContain("url(");
  for (const name of order) expect(svg).toContain(`>${name}<`);
});

test("limits are as wide as their names, and step where they differ", () => {
  expect(
    steps([
      [1, 30],
      [0, 20],
      [3, 40],
    ]),
  ).toEqual([[0, 20], [1, 20], [1, 30], [2, 30], undefined, [3, 40], [4, 40]]);
});

const number = (value: number) => String(value);

test.each(["insulation", "contact", "timing", "excitation"])(
  "%s: every name and title of its pictures stands whole at 320 px",
  (kind) => {
    for (const picture of picturesOf(table(kind), 0, messages)) {
      const look = { width: 280, ink: "#000", number };
      const { width, height } = pictureLayout(picture, look);
      const chart = echarts.init(null, null, { renderer: "svg", ssr: true, width, height });
      chart.setOption(pictureOption(picture, look));
      const svg = chart.renderToSVGString();
      chart.dispose();
      const texts = [...svg.matchAll(/<text([^>]*)>([^<]*)</g)];
      const shown = texts.map(([, , text]) => text);
      const legend = picture.series.filter(({ shape }) => shape !== "joins");
      for (const words of [
        ...(picture.names ?? []),
        ...legend.map(({ name }) => name),
        ...(picture.along ? [picture.along.header] : []),
      ])
        expect(shown).toContain(words);
      for (const [, place = "", text = ""] of texts) {
        const of = (pattern: RegExp) => pattern.exec(place)?.[1]?.split(/[ ,]+/).map(Number) ?? [];
        const matrix = of(/matrix\(([^)]*)\)/);
        const [x = 0, y = 0] = matrix.length > 0 ? matrix.slice(4) : of(/translate\(([^)]*)\)/);
        const isTurned = matrix.length > 0;
        const [left, top] = [x + (of(/ x="([^"]*)"/)[0] ?? 0), y + (of(/ y="([^"]*)"/)[0] ?? 0)];
        // A letter is at least so wide; what is turned ends at its axis, and begins as far below as it is long.
        const length = text.length * 5;
        expect(left, text).toBeGreaterThanOrEqual(0);
        expect(left, text).toBeLessThanOrEqual(width);
        expect(top, text).toBeGreaterThanOrEqual(0);
        expect(top + (isTurned ? length : 0), text).toBeLessThanOrEqual(height);
      }
    }
  },
);

test("a saved picture has its title and stands on white", () => {
  const [own] = picturesOf(table("contact"), 0, messages);
  if (!own) throw new Error("no picture");
  const svg = pictureSvg(own, number);
  expect(svg).toContain(`>${own.title}<`);
  expect(svg).toContain(`>${own.upward.header}<`);
  expect(svg).toMatch(/fill="(?:#ffffff|rgb\(255,255,255\))"/);
});

test("a row without readings has no picture", () => {
  const blank = check(memoryBook(filledPlan(longLineup(1), 1, {})).snapshot, 46_400);
  if (!blank.ok) throw new Error();
  for (const one of blank.report.context.tables)
    for (const at of one.rows.keys())
      expect(picturesOf(one, at, messages).filter(({ series }) => series.length > 1)).toEqual([]);
});
