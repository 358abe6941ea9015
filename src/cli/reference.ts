import { writeFileSync } from "node:fs";
import { referenceText } from "./reference/referenceText";

/** `npm run docs`: writes the reference of worksheet functions and criteria. */
const FILE = "src/functions/REFERENCE.md";
writeFileSync(FILE, await referenceText());
process.stdout.write(`${FILE} written\n`);
