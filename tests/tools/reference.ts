import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { checkJsonSchema } from "../../src/cli/checkSchema";
import { referenceText } from "./reference/referenceText";
import { faultsOf, rulesText } from "./reference/rulesText";

/** `npm run docs`: writes the references of worksheet functions and criteria, and of the check's rules. */
const FUNCTIONS = "src/functions/REFERENCE.md";
const RULES = "src/check/REFERENCE.md";
const before = existsSync(RULES) ? readFileSync(RULES, "utf8") : "";
const files: readonly (readonly [string, string])[] = [
  [FUNCTIONS, await referenceText()],
  [RULES, rulesText(faultsOf(before))],
  ["src/cli/check.schema.json", checkJsonSchema()],
];
for (const [file, text] of files) {
  writeFileSync(file, text);
  process.stdout.write(`${file} written\n`);
}
