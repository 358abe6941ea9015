import { takesBack } from "../quantities/remarks/doubtIn";
import { answer } from "../quantities/result";
import { optional } from "./inputs";
import { spill } from "./spill";

/**
 * Whether a remark takes back the pass of its row: it tells of a flashover or breakdown, of a value estimated or not measured, of something defective, or of a test to be repeated. Negated words do not count, nor what was seen to since.
 * @customfunction DOUBTFUL
 * @param remark Remark, in English, German, French, Spanish, Portuguese or Arabic
 * @returns Yes or No
 * @example =GEAR.DOUBTFUL("Flashover at 28 kV, recovered") // "Yes"
 * @example =GEAR.DOUBTFUL("No flashover") // "No"
 */
export function doubtful(remark: unknown[][]): unknown[][] {
  return spill(
    [optional({ name: "Remark", cells: remark, read: (cell) => answer(String(cell)) }, "")],
    (text) => answer(takesBack(text) ? "Yes" : "No"),
  );
}
