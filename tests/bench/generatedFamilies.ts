import { cleanBooks, type FamilyResult, faultRun } from "../support/faultRun";
import { tableText } from "./tableText";

/** So many faults of every generated family put in, asked for and put into words. */
export function generatedFamilies(each: number): { text: string; missed: string[] } {
  const books = cleanBooks();
  const rows = books.reduce(
    (sum, { report }) => sum + Object.values(report.counts).reduce((one, count) => one + count, 0),
    0,
  );
  const clean = books.reduce((sum, { report }) => sum + report.findings.length, 0);
  const results = faultRun(books, each);
  const sum = (of: (one: FamilyResult) => number) =>
    results.reduce((total, one) => total + of(one), 0);
  const [injected, found] = [sum((one) => one.injected), sum((one) => one.found)];
  const text = [
    `${injected} single faults in ${books.length} clean generated workbooks of ${rows} rows over every record kind (invented data, the same on every run): ${((100 * found) / injected).toFixed(2)} % found by the right rule at the right cell. Findings on the clean workbooks: ${clean}. A false alarm is a finding on a row that the fault does not touch, by a rule that does not look across rows.`,
    "",
    tableText([
      ["fault", "put in", "found", "false alarms", "found by"],
      ...results.map((one) => [
        one.family,
        String(one.injected),
        String(one.found),
        String(one.alarms),
        one.rules.join(", "),
      ]),
      ["all", String(injected), String(found), String(sum((one) => one.alarms)), ""],
    ]),
    "",
    "Not found are faults that no rule can tell from a sound reading: a unit taken for its neighbour, or a reading far from its group, where too few are there to compare with or their own spread reaches so far.",
  ].join("\n");
  const missed = results.flatMap(({ family, missed }) =>
    missed.map(({ sheet, addresses }) => `${family}: ${sheet}!${addresses.join(" or ")}`),
  );
  return { text, missed };
}
