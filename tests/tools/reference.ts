import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { checkJsonSchema } from "../../src/cli/checkSchema";
import { recordsJsonSchema } from "../../src/cli/recordsSchema";
import { lineupJsonSchema, SCHEMA_FILE } from "../../src/lineup/lineupSchema";
import { guideText } from "./reference/guideText";
import { referenceText } from "./reference/referenceText";
import { faultsOf, rulesText } from "./reference/rulesText";
import { SAMPLE_FOLDER, sampleBooks } from "./sampleBooks";

/**
 * `npm run docs`: writes the references of worksheet functions and criteria and of the check's rules, the
 * schemas, and the sample workbooks.
 */
const FUNCTIONS = "src/functions/REFERENCE.md";
const RULES = "src/check/REFERENCE.md";
const before = existsSync(RULES) ? readFileSync(RULES, "utf8") : "";
const files: readonly (readonly [string, string | Uint8Array])[] = [
  [FUNCTIONS, await referenceText()],
  ["src/functions/guide.json", await guideText()],
  [RULES, rulesText(faultsOf(before))],
  ["src/cli/check.schema.json", checkJsonSchema()],
  [`${SAMPLE_FOLDER}/${SCHEMA_FILE}`, lineupJsonSchema()],
  ["src/cli/records.schema.json", recordsJsonSchema()],
  ...Object.entries(await sampleBooks()).map(
    ([name, bytes]) => [`${SAMPLE_FOLDER}/${name}`, bytes] as const,
  ),
];
for (const [file, text] of files) {
  writeFileSync(file, text);
  process.stdout.write(`${file} written\n`);
}
