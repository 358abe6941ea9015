import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { unzipSync } from "fflate";
import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, beforeAll, expect, test } from "vitest";
import { handOver } from "../../src/cli/handover";
import { verify } from "../../src/cli/verify";
import { bookFile, type FileSource } from "../../src/excel/bookFile";
import { messagesFor } from "../../src/messages/messages";
import { type Folder, makeFolder, plainName } from "../../src/pane/handOver/makeFolder";
import { writePdf } from "../../src/pane/handOver/writePdf";
import { today } from "../../src/quantities/today";
import { fileOfBook } from "../../src/standin/bench/bookFile";
import { documentOf } from "../../src/standin/bench/office";
import { writeBook } from "../../src/xlsx/file";
import { builtExcel } from "../excel/excelSupport";
import { filledPlan, SOUND } from "../support/fill";
import { CONTACTS_ALONE, longLineup } from "../support/lineups";

const PHOTO = new TextEncoder().encode("an invented photo");
/** Few sheets; a remark names a photo, and a paper that nobody has. */
const plan = filledPlan(
  longLineup(2, {
    leaveOut: CONTACTS_ALONE,
  }),
  11,
  {
    GearContact: (row, next) => ({
      ...SOUND.GearContact?.(row, next),
      ...(row.pole === "L1" ? { remarks: "see pole.jpg and CAL-77.pdf" } : {}),
    }),
  },
);

let room: string;
let inPane: Folder;
const steps: string[] = [];

beforeAll(async () => {
  room = mkdtempSync(join(tmpdir(), "folder-"));
  const { file } = await writeBook(plan);
  writeFileSync(join(room, "bench.xlsx"), file);
  writeFileSync(join(room, "pole.jpg"), PHOTO);
  const { book } = await builtExcel(plan);
  const document = documentOf(() => fileOfBook(book));
  inPane = await makeFolder(
    await bookFile(document as unknown as FileSource),
    new Map([["pole.jpg", PHOTO]]),
    today(),
    messagesFor("en"),
    { writePdf, step: (step) => void steps.push(step) },
  );
}, 120_000);
afterAll(() => rmSync(room, { recursive: true, force: true }));

test("what the pane makes is a hand-over that verifies, each step told", async () => {
  const files = unzipSync(inPane.zip);
  for (const [name, bytes] of Object.entries(files)) {
    mkdirSync(dirname(join(room, name)), { recursive: true });
    writeFileSync(join(room, name), bytes);
  }
  const { changes, manifest } = await verify(join(room, inPane.name));
  expect(changes).toEqual([]);
  expect(manifest).toMatchObject({ from: "bench.xlsx", notFound: ["CAL-77.pdf"] });
  expect(steps).toEqual(["records.xlsx", "punch-list.xlsx", "report.pdf", "manifest.json"]);
  const pdf = await getDocumentProxy(
    new Uint8Array(readFileSync(join(room, inPane.name, "report.pdf"))),
  );
  const { text } = await extractText(pdf, { mergePages: true });
  expect(text.replace(/\s+/g, "")).toContain(manifest.fingerprint);
});

test("it says the same as what the command line makes of the same workbook", async () => {
  const { manifest } = await handOver(join(room, "bench.xlsx"), join(room, "handed"));
  expect(inPane.manifest.fingerprint).toBe(manifest.fingerprint);
  const alike = (one: typeof manifest) =>
    one.files
      .filter(({ name }) => /\.(json|csv|jpg)$/.test(name) || name === "punch-list.xlsx")
      .map(({ name, sha256 }) => `${name} ${sha256}`);
  expect(alike(inPane.manifest)).toHaveLength(4);
  expect(alike(inPane.manifest)).toEqual(alike(manifest));
  expect(inPane.manifest.files.map(({ name }) => name)).toEqual(
    manifest.files.map(({ name }) => name),
  );
});

test("a project's name becomes one that a file may have", () => {
  expect(plainName('11 kV "Quay": A/B? (invented)')).toBe("11-kV-Quay-A-B-invented");
  expect(plainName("Umspannwerk Süd")).toBe("Umspannwerk-Süd");
  expect(plainName("///")).toBe("handover");
});
