import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { handOver } from "../../src/cli/handover";
import { REPORT } from "../../src/handover/manifest";
import { writeBook } from "../../src/xlsx/file";
import { filledPlan } from "../support/fill";
import { longLineup } from "../support/lineups";

/**
 * `npm run bench:handover [-- PANELS…]`: the hand-over of soundly filled lineups of so many panels (50, 100
 * and 200): processor time, time on the clock, the most memory that the process came to, and how many rows
 * and megabytes the report has.
 */
const sizes = process.argv.slice(2).map(Number);
const room = mkdtempSync(join(tmpdir(), "handover-"));
try {
  for (const panels of sizes.length > 0 ? sizes : [50, 100, 200]) {
    const book = join(room, `${panels}.xlsx`);
    writeFileSync(book, (await writeBook(filledPlan(longLineup(panels), 1))).file);
    const [start, before] = [performance.now(), process.cpuUsage()];
    const folder = join(room, `${panels}`);
    const { content } = await handOver(book, folder);
    const { user, system } = process.cpuUsage(before);
    const mega = statSync(join(folder, REPORT)).size / 1e6;
    process.stdout.write(
      `${panels} panels, ${content.rows.length} rows: ${((user + system) / 1e6).toFixed(1)} s of processor, ` +
        `${((performance.now() - start) / 1000).toFixed(1)} s on the clock, ` +
        `${Math.round(process.resourceUsage().maxRSS / 1024)} MB; report ${mega.toFixed(1)} MB\n`,
    );
  }
} finally {
  rmSync(room, { recursive: true, force: true });
}
