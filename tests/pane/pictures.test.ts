import { expect, test } from "vitest";
import { messagesFor } from "../../src/messages/messages";
import { picturesOf } from "../../src/report/pictures";
import { check } from "../support/checkBook";
import { filledPlan, SOUND } from "../support/fill";
import { equipped, longLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";

const { plot } = messagesFor("en");
const checked = check(memoryBook(filledPlan(equipped(longLineup(4)), 5, SOUND)).snapshot, 46_400);
if (!checked.ok) throw new Error(checked.reason);
const table = (id: string) => {
  const found = checked.report.context.tables.find(({ kind }) => kind.id === id);
  if (!found) throw new Error(id);
  return found;
};

test("insulation: phases before and after, with the limit, on a logarithmic axis", () => {
  const [own, across] = picturesOf(table("insulation"), 0, plot);
  expect(own?.upward.log).toBe(true);
  expect(own?.series.map(({ name, line }) => `${name} ${line}`)).toEqual([
    "before false",
    "after false",
    "Minimum MΩ true",
  ]);
  expect(own?.names?.slice(0, 3)).toEqual(["L1-E", "L2-E", "L3-E"]);
  expect(own?.series[0]?.points.length).toBe(own?.names?.length);
  expect(across).toBeUndefined();
});

test("contact resistance: the breaker's poles, then across the lineup", () => {
  const [own, across] = picturesOf(table("contact"), 0, plot);
  expect(own?.names).toEqual(["L1", "L2", "L3"]);
  expect(across?.title).toContain("across the lineup");
  expect(across?.names?.length).toBe(4 * 3);
});

test("excitation: the curve with its knee; insulation over time: the curve", () => {
  const [curve] = picturesOf(table("excitation"), 0, plot);
  expect(curve?.along).toEqual({ header: "Exciting current, A", log: true });
  expect(curve?.series.map(({ points }) => points.length)).toEqual([10, 2]);
  const knee = Number(table("excitation").judged[0]?.knee);
  expect(curve?.series[1]?.points.map(([, height]) => height)).toEqual([knee, knee]);
});

test("a row without readings has no picture", () => {
  const blank = check(memoryBook(filledPlan(longLineup(1), 1, {})).snapshot, 46_400);
  if (!blank.ok) throw new Error();
  for (const one of blank.report.context.tables)
    for (const at of one.rows.keys())
      expect(picturesOf(one, at, plot).filter(({ series }) => series.length > 1)).toEqual([]);
});
