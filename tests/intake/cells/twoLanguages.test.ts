import { expect, test } from "vitest";
import { listWord } from "../../../src/intake/cells/listWord";
import { isWord, verdictIn } from "../../../src/survey/words/sheetWords";

/** Sheets kept in two languages give each answer twice. */
const DISCHARGE = { type: "list", values: ["No", "Yes"], right: "No" } as const;

test.each([
  ["Non / No", "No"],
  ["oui/yes", "Yes"],
  ["Nein / No", "No"],
  ["Yes / No", undefined],
  ["withstood", "No"],
])("an answer in two languages: %s", (text, wanted) => {
  expect(listWord(text, DISCHARGE)).toBe(wanted);
});

test.each([
  ["Non / No", "no", true],
  ["non/no", "no", true],
  ["oui/yes", "no", false],
  ["oui/yes", "yes", true],
  ["Conforme / Pass", "pass", true],
  ["Pass / Fail", "pass", false],
  ["n/a", "no", false],
  ["n/a", "notApplicable", true],
] as const)("%s as %s: %s", (text, form, wanted) => {
  expect(isWord(text, form)).toBe(wanted);
});

test("a verdict in two languages is one", () => {
  expect(verdictIn("Conforme / Pass")).toBe("Pass");
  expect(verdictIn("Nicht bestanden / Fail")).toBe("Fail");
  expect(verdictIn("Pass / Fail")).toBeUndefined();
});
