import { expect, test } from "vitest";
import { equipmentSets, withSet } from "../../src/lineup/equipmentSets";
import { renamed } from "../../src/lineup/renamed";
import { checkLineup } from "../../src/records/readLineup";
import { longLineup } from "../support/lineups";

const core = (name: string, primaryA: number) => ({
  name,
  primaryA,
  secondaryA: 1,
  accuracy: "5P20",
});
const panel = (designation: string, ...cables: string[]) => ({
  designation,
  cables: cables.map((name) => ({ designation: name, ratedkV: 12 })),
});

test("panels with the same equipment have one set, their own designation left out of it", () => {
  const sets = equipmentSets(
    [
      panel("=H01", "=H01-W1"),
      panel("=H02", "=H02-W1"),
      panel("=H03", "W1", "W2"),
      panel("=H04"),
      { ...panel("=H05"), cables: [{ ratedkV: 12, designation: "=H05-W1", insulation: "" }] },
    ],
    "cables",
  );
  expect(sets).toEqual([
    {
      panels: [0, 1, 4],
      entries: [{ designation: "{panel}-W1", ratedkV: 12, knownAs: "{panel}-W1" }],
    },
    {
      panels: [2],
      entries: [
        { designation: "W1", ratedkV: 12, knownAs: "W1" },
        { designation: "W2", ratedkV: 12, knownAs: "W2" },
      ],
    },
  ]);
});

test("a set put into the panels that have it changes nothing", () => {
  const panels = [panel("=H01", "=H01-W1", "=H01-W2"), panel("=H02", "=H02-W1", "=H02-W2")];
  const [set] = equipmentSets(panels, "cables");
  for (const one of panels) {
    const knownAs = one.cables.map(({ designation }) => ({ designation, knownAs: designation }));
    expect(withSet(one, "cables", set?.entries ?? [])).toMatchObject(knownAs);
    expect(
      equipmentSets([{ ...one, cables: withSet(one, "cables", set?.entries ?? []) }], "cables")[0]
        ?.entries,
    ).toEqual(set?.entries);
  }
});

test("an entry renamed in the set is renamed in each panel, and takes its rows along", () => {
  const before = checkLineup({
    ...longLineup(3),
    panels: longLineup(3).panels.map((one) => ({ ...one, currentTransformers: [core("T1", 400)] })),
  });
  if (!before.ok) throw new Error(JSON.stringify(before.errors));
  const [set] = equipmentSets(before.value.panels, "currentTransformers");
  expect(set?.panels).toEqual([0, 1, 2]);
  const entries = (set?.entries ?? []).map((entry) => ({ ...entry, name: "TA1" }));
  const after = checkLineup({
    ...before.value,
    panels: before.value.panels.map((one) => ({
      ...one,
      currentTransformers: withSet(one, "currentTransformers", [...entries, core("TA2", 400)]),
    })),
  });
  if (!after.ok) throw new Error(JSON.stringify(after.errors));
  expect(after.value.panels[1]?.currentTransformers).toMatchObject([
    { name: "TA1", knownAs: "T1" },
    { name: "TA2" },
  ]);
  expect(after.value.panels[1]?.currentTransformers[1]).not.toHaveProperty("knownAs");
  // What was recorded for T1 is of TA1 now.
  expect(renamed(before.value, after.value).panels[2]?.currentTransformers).toEqual([
    core("TA1", 400),
  ]);
});

test("what a panel had under other names is new there", () => {
  const had = { designation: "K2", currentTransformers: [{ ...core("X", 100), knownAs: "X" }] };
  const put = withSet(had, "currentTransformers", [{ ...core("TA1", 400), knownAs: "TA1" }]);
  expect(put).toEqual([core("TA1", 400)]);
});

test("a short designation is left in names, and one that is part of a longer word", () => {
  const one = (designation: string, name: string) =>
    equipmentSets([{ designation, cables: [{ designation: name }] }], "cables")[0]?.entries[0];
  expect(one("1", "W1-1")).toMatchObject({ designation: "W1-1" });
  expect(one("K1", "K11-W1")).toMatchObject({ designation: "K11-W1" });
  expect(one("K1", "W/K1 a")).toMatchObject({ designation: "W/{panel} a" });
});
