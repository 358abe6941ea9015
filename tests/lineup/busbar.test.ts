import { expect, test } from "vitest";
import { busJoints } from "../../src/lineup/busbar";
import type { Panel } from "../../src/lineup/lineup";
import { contact } from "../../src/records/kinds/contact";
import { longLineup, sampleLineup } from "../support/lineups";

/** A lineup of panels as `section type`, named by where they stand; a feeder where no type is said. */
const standing = (...panels: readonly string[]) => {
  const lineup = longLineup(panels.length);
  return {
    ...lineup,
    panels: lineup.panels.map((panel, at): Panel => {
      const [section = "", type = "feeder"] = panels[at]?.split(/ (.+)/) ?? [];
      return { ...panel, designation: String(at + 1), section, type: type as Panel["type"] };
    }),
  };
};
const joints = (...panels: readonly string[]) =>
  busJoints(standing(...panels)).map(
    ({ left, right }) => `${left.designation}-${right.designation}`,
  );

test.each([
  [
    ["A", "A", "A"],
    ["1-2", "2-3"],
  ],
  [["A", "B", "A"], ["1-3"]],
  [
    ["A", "B", "A", "B"],
    ["1-3", "2-4"],
  ],
  [
    ["A", "A bus coupler", "B riser", "B"],
    ["1-2", "2-3", "3-4"],
  ],
  [
    ["A riser", "A", "B bus coupler", "B"],
    ["1-2", "1-3", "3-4"],
  ],
  [
    ["A", "A bus coupler", "B"],
    ["1-2", "2-3"],
  ],
  [
    ["A bus coupler", "B riser", "B bus coupler", "C riser"],
    ["1-2", "2-3", "3-4"],
  ],
  [["A bus coupler", "A"], ["1-2"]],
  [["A", "B"], []],
])("%j: joints %j", (panels, found) => {
  expect(joints(...panels)).toEqual(found);
});

test("the link from coupler to riser has its contact rows", () => {
  const rows = contact.rows(sampleLineup()).filter(({ part }) => part === "Joint to =H06");
  expect(rows.map(({ object, pole }) => `${object} ${pole}`)).toEqual([
    "=H05 L1",
    "=H05 L2",
    "=H05 L3",
  ]);
});
