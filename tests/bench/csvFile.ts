import { createWriteStream } from "node:fs";
import { contact } from "../../src/records/kinds/contact";
import { longLineup } from "../support/lineups";

/** Panels of the invented lineup whose contacts the export of the bench tells again and again. */
export const PANELS = 2000;

/** What lines have besides their readings: nothing, a running number, or the second at which they were taken. */
export type Lines = "said again" | "numbered" | "timed";

/**
 * Writes an export of so many lines, the same readings over and over as overlapping exports have them.
 */
export async function writeExport(file: string, lines: number, kind: Lines): Promise<void> {
  const rows = contact
    .rows(longLineup(PANELS))
    .filter(({ part }) => String(part).startsWith("Breaker"));
  const out = createWriteStream(file);
  out.write(kind === "numbered" ? "No.;" : "");
  out.write("Panel;Part;Pole;R (µΩ);Temperature (°C);Test current (A);Date;Tested by");
  out.write(kind === "timed" ? ";Time\n" : "\n");
  let text = "";
  for (let line = 0; line < lines; line++) {
    const { object, part, pole } = rows[line % rows.length] ?? {};
    const at = line % rows.length;
    if (kind === "numbered") text += `${line + 1};`;
    text +=
      `${object};${part};${pole};${20 + (at % 300) / 10 + 0.05};${15 + (at % 90) / 10};200;2026-11-0${1 + (at % 9)};Crew 2`.replace(
        /\./g,
        ",",
      );
    text += kind === "timed" ? `;${clock(line)}\n` : "\n";
    if (text.length > 1 << 20) {
      if (!out.write(text)) await new Promise((done) => out.once("drain", () => done(undefined)));
      text = "";
    }
  }
  await new Promise((done) => out.end(text, () => done(undefined)));
}

/** The time of day, a second later with each line. */
const clock = (second: number) => new Date((second % 86_400) * 1000).toISOString().slice(11, 19);
