import { readFileSync } from "node:fs";
import { openPackage } from "../../src/xlsx/package/package";
import { report } from "./report";

const bytes = readFileSync(process.argv[2] ?? "");
const start = performance.now();
const pack = openPackage(bytes);
let long = 0;
for (const name of pack.names) for await (const piece of pack.pieces(name)) long += piece.length;
report(start, `${(long / 1e6).toFixed(0)} MB`);
