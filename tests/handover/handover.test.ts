import { generateKeyPairSync, type KeyObject } from "node:crypto";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { buildBook } from "../../src/cli/buildBook";
import { handOver, handoverWords } from "../../src/cli/handover";
import { intakeBook } from "../../src/cli/intakeBook";
import { recordsJsonSchema, recordsSchema } from "../../src/cli/recordsSchema";
import { repairBook } from "../../src/cli/repairBook";
import { verify } from "../../src/cli/verify";
import { exportsOf, isPlain } from "../../src/handover/exportsOf";
import { fingerprintOf } from "../../src/handover/fingerprint";
import type { HandedOver } from "../../src/handover/makeHandover";
import { recordLayout } from "../../src/handover/recordLayout";
import { openBook } from "../../src/intake/openBook";
import { evenParts } from "../../src/quantities/evenParts";
import { groupedBy } from "../../src/quantities/groupedBy";
import { cellAddress } from "../../src/sheets/cells/address";
import { punchTable } from "../../src/sheets/ours/punchSheet";
import type { RecordBook } from "../../src/sheets/recordBook";
import { readBook, writeCells } from "../../src/xlsx/file";

const EXPORT = "harbour-2-contact-resistance.txt";
let room: string;
let folder: string;
let made: HandedOver;

beforeAll(async () => {
  room = mkdtempSync(join(tmpdir(), "handover-"));
  folder = join(room, "handed");
  await buildBook("sample-workbooks/harbour-substation.lineup.json", join(room, "empty.xlsx"));
  const exported = join(room, EXPORT);
  writeFileSync(exported, readFileSync(`sample-workbooks/${EXPORT}`));
  // A failed test of one pole, a day before, which the export has again after the contact was cleaned.
  const [note = "", test = "", titles = ""] = readFileSync(exported, "utf8").split(/\r?\n/);
  const failed = "H01;Breaker Q0;1;200;91,4;18,5;01.11.2026;INV-0582;Crew 2 (invented)";
  writeFileSync(join(room, "first.txt"), [note, test, titles, failed, ""].join("\n"));
  const first = join(room, "first.xlsx");
  await intakeBook(join(room, "empty.xlsx"), [join(room, "first.txt")], first, { replace: false });
  const repaired = join(room, "repaired.xlsx");
  await repairBook(first, await failedCell(first), repaired, {
    cause: "Film on the contacts",
    work: "Breaker pole",
    done: "Contacts cleaned",
    by: "Crew 2 (invented)",
    date: "2026-11-02",
  });
  await intakeBook(repaired, [exported], join(room, "book.xlsx"), { replace: true });
  await withPapers(join(room, "book.xlsx"));
  for (const [name, key] of Object.entries(KEYS)) writeFileSync(join(room, `${name}.pem`), key);
  made = await handOver(join(room, "book.xlsx"), folder, { sign: join(room, "secret.pem") });
}, 120_000);
afterAll(() => rmSync(room, { recursive: true, force: true }));

const pair = generateKeyPairSync("ed25519");
const pem = (key: KeyObject) =>
  String(key.export({ type: key.type === "private" ? "pkcs8" : "spki", format: "pem" }));
const KEYS: Readonly<Record<string, string>> = {
  secret: pem(pair.privateKey),
  open: pem(pair.publicKey),
  other: pem(generateKeyPairSync("ed25519").publicKey),
};
const OPEN_KEY = () => join(room, "open.pem");
const OTHER_KEY = () => join(room, "other.pem");

/** An item of the punch list that names a photo, which stands beside the workbook, and a certificate, which does not. */
async function withPapers(book: string): Promise<void> {
  const bytes = readFileSync(book);
  const table = punchTable(await readBook(bytes));
  if (!table) throw new Error("no punch list");
  const column = (header: string) => table.headers.indexOf(header);
  const writes = [
    { row: 0, column: column("What"), value: "Bolt without its mark" },
    { row: 0, column: column("Photos, files"), value: "bolt-3.jpg; CAL-77.pdf; why?.jpg; aux.pdf" },
  ];
  writeFileSync(book, await writeCells(bytes, [{ table, writes }]));
  writeFileSync(join(room, "bolt-3.jpg"), "an invented photo");
  // Linux has such a file; nobody could unpack the folder elsewhere.
  writeFileSync(join(room, "why?.jpg"), "another");
}

