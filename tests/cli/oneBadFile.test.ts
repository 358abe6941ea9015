import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { usageError } from "../../src/cli/files/files";
import type { FileReport } from "../../src/cli/jobs/checkFile";
import { runJob } from "../../src/cli/jobs/checkJob";
import { runJobs } from "../../src/cli/runJobs";
import { BookError } from "../../src/sheets/bookError";
import { planFor } from "../../src/sheets/plan/plan";
import { readBook, writeBook } from "../../src/xlsx/file";
import { markFile } from "../../src/xlsx/writeMarks";
import { attackBook, cell, changedBook } from "../support/attackBook";
import { run } from "../support/commandLine";
import { longLineup } from "../support/lineups";

/** One bad file costs itself alone: it is one entry with an error, and the command ends with exit code 2. */
const folder = mkdtempSync(join(tmpdir(), "gearproof-bad-"));
const at = (...names: string[]) => join(folder, ...names);
const OWN = attackBook({});
const joins = (...refs: string[]) =>
  `<mergeCells>${refs.map((ref) => `<mergeCell ref="${ref}"/>`).join("")}</mergeCells>`;

/** Rows of texts that are all different, and pack badly. */
const scattered = (rows: number) =>
  Array.from(
    { length: rows },
    (_, row) => `<row>${cell(`A${row + 1}`, ((row * 2_654_435_761) >>> 0).toString(36))}</row>`,
  ).join("");

/** What ordinary and broken workbooks hold, none of which is a reason not to be read. */
const ODD: Readonly<Record<string, () => Promise<Uint8Array> | Uint8Array>> = {
  "links over several cells": () =>
    attackBook({
      inSheet: `${joins("A3:B3")}<hyperlinks><hyperlink ref="A3:B3" location="Own!A1"/><hyperlink ref="A4:C4 B5" location=""/><hyperlink ref="C5" r:id="rId99"/></hyperlinks>`,
    }),
  "joins of no cells, of nonsense and of one another": () =>
    attackBook({
      inSheet: joins("", "A", "A7:", "ZZZZ1:A9", "A0:B0", "B9:A8", "A8:B9", "B9:C10", "#REF!"),
    }),
  "custom XML that is broken off": () =>
    attackBook({ customXml: '<gearproof xmlns="urn:gearproof:memory:1">{"panels": [' }),
  "custom XML that is none": () =>
    attackBook({ customXml: "urn:gearproof:remembered:1 <gearproof >deflate:?!</gearproof>" }),
  "custom XML that says something else": () =>
    attackBook({
      customXml: '<gearproof xmlns="urn:gearproof:memory:1">[1, null, {"panels": 7}]</gearproof>',
    }),
  "our memory spoilt": () =>
    changedBook({ "customXml/item1.xml": (text) => text.replace(/\{/g, "[") }),
};

describe.each(Object.entries(ODD))("%s", (_what, make) => {
  test("is read, marked, cleared and built onto", async () => {
    const file = await make();
    expect((await readBook(file)).sheets.length).toBeGreaterThan(0);
    const marked = await markFile(file, [
      { rule: "future-date", weight: "stop", sheet: "Own", address: "A3", message: "invented" },
    ]);
    expect((await readBook(await markFile(marked, []))).sheets.length).toBeGreaterThan(0);
    const { file: built } = await writeBook(planFor(longLineup(1)), file);
    expect((await readBook(built)).sheets.length).toBeGreaterThan(10);
  });
});

describe("a folder with bad files among the good", () => {
  beforeAll(async () => {
    mkdirSync(at("many", "below"), { recursive: true });
    writeFileSync(at("many", "1-good.xlsx"), OWN);
    writeFileSync(at("many", "2-half.xlsx"), OWN.subarray(0, OWN.length / 2));
    writeFileSync(at("many", "3-text.xlsx"), "Panel;Pole\n");
    writeFileSync(at("many", "below", "4-good.xlsx"), OWN);
    mkdirSync(at("many", "below", "5-folder.xlsx"));
    // Two links back to the top: without a memory of where it was, a walk doubles at each step.
    symlinkSync(at("many"), at("many", "below", "round"));
    symlinkSync(at("many"), at("many", "below", "about"));
    symlinkSync(at("nowhere.xlsx"), at("many", "6-nowhere.xlsx"));
  });

  test("each is an entry, the bad ones with an error, and the exit code is 2", async () => {
    const { code, out } = await run("check", at("many"), "--json");
    expect(code).toBe(2);
    const files = JSON.parse(out).files as FileReport[];
    expect(files.map(({ file, error }) => [file.slice(at("many").length + 1), error])).toEqual([
      ["1-good.xlsx", undefined],
      ["2-half.xlsx", expect.stringMatching(/^is damaged or not a workbook/)],
      ["3-text.xlsx", expect.stringMatching(/^is not a workbook/)],
      ["6-nowhere.xlsx", "no such file"],
      ["below/4-good.xlsx", undefined],
    ]);
  });

  test("a worker that ends for want of room costs the workbook in its hand alone", async () => {
    const room = { maxOldGenerationSizeMb: 60, maxYoungGenerationSizeMb: 16 };
    writeFileSync(at("large.xlsx"), attackBook({ rows: scattered(400_000) }));
    const names = [at("many", "1-good.xlsx"), at("large.xlsx"), at("many", "below", "4-good.xlsx")];
    const jobs = names.map((book) => ({ book, day: 46_400, whole: false }));
    const told: string[] = [];
    const checked = await runJobs(
      jobs,
      ({ report }) => told.push(report.file),
      1,
      () => room,
    );
    expect(told.length).toBe(3);
    expect(checked.map(({ report }) => report.error)).toEqual([
      undefined,
      expect.stringMatching(/^needs more memory than it was given/),
      undefined,
    ]);
  });
});

test("whatever is thrown over a workbook is its error, in words of ours", async () => {
  writeFileSync(at("good.xlsx"), OWN);
  const job = {
    book: at("good.xlsx"),
    day: 46_400,
    whole: false,
    // Asked for while the workbook is opened.
    get lineup(): string {
      throw new TypeError("x is not a function");
    },
  };
  const { report } = await runJob(job);
  expect(report).toEqual({
    file: at("good.xlsx"),
    error: expect.stringMatching(
      /^could not be worked through, by a fault of Gearproof's own \(TypeError: x is not a function\)/,
    ),
  });
});

test("what is known is told as it is, with its file", () => {
  expect(usageError(new BookError(() => "is empty"), "a.xlsx").message).toBe("a.xlsx: is empty");
  expect(usageError("bare").message).toMatch(/fault of Gearproof's own \(bare\)/);
});
