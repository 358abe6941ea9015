import { anyOf, plain } from "../../quantities/remarks/words";
import { WORK_WORDS } from "../../quantities/remarks/workWords";
import { type Row, verdictOf } from "../../records/kind";
import { overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";
import { remarksOf } from "./remarkContradicts";

const THINGS = anyOf(WORK_WORDS.flatMap(({ left }) => left.things));
const STILL = anyOf(WORK_WORDS.flatMap(({ left }) => left.still));
const SETTLED = anyOf(WORK_WORDS.flatMap(({ left }) => left.settled));

/** A remark that tells of something put in, lifted or taken out for a test, and still so. */
export const leftForTest: Rule = {
  id: "left-for-test",
  reads: "table",
  find: (table, context) => {
    const remarks = remarksOf(table, context);
    if (!remarks) return [];
    const says = context.text.rules["left-for-test"];
    const look = (row: number, _stored: Row, judged: Row): Finding[] => {
      // What is not in order by its answer, another rule tells.
      if (verdictOf(judged) === "Fail") return [];
      return remarks
        .of(row)
        .filter(({ text }) => isLeft(text))
        .slice(0, 1)
        .map(({ address, column, text }) => ({
          rule: "left-for-test",
          weight: table.kind.stages ? "stop" : "query",
          ...where(table, row, "remarks"),
          address,
          column,
          message: says.message(rowName(table, row), text.trim().slice(0, 160)),
          found: text.trim().slice(0, 80),
        }));
    };
    return overRows(table, look, remarks.rows).map(({ finding }) => finding);
  },
};

function isLeft(remark: string): boolean {
  const text = plain(remark);
  return STILL.test(text) && THINGS.test(text) && !SETTLED.test(text);
}