/** The cell of the one reading that the first export has. */
async function failedCell(book: string): Promise<string> {
  const { tables } = openBook(await readBook(readFileSync(book)));
  const table = tables.find(({ kind }) => kind.id === "contact");
  const row = table?.rows.findIndex(({ reading }) => reading === 91.4) ?? -1;
  if (!table || row < 0) throw new Error("the failed reading is not there");
  return `${table.table.sheet}!${cellAddress(table.table, row, table.at.get("reading") ?? 0)}`;
}

/** The text of the report as a general PDF reader finds it, without spaces, which lines break at, and with one sign for micro. */
const textOf = async (file: string) => {
  const pdf = await getDocumentProxy(new Uint8Array(readFileSync(file)));
  const { text } = await extractText(pdf, { mergePages: false });
  return text;
};
const bare = (text: string) => text.normalize("NFKC").replace(/\s+/g, "");

/** Changes a file, verifies, and puts the file back. */
const afterChange = async (
  name: string,
  change: (bytes: Buffer) => Uint8Array | string,
  key?: string,
) => {
  const file = join(folder, name);
  const before = readFileSync(file);
  writeFileSync(file, change(Buffer.from(before)));
  try {
    return (await verify(folder, key)).changes;
  } catch (error) {
    return [(error as Error).message];
  } finally {
    writeFileSync(file, before);
  }
};

describe("a hand-over", () => {
  test("has every file that its manifest lists, the export that stands beside the workbook among them", async () => {
    const { manifest, changes } = await verify(folder);
    expect(changes).toEqual([]);
    expect(manifest.files.map(({ name }) => name)).toContain(`exports/${EXPORT}`);
    expect(manifest.final).toBe(false);
    expect(readdirSync(room).filter((name) => name.endsWith(".part"))).toEqual([]);
  });

  test("prints each row of records.json as one line: what it is of, its values in order, its result", async () => {
    const pages = bare((await textOf(join(folder, "report.pdf"))).join(" "));
    const told = made.content.rows.filter(({ state }) => state !== "open");
    expect(told.length).toBeGreaterThan(10);
    const groups = groupedBy(told, ({ panel, record }) => `${panel}|${record}`);
    for (const rows of groups.values()) {
      const { common, titles, lines } = recordLayout(rows, "Time");
      for (const [title, value] of common) expect(pages).toContain(bare(`${title}: ${value}`));
      // Of more columns than a page is wide, each is a line, with up to six rows across.
      const printed =
        titles.length <= 8
          ? lines.map(({ item, values, result }) => [item, ...values, result])
          : evenParts(lines, 6).flatMap((some) =>
              titles.map((title, at) => [title, ...some.map(({ values }) => values[at] ?? "")]),
            );
      for (const line of printed) expect(pages).toContain(bare(line.join("")));
    }
  });

  test("prints the reading that a retest took the place of, with its day and its export", async () => {
    const before = made.content.history.find(({ value }) => value === 91.4);
    expect(before).toMatchObject({ panel: "=H01", source: "first.txt line 4" });
    expect(before?.date).toBe("2026-11-01");
    const pages = bare((await textOf(join(folder, "report.pdf"))).join(" "));
    expect(pages).toContain("Readingsthatwerereplaced");
    expect(pages).toContain(
      bare(
        `${before?.column}${before?.value}${before?.date}${before?.source}${before?.replacedOn}`,
      ),
    );
  });

  test("prints a repair between what was found and what was left", async () => {
    const [repair] = made.content.repairs;
    expect(repair).toMatchObject({ panel: "=H01", found: "R µΩ 91.4; Fail", tested: "2026-11-01" });
    expect(repair).toMatchObject({ cause: "Film on the contacts", date: "2026-11-02" });
    expect(repair?.left).toMatch(/^R µΩ [\d.]+; Pass$/);
    const pages = bare((await textOf(join(folder, "report.pdf"))).join(" "));
    expect(pages).toContain("Failure,repair,retest");
    for (const words of [repair?.found, repair?.cause, repair?.left])
      expect(pages).toContain(bare(words ?? "nothing"));
  });

  test("says on every page that it is not final, and prints its fingerprint there", async () => {
    const pages = await textOf(join(folder, "report.pdf"));
    expect(pages.length).toBeGreaterThan(5);
    for (const [at, page] of pages.entries()) {
      expect(bare(page)).toContain(made.manifest.fingerprint);
      expect(page).toContain("NOT FINAL");
      expect(page).toContain(`page ${at + 1} of ${pages.length}`);
      expect(page).toContain("INV-2026-07 · revision B · ");
    }
    const cover = bare(pages[0] ?? "");
    for (const { revision, date, change } of made.content.lineup.project.revisions ?? [])
      expect(cover).toContain(bare(`${revision}${date}${change}`));
    expect(cover).toContain("Revisionhistory");
  });

  test("has a bookmark for each chapter and panel", async () => {
    const bytes = new Uint8Array(readFileSync(join(folder, "report.pdf")));
    const outline = await (await getDocumentProxy(bytes)).getOutline();
    const titles = outline.map(({ title }) => title);
    for (const title of ["Test report", "Summary", "=H01: records", "Punch list", "Cautions"])
      expect(titles).toContain(title);
  });

  test("has a workbook of values alone, which holds what records.json says", async () => {
    const frozen = openBook(await readBook(readFileSync(join(folder, "records.xlsx"))));
    for (const { table } of frozen.tables)
      for (let row = 0; row < table.rowCount; row++)
        for (const at of table.headers.keys()) expect(table.formula(row, at)).toBeUndefined();
    const csv = readFileSync(join(folder, "records.csv"), "utf8");
    const cells = made.content.rows.flatMap((row) => row.cells);
    expect(csv.trimEnd().split(/\r?\n/).length).toBeGreaterThan(cells.length);
  });

  test("takes its fingerprint of what is said, not of how it is written (RFC 8785)", async () => {
    const content = JSON.parse(readFileSync(join(folder, "records.json"), "utf8"));
    const turned = Object.fromEntries(Object.entries(content).reverse());
    expect(await fingerprintOf(turned)).toBe(made.manifest.fingerprint);
    // The canonical form of {"b":1,"a":2} is {"a":2,"b":1}; its hash by another program: sha256sum.
    expect(await fingerprintOf({ b: 1, a: 2 })).toBe(
      "d3626ac30a87e6f7a6428233b3c68299976865fa5508e4267c5415c76af7a772",
    );
  });
});

