import { createWriteStream } from "node:fs";
import { contact } from "../../src/records/contact";
import { longLineup } from "../support/lineups";

/** Panels of the invented lineup whose contacts the export of the bench tells again and again. */
export const PANELS = 2000;

/**
 * Writes an export of so many lines, the same readings over and over as overlapping exports have them.
 *
 * @param numbered whether each line has a number of its own, so that no two are the same word for word
 */
export async function writeExport(file: string, lines: number, numbered = false): Promise<void> {
  const rows = contact
    .rows(longLineup(PANELS))
    .filter(({ part }) => String(part).startsWith("Breaker"));
  const out = createWriteStream(file);
  out.write(numbered ? "No.;" : "");
  out.write("Panel;Part;Pole;R (µΩ);Temperature (°C);Test current (A);Date;Tested by\n");
  let text = "";
  for (let line = 0; line < lines; line++) {
    const { object, part, pole } = rows[line % rows.length] ?? {};
    const at = line % rows.length;
    if (numbered) text += `${line + 1};`;
    text +=
      `${object};${part};${pole};${20 + (at % 300) / 10 + 0.05};${15 + (at % 90) / 10};200;2026-11-0${1 + (at % 9)};Crew 2\n`.replace(
        /\./g,
        ",",
      );
    if (text.length > 1 << 20) {
      if (!out.write(text)) await new Promise((done) => out.once("drain", () => done(undefined)));
      text = "";
    }
  }
  await new Promise((done) => out.end(text, () => done(undefined)));
}
