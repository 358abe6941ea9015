import { expect, test } from "vitest";
import { isOtherLineup } from "../../src/lineup/isOtherLineup";
import { sampleLineup } from "../support/lineups";

const lineup = sampleLineup();
const { project, panels } = lineup;
const renamed = panels.map((panel) => ({ ...panel, designation: `${panel.designation}X` }));

test.each([
  ["a panel more", { panels: [...panels, ...renamed.slice(0, 1)] }, false],
  ["the project renamed", { project: { ...project, number: "1", name: "Other" } }, false],
  ["the number put right", { project: { ...project, number: "2" } }, false],
  ["no panel shared", { panels: renamed }, true],
  ["another name and number", { project: { ...project, name: "Other", number: "2" } }, true],
])("%s", (_what, change, other) => {
  const before = { ...lineup, project: { ...project, number: "1" } };
  const after = { ...before, ...change };
  expect(isOtherLineup(before, after)).toBe(other);
});