describe("what published rules ask of a report", () => {
  const asked = readFileSync("docs/report-contents.md", "utf8")
    .split("\n")
    .filter((line) => line.startsWith("| ") && !/^\| (point|---) /.test(line))
    .map((line) => line.split(" | "));

  test("is a list of points, each with the place that has it in the text of the PDF", async () => {
    const pages = bare((await textOf(join(folder, "report.pdf"))).join(" "));
    expect(asked.length).toBeGreaterThan(30);
    for (const [point, where = ""] of asked) {
      const places = [...where.matchAll(/`([^`]+)`/g)].map(([, place = ""]) => place);
      expect(places.length, point).toBeGreaterThan(0);
      for (const place of places.filter((one) => one !== "verify"))
        expect(pages.includes(bare(place)), `${point} ${place}`).toBe(true);
    }
  });
});

describe("records.json", () => {
  test("has the form that its published schema gives", () => {
    const read = JSON.parse(readFileSync(join(folder, "records.json"), "utf8"));
    expect(recordsSchema.safeParse(read).error).toBeUndefined();
    expect(recordsSchema.safeParse({ ...read, checked: 1 }).success).toBe(false);
    expect(JSON.parse(readFileSync("src/cli/records.schema.json", "utf8"))).toEqual(
      JSON.parse(recordsJsonSchema()),
    );
  });
});

describe("exports", () => {
  test("have the SHA-256 that was noted at intake; another file under the name of one is told", async () => {
    expect(made.manifest.noted?.[EXPORT]).toBe(
      made.manifest.files.find(({ name }) => name === `exports/${EXPORT}`)?.sha256,
    );
    const other = join(room, "other");
    mkdirSync(other);
    for (const name of ["book.xlsx", EXPORT])
      writeFileSync(join(other, name), readFileSync(join(room, name)));
    writeFileSync(join(other, EXPORT), `${readFileSync(join(room, EXPORT), "utf8")}\r\n`);
    const again = await handOver(join(other, "book.xlsx"), join(other, "handed"));
    const told = `exports/${EXPORT}: is not the file that was brought in`;
    expect(handoverWords("handed", again)).toContain(told);
    const { changes, notes } = await verify(join(other, "handed"));
    expect(changes).toEqual([]);
    expect(notes).toEqual([expect.stringContaining(told)]);
  }, 60_000);

  test("that the workbook names and that are not there are listed as not found", async () => {
    const moved = join(room, "moved");
    mkdirSync(moved);
    writeFileSync(join(moved, "book.xlsx"), readFileSync(join(room, "first.xlsx")));
    const alone = join(moved, "handed");
    const { manifest } = await handOver(join(moved, "book.xlsx"), alone, { paper: "letter" });
    expect(manifest.notFound).toEqual(["first.txt"]);
    expect((await verify(alone)).changes).toEqual([]);
    const pdf = await getDocumentProxy(new Uint8Array(readFileSync(join(alone, "report.pdf"))));
    // US Letter is 8.5 in by 11 in (ANSI/ASME Y14.1, size A), at 72 points an inch.
    expect((await pdf.getPage(1)).view).toEqual([0, 0, 612, 792]);
  }, 60_000);

  test("with names that a file cannot have are told and none of the folder; a name leads nowhere else", () => {
    const named = (...origins: string[]) =>
      exportsOf({
        snapshot: { sheets: [] },
        tables: [{ rows: origins.map((origin) => ({ origin })) }],
        remembered: {},
      } as unknown as RecordBook);
    const found = named(
      "meter.csv line 4",
      "../../secret.csv line 4 at 08:15",
      "what?.csv line 4",
      "a\u0000b.csv line 1",
      ".hidden line 2",
      "ends. line 3",
      "typed by hand",
    );
    expect(found).toEqual([
      ".hidden",
      "a\u0000b.csv",
      "ends.",
      "meter.csv",
      "secret.csv",
      "what?.csv",
    ]);
    expect(found.filter(isPlain)).toEqual(["meter.csv", "secret.csv"]);
  });
});

/** Every file that is handed over; the firm signs with its own key. */
const HANDED = [
  "records.json",
  "records.csv",
  "records.xlsx",
  "punch-list.xlsx",
  "report.pdf",
  `exports/${EXPORT}`,
  "exports/first.txt",
  "attachments/bolt-3.jpg",
  "manifest.json",
  "manifest.sig",
];

describe("verify", () => {
  test("knows every file that was handed over, and what was not found beside the workbook", () => {
    const files = [...made.files.keys()].sort();
    expect(files).toEqual([...HANDED].sort());
    expect(made.manifest.notFound).toEqual(["CAL-77.pdf", "aux.pdf", "why?.jpg"]);
  });

  test("says that the folder is as it was handed over, and signed by the owner of the key", async () => {
    expect(await verify(folder, OPEN_KEY())).toMatchObject({
      changes: [],
      signature: "The manifest is signed by the owner of the key.",
    });
    expect((await verify(folder)).signature).toContain("--key");
  });

  test.each(HANDED)("names %s, of which one byte was changed", async (name) => {
    const told = await afterChange(
      name,
      (bytes) => {
        const at = bytes.length >> 1;
        bytes[at] = (bytes[at] ?? 0) ^ 1;
        return bytes;
      },
      OPEN_KEY(),
    );
    expect(told.length).toBeGreaterThan(0);
    expect(
      told.some((line) => line.includes(name)),
      told.join("; "),
    ).toBe(true);
    // A file that nothing is made of is told by itself; the signature is of the manifest's bytes.
    const besides = told.filter((line) => !line.startsWith(`${name}:`));
    if (!["records.json", "manifest.json"].includes(name)) expect(besides).toEqual([]);
  });

  test("of a signature that is lost, or by another key, says so", async () => {
    expect((await verify(folder, OTHER_KEY())).changes).toEqual([
      "manifest.sig: is no signature of this manifest by the owner of the key",
    ]);
    const sig = join(folder, "manifest.sig");
    const before = readFileSync(sig);
    rmSync(sig);
    try {
      expect((await verify(folder, OPEN_KEY())).changes).toEqual([
        "manifest.sig: is missing, so that nobody has signed the manifest",
      ]);
    } finally {
      writeFileSync(sig, before);
    }
    await expect(verify(folder, join(room, "secret.pem"))).rejects.toThrow("no public Ed25519 key");
  });

  test("names the cell of the workbook whose reading was changed, and what it was", async () => {
    const bytes = readFileSync(join(folder, "records.xlsx"));
    const book = openBook(await readBook(bytes));
    const found = made.content.rows
      .filter(({ record }) => record === "contact")
      .flatMap((row) => row.cells)
      .find(({ role, value }) => role === "entry" && typeof value === "number");
    const table = book.tables.find(({ kind }) => kind.id === "contact");
    if (!found || !table) throw new Error("no contact resistance was handed over");
    const column = table.table.headers.indexOf(found.column);
    const row = Number(found.address.replace(/\D/g, "")) - table.table.top - 2;
    const other = Number(found.value) + 1;
    const written = await writeCells(bytes, [
      { table: table.table, writes: [{ row, column, value: other }] },
    ]);
    const changes = await afterChange("records.xlsx", () => written);
    expect(changes).toHaveLength(3);
    expect(changes[1]).toContain(`!${found.address} (`);
    expect(changes[1]).toContain(`handed over ${found.value}, now ${other}`);
    // The export that it was brought in from says so as well, with its line.
    expect(changes[2]).toMatch(new RegExp(`^exports/${EXPORT}: line \\d+ says ${found.value}, `));
    expect(changes[2]).toContain(`has ${other} in `);
  });

  test("compares readings again with the exports: the one that stands, and the one that a retest replaced", async () => {
    const line = (text: string, name: string) =>
      afterChange(`exports/${name}`, (bytes) => bytes.toString("utf8").replace(/;91,4;/, text));
    expect(await line(";19,4;", "first.txt")).toEqual([
      "exports/first.txt: was changed since it was handed over",
      expect.stringMatching(
        /^exports\/first\.txt: line 4 says 19\.4, the reading history of records\.xlsx has 91\.4 for Contacts!/,
      ),
    ]);
    const changes = await afterChange(`exports/${EXPORT}`, (bytes) =>
      bytes.toString("utf8").replace(/^(H01;Breaker Q0;1;200;)[\d,]+/m, "$199,9"),
    );
    expect(changes[1]).toMatch(/line 4 says 99\.9, records\.xlsx has [\d.]+ in Contacts!G5 /);
    expect(changes).toHaveLength(2);
  });

  test("says of how many rows an export does not say again what it said", async () => {
    const name = `exports/${EXPORT}`;
    const before = readFileSync(join(folder, name));
    writeFileSync(join(folder, name), "# Nothing that can be read\n");
    try {
      const { notes } = await verify(folder);
      expect(notes).toEqual([
        expect.stringMatching(
          /^exports\/.*: \d+ rows brought in from it could not be compared again/,
        ),
      ]);
    } finally {
      writeFileSync(join(folder, name), before);
    }
    expect((await verify(folder)).notes).toEqual([]);
  });

  test("names a criterion that was changed in the records", async () => {
    const changes = await afterChange("records.json", (bytes) => {
      const content = JSON.parse(bytes.toString("utf8"));
      content.lineup.criteria[0].value *= 2;
      return JSON.stringify(content);
    });
    expect(changes.join("\n")).toContain("criteria.0.value");
    expect(changes.join("\n")).toContain("the manifest says");
  });

  test("names what is missing and what was added", async () => {
    const added = join(folder, "note.txt");
    writeFileSync(added, "later");
    const csv = join(folder, "records.csv");
    const before = readFileSync(csv);
    rmSync(csv);
    try {
      expect((await verify(folder)).changes).toEqual([
        "records.csv: is missing",
        "note.txt: was not handed over",
      ]);
    } finally {
      writeFileSync(csv, before);
      rmSync(added);
    }
  });

  test("says of a folder without a manifest that it is no hand-over", async () => {
    await expect(verify(room)).rejects.toThrow("no hand-over that can be verified");
    expect(await afterChange("records.xlsx", () => "no workbook")).toContainEqual(
      expect.stringContaining("records.xlsx: cannot be compared"),
    );
  });
});

describe("what cannot be handed over", () => {
  test("leaves a folder that holds something as it is", async () => {
    const full = join(room, "full");
    mkdirSync(full);
    writeFileSync(join(full, "mine.txt"), "mine");
    await expect(handOver(join(room, "book.xlsx"), full)).rejects.toThrow("not an empty folder");
    expect(readdirSync(full)).toEqual(["mine.txt"]);
  });

  test("writes nothing where the workbook is damaged", async () => {
    const broken = join(room, "broken.xlsx");
    writeFileSync(broken, "no workbook");
    await expect(handOver(broken, join(room, "none"))).rejects.toThrow("broken.xlsx");
    expect(readdirSync(room)).not.toContain("none");
  });
});
