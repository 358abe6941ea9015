// Lists every case that comes out other than it was signed: `npx tsx tests/verdicts/list.ts [PART OF AN ID…]`
// With parts of ids, each of these cases with its whole row.
import { readdirSync, readFileSync } from "node:fs";
import { judgeCase, type VerdictCase } from "./judgeCase";

const wanted = process.argv.slice(2);
let right = 0;
let all = 0;
for (const file of readdirSync("tests/verdicts/cases")) {
  for (const one of JSON.parse(
    readFileSync(`tests/verdicts/cases/${file}`, "utf8"),
  ) as VerdictCase[]) {
    const { got, row } = judged(one);
    const expected = [one.expect, ...one.acceptable];
    all += 1;
    if (expected.includes(got)) right += 1;
    if (wanted.length > 0 ? wanted.some((part) => one.id.includes(part)) : !expected.includes(got))
      console.log(`${one.id}: ${got}, signed ${expected.join(" or ")} — ${one.why}`);
    if (wanted.some((part) => one.id.includes(part))) console.log(row);
  }
}
console.log(`${right} of ${all} as signed`);

function judged(one: VerdictCase): ReturnType<typeof judgeCase> {
  try {
    return judgeCase(one);
  } catch (error) {
    return { got: `${error}` };
  }
}
