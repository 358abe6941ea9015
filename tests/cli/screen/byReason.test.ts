import { expect, test } from "vitest";
import { byReason } from "../../../src/cli/screen/byReason";
import { english } from "../../support/inWords";

test("lines with one reason are told once, in the order in which the reasons come", () => {
  expect(
    byReason(
      [
        { line: 3, reason: () => "no unit." },
        { line: 9, reason: () => "no panel." },
        { line: 5, reason: () => "no unit." },
        { line: 4, reason: () => "no unit." },
        { line: 4, reason: () => "no unit." },
      ],
      english,
    ),
  ).toEqual(["lines 3 to 5: no unit.", "line 9: no panel."]);
});
