import { expect, test } from "vitest";
import { evaluate } from "../../../src/records/evaluate";
import type { Row } from "../../../src/records/kind";
import { excitation } from "../../../src/records/kinds/excitation";
import { equipped, longLineup } from "../../support/lineups";

/**
 * A curve whose knee can be told by hand: ln I = b·u + c·u²/2 with u = ln(V/100). By IEC 61869-2, 10 %
 * more voltage takes 50 % more current where b·ln 1.1 + c·(u·ln 1.1 + (ln 1.1)²/2) = ln 1.5.
 */
const [B, C] = [2, 8];
const STEP = Math.log(1.1);
const KNEE = 100 * Math.exp((Math.log(1.5) - B * STEP - (C * STEP ** 2) / 2) / (C * STEP));
const curve = (from: number, to: number, points = 10): Row =>
  Object.fromEntries(
    Array.from({ length: points }, (_, at) => from * (to / from) ** (at / (points - 1))).flatMap(
      (volts, at) => {
        const u = Math.log(volts / 100);
        return [
          [`v${at + 1}`, volts],
          [`a${at + 1}`, 0.01 * Math.exp(B * u + (C * u ** 2) / 2)],
        ];
      },
    ),
  );

const lineup = equipped(longLineup(2));
const row = (entries: Row, part = "2S1-2S2", object = "=K0001") =>
  evaluate(
    excitation,
    excitation.rows(lineup).map((one) => ({ ...one, ...entries })),
    lineup,
  ).find((one) => one.part === part && one.object === object) as Row;

test("rows for protective cores alone, each with the rule of its class", () => {
  expect([
    ...new Set(
      excitation
        .rows(equipped(longLineup(4)))
        .map(({ object, part, accuracy, rule }) => [object, part, accuracy, rule].join(" ")),
    ),
  ]).toEqual([
    "=K0001 2S1-2S2 5P20 IEC 10/50",
    "=K0001 3S1-3S2 PX IEC 10/50",
    "=K0002 2S1-2S2 5P20 IEC 10/50",
    "=K0003 2S1-2S2 5P20 IEC 10/50",
    "=K0004 1S1-1S2 10P IEC 10/50",
    "=K0004 2S1-2S2 5P20 IEC 10/50",
    "=K0004 3S1-3S2 C100 IEEE 45",
  ]);
});

test("the knee of a curve that is known in closed form, and the plate's least", () => {
  const found = row(curve(85, 180));
  expect(Number(found.knee) / KNEE).toBeCloseTo(1, 2);
  expect(found).toMatchObject({ kneeLeast: 100, result: KNEE >= 100 ? "Pass" : "Fail" });
  expect(KNEE).toBeGreaterThan(110);
});

test("a knee below the plate's least fails; without a least it is not judged", () => {
  const low = Object.fromEntries(
    Object.entries(curve(85, 180)).map(([id, value]) => [
      id,
      id.startsWith("v") ? Number(value) * 0.7 : value,
    ]),
  );
  expect(row(low)).toMatchObject({ result: "Fail" });
  const rows = evaluate(
    excitation,
    excitation.rows(equipped(longLineup(4))).map((one) => ({ ...one, ...curve(85, 180) })),
    equipped(longLineup(4)),
  );
  const core = rows.find(({ accuracy }) => accuracy === "10P");
  expect(core).toMatchObject({ kneeLeast: null, result: "Inconclusive" });
  expect(String(core?.sources)).toContain("none on the plate: type the maker's");
});

test("a curve that ends before its knee, or with a point half filled, gives none", () => {
  expect(row(curve(20, 60))).toMatchObject({ knee: "no knee", result: "Inconclusive" });
  expect(row({ ...curve(85, 180), a8: null })).toMatchObject({ knee: "no knee" });
  expect(row({ ...curve(85, 180), a8: 0.0001 })).toMatchObject({ knee: "no knee" });
});

test("six points are the fewest; fewer are missing", () => {
  expect(row(curve(85, 180, 6)).knee).toBeTypeOf("number");
  expect(row(curve(85, 180, 5)).result).toBe("Missing");
});

test("how the knee came about, on paper", () => {
  const found = row(curve(85, 180));
  const { working } = excitation.columns.find(({ id }) => id === "knee") ?? {};
  expect(working?.(found, lineup)).toMatch(
    /^IEC 10\/50 on 10 points, 85 V at .* to 180 V at .*: knee at 1\d\d/,
  );
  expect(working?.(row({}), lineup)).toBe("");
});

/**
 * 5P20, 10 VA, 1 A, R_ct 3 Ω: 250.6 V behind the winding (see the limiting voltage), where 5 % of 20 A, so 1 A,
 * is allowed. The current alone refutes the class; below the limit leakage may still, so that it proves nothing.
 */
test.each([
  ["more than its composite error", 300, 12, { atClassMost: 1, result: "Fail" }],
  ["less, and no knee asked for", 300, 0.1, { atClassMost: 1, result: "Inconclusive" }],
  ["a curve that ends before", 180, 1, { atClass: null, result: "Inconclusive" }],
])("a class P core whose plate gives its winding: %s", (_, most, amps, wanted) => {
  const core = {
    name: "T1",
    primaryA: 400,
    secondaryA: 1 as const,
    accuracy: "5P20",
    burdenVA: 10,
    windingOhm: 3,
  };
  const bare = longLineup(1);
  const plated = {
    ...bare,
    panels: bare.panels.map((panel) => ({ ...panel, currentTransformers: [core] })),
  };
  const points = Object.fromEntries(
    Array.from({ length: 10 }, (__, at) => [
      [`v${at + 1}`, (most * (at + 1)) / 10],
      [`a${at + 1}`, (amps * 0.4 ** (9 - at)) / 2],
    ]).flat(),
  );
  const [found] = evaluate(
    excitation,
    excitation.rows(plated).map((one) => ({ ...one, ...points })),
    plated,
  );
  expect(found?.classVolts).toBeCloseTo(250.599, 2);
  expect(found).toMatchObject(wanted);
});
