import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readLineup } from "../../src/records/readLineup";
import { english } from "../support/inWords";
import { SAMPLE } from "../support/lineups";

const sample = () => JSON.parse(readFileSync(SAMPLE, "utf8"));
const errorsOf = (json: unknown) => {
  const read = readLineup(typeof json === "string" ? json : JSON.stringify(json));
  return read.ok ? [] : read.errors.map(({ path, message }) => `${path}: ${message(english)}`);
};

test("the invented lineup is sound, and says that it is invented", () => {
  expect(errorsOf(sample())).toEqual([]);
  expect(sample().note).toMatch(/invented/i);
  const types = sample().panels.map(({ type }: { type: string }) => type);
  expect(types.filter((type: string) => type === "incomer")).toHaveLength(2);
  expect(types).toEqual(expect.arrayContaining(["bus coupler", "riser", "metering", "feeder"]));
  const media = sample().panels.flatMap((panel: { breaker?: { medium: string } }) =>
    panel.breaker ? [panel.breaker.medium] : [],
  );
  expect(new Set(media)).toEqual(new Set(["vacuum", "SF6"]));
});

test("all errors come at once, each with its path", () => {
  const lineup = sample();
  lineup.basis = "ISO";
  lineup.ratings.voltagekV = 110;
  lineup.panels[1].breaker.ratedA = -1;
  lineup.panels[2].designation = "= h 01";
  lineup.panels[3].designation = "Bus A";
  lineup.criteria[0].applies = ["=H99"];
  lineup.instruments[1].id = "IR 1";
  lineup.instruments[2].due = "2020-01-01";
  lineup.panels[0].joints[1].name = "bus-bar";
  lineup.colour = "red";
  const errors = errorsOf(lineup);
  for (const start of [
    "basis:",
    "ratings.voltagekV: must be at most 72.5 kV",
    "panels[1].breaker.ratedA: must be more than zero",
    'panels[2].designation: two panels are named "= h 01" (the other is panels[0])',
    'panels[3].designation: "Bus A" is also the name of a bus section',
    'criteria[0].applies[0]: "=H99" is neither a panel nor a bus section',
    'panels[0].joints[1].name: two groups of joints are named "bus-bar" (the other is joints[0])',
    'instruments[1].id: two instruments are named "IR 1"',
    "instruments[2].due: due on 2020-01-01, before it was calibrated",
  ])
    expect(errors.some((error) => error.startsWith(start))).toBe(true);
  expect(errors.some((error) => error.includes("colour"))).toBe(true);
});

test.each([
  ["{", /^\(file\): is not JSON/],
  ["[]", /^\(file\): /],
  ["{}", /^project: /],
])("%s is refused with where and what", (text, message) => {
  expect(errorsOf(text)[0]).toMatch(message);
});

test("a byte-order mark is no error", () => {
  expect(errorsOf(`\uFEFF${JSON.stringify(sample())}`)).toEqual([]);
});
