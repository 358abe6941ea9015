import { writeFileSync } from "node:fs";
import { rulesText } from "../tools/reference/rulesText";
import {
  auditorsFamily,
  fifthFamily,
  fourthFamily,
  secondFamily,
  thirdFamily,
} from "./auditorsFamily";
import { generatedFamilies } from "./generatedFamilies";

/**
 * `npm run bench:faults [each]`: puts so many single faults of every generated family (100) into clean
 * generated workbooks, and every fault of an auditor's own into the one that he wrote them for, one at a
 * time; asks whether each is found where it has to be, prints both tables and writes them into the
 * reference of the rules.
 */
async function main(): Promise<void> {
  const families = [
    generatedFamilies(Number(process.argv[2] ?? 100)),
    await auditorsFamily(),
    await secondFamily(),
    await thirdFamily(),
    await fourthFamily(),
    await fifthFamily(),
  ];
  const text = families.map((family) => family.text).join("\n\n");
  process.stdout.write(`${text}\n`);
  for (const one of families.flatMap(({ missed }) => missed))
    process.stdout.write(`missed: ${one}\n`);
  if (process.argv[2] !== undefined) return;
  writeFileSync(REFERENCE, rulesText(text));
  process.stdout.write(`written into ${REFERENCE}\n`);
}

const REFERENCE = "src/check/REFERENCE.md";
main().catch((error: unknown) => {
  process.stderr.write(`${String(error)}\n`);
  process.exitCode = 1;
});
