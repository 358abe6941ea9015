import { readFileSync } from "node:fs";
import { placeReadings } from "../../src/intake/place/placeReadings";
import { readExport } from "../../src/intake/table/readExport";
import { decode } from "../../src/intake/text/decode";
import { contact } from "../../src/records/kinds/contact";
import { english } from "../support/inWords";
import { longLineup } from "../support/lineups";
import { PANELS } from "./csvFile";
import { report } from "./report";

const tables = [{ kind: contact, rows: contact.rows(longLineup(PANELS)) }];
const start = performance.now();
const seconds = (from: number, to: number) => `${((to - from) / 1000).toFixed(2)} s`;
const decoded = decode(readFileSync(process.argv[2] ?? ""));
if (!decoded.ok) throw new Error(decoded.say(english));
const inspecting = performance.now();
const read = readExport(decoded.value.text, { name: "bench.csv" });
if (!read.ok) throw new Error(read.say(english));
const placing = performance.now();
const { placed, unplaced } = placeReadings(read.value, tables, { replace: false });
report(
  start,
  `${placed.length} cells placed, ${unplaced.length} not; read and decoded in ${seconds(start, inspecting)}, inspected in ${seconds(inspecting, placing)}, placed in ${seconds(placing, performance.now())}`,
);
