import { readFileSync } from "node:fs";
import { decode } from "../../src/intake/decode";
import { placeReadings } from "../../src/intake/place";
import { readExport } from "../../src/intake/readExport";
import { contact } from "../../src/records/contact";
import { longLineup } from "../support/lineups";
import { PANELS } from "./csvFile";
import { report } from "./report";

const bytes = readFileSync(process.argv[2] ?? "");
const tables = [{ kind: contact, rows: contact.rows(longLineup(PANELS)) }];
const start = performance.now();
const decoded = decode(bytes);
if (!decoded.ok) throw new Error(decoded.reason);
const read = readExport(decoded.value.text, { name: "bench.csv" });
if (!read.ok) throw new Error(read.reason);
const inspected = performance.now();
const { placed, unplaced } = placeReadings(read.value, tables, { replace: false });
report(
  start,
  `${placed.length} cells placed, ${unplaced.length} not; inspection ${((inspected - start) / 1000).toFixed(2)} s`,
);
