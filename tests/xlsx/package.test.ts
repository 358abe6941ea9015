import { deflateRawSync } from "node:zlib";
import fc from "fast-check";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { openPackage } from "../../src/xlsx/package/package";

/** Archives made by fflate, which writes none of what is tested here. */
const archive = (parts: Readonly<Record<string, string>>) =>
  zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])), {
    level: 6,
    mtime: new Date("2025-03-04T05:06:08"),
  });

const PARTS = {
  "[Content_Types].xml": "<Types/>",
  "xl/workbook.xml": "<workbook/>",
  "xl/worksheets/sheet1.xml": `<worksheet>${"<row/>".repeat(500)}</worksheet>`,
  "docProps/app.xml": "<Properties/>",
};

/** The records of the directory: where each stands, with its name (PKWARE's APPNOTE, 4.3.12). */
const directory = (file: Uint8Array) => {
  const view = new DataView(file.buffer, file.byteOffset);
  const end = file.length - 22;
  let at = view.getUint32(end + 16, true);
  return Array.from({ length: view.getUint16(end + 10, true) }, () => {
    const length = view.getUint16(at + 28, true);
    const record = { at, name: strFromU8(file.subarray(at + 46, at + 46 + length)) };
    at += 46 + length + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    return record;
  });
};

const recordOf = (file: Uint8Array, name: string) =>
  directory(file).find((record) => record.name === name)?.at ?? -1;

const written = (file: Uint8Array, at: number, bytes: 2 | 4, value: number): Uint8Array => {
  const copy = Uint8Array.from(file);
  const view = new DataView(copy.buffer);
  if (bytes === 2) view.setUint16(at, value, true);
  else view.setUint32(at, value, true);
  return copy;
};

describe.each(["Node", "a browser"])("in %s", (where) => {
  // A browser has no zlib of its own that answers at once.
  beforeAll(() => {
    if (where === "a browser")
      vi.spyOn(process, "getBuiltinModule").mockImplementation(() => undefined as never);
  });
  afterAll(() => {
    vi.restoreAllMocks();
    vi.resetModules();
  });
  const open = async (file?: Uint8Array) => {
    vi.resetModules();
    return (await import("../../src/xlsx/package/package")).openPackage(file);
  };

  test("parts come out as they went in, by any spelling of their names", async () => {
    const pack = await open(archive(PARTS));
    expect(pack.names).toEqual(Object.keys(PARTS));
    for (const [name, text] of Object.entries(PARTS)) expect(pack.text(name)).toBe(text);
    expect(pack.text("XL\\Workbook.xml")).toBe("<workbook/>");
    expect(pack.has("xl/nothing.xml")).toBe(false);
    expect(pack.text("xl/nothing.xml")).toBe("");
    expect(() => pack.bytes("xl/nothing.xml")).toThrow(/its part xl\/nothing\.xml is missing/);
  });

  test("what is put, taken away and added is what another program then finds", async () => {
    const texts = fc.string({ maxLength: 300 });
    await fc.assert(
      fc.asyncProperty(texts, texts, async (one, other) => {
        const pack = await open(archive(PARTS));
        pack.put("xl/workbook.xml", one);
        pack.put("xl/new.xml", other);
        pack.remove("docProps/app.xml");
        const found = unzipSync(pack.save());
        expect(Object.keys(found).sort()).toEqual(
          [
            "[Content_Types].xml",
            "xl/workbook.xml",
            "xl/worksheets/sheet1.xml",
            "xl/new.xml",
          ].sort(),
        );
        expect(found["xl/workbook.xml"]).toEqual(strToU8(one));
        expect(found["xl/new.xml"]).toEqual(strToU8(other));
      }),
      { numRuns: 10 },
    );
  });

  test("what is packed longer or shorter than the list says is refused", async () => {
    const file = archive(PARTS);
    const at = recordOf(file, "xl/worksheets/sheet1.xml") + 24;
    const size = new DataView(file.buffer, file.byteOffset).getUint32(at, true);
    for (const wrong of [size - 1, size + 1, 10, 0]) {
      const pack = await open(written(file, at, 4, wrong));
      expect(() => pack.bytes("xl/worksheets/sheet1.xml")).toThrow(
        /its part xl\/worksheets\/sheet1\.xml cannot be unpacked/,
      );
      expect(pack.text("xl/workbook.xml")).toBe("<workbook/>");
    }
  });
});

test("a part that is not changed keeps every byte: packed content, date, attributes, comment, its place in the order", () => {
  const file = archive(PARTS);
  const comment = strToU8("said of the archive");
  const end = file.length - 22;
  const whole = new Uint8Array([...written(file, end + 20, 2, comment.length), ...comment]);
  const pack = openPackage(whole);
  pack.put("xl/workbook.xml", "<workbook>other</workbook>");
  const saved = pack.save();
  expect(strFromU8(saved.subarray(-comment.length))).toBe("said of the archive");
  const plain = saved.subarray(0, -comment.length);
  expect(directory(plain).map(({ name }) => name)).toEqual(Object.keys(PARTS));
  for (const name of Object.keys(PARTS).filter((one) => one !== "xl/workbook.xml")) {
    const [was, is] = [region(file, name), region(plain, name)];
    expect(is).toEqual(was);
  }
});

/** Local header, packed bytes and the record without the place, as they stand. */
const region = (file: Uint8Array, name: string) => {
  const view = new DataView(file.buffer, file.byteOffset);
  const at = recordOf(file, name);
  const offset = view.getUint32(at + 42, true);
  const length =
    30 +
    view.getUint16(offset + 26, true) +
    view.getUint16(offset + 28, true) +
    view.getUint32(at + 20, true);
  return [
    [...file.subarray(offset, offset + length)],
    [...file.subarray(at, at + 42)],
    [...file.subarray(at + 46, at + 46 + name.length)],
  ];
};

test("nothing changed is the same file, and a file is not written into", () => {
  const file = Buffer.from(archive(PARTS));
  const before = Buffer.copyBytesFrom(file);
  const pack = openPackage(file);
  expect(pack.save()).toBe(file);
  pack.put("[Content_Types].xml", "<Types>longer than before</Types>");
  pack.save();
  expect(file.equals(before)).toBe(true);
});

test("a new package is one that others read", () => {
  const pack = openPackage();
  pack.put("a.xml", "<a/>");
  pack.put("b/c.xml", "<ü/>");
  const found = unzipSync(pack.save());
  expect(Object.entries(found).map(([name, bytes]) => [name, strFromU8(bytes)])).toEqual([
    ["a.xml", "<a/>"],
    ["b/c.xml", "<ü/>"],
  ]);
});

test("a part in UTF-16 is read, by its mark or its declaration", () => {
  const text = '<?xml version="1.0" encoding="UTF-16"?><t>5.2 GΩ</t>';
  const little = Buffer.from(`\ufeff${text}`, "utf16le");
  const big = Buffer.from(little).swap16();
  for (const bytes of [little, big, little.subarray(2)]) {
    const pack = openPackage(zipSync({ "xl/workbook.xml": bytes }));
    expect(pack.text("xl/workbook.xml")).toBe(text.replace("UTF-16", "UTF-8"));
  }
});

describe("hostile archives end at once, in words", () => {
  const file = archive(PARTS);
  const sheet = recordOf(file, "xl/worksheets/sheet1.xml");
  const bomb = () => {
    const packed = deflateRawSync(Buffer.alloc(64_000_000, 32));
    const made = zipSync({ "xl/worksheets/sheet1.xml": [packed, { level: 0 }] });
    const view = new DataView(made.buffer, made.byteOffset);
    const at = recordOf(made, "xl/worksheets/sheet1.xml");
    for (const [place, value] of [
      [at + 10, 8],
      [at + 24, 64_000_000],
    ] as const)
      view.setUint32(place, value, true);
    return made;
  };
  const many = () => {
    const entries = Array.from({ length: 20_001 }, (_, at): [string, Uint8Array] => [
      `${at}`,
      new Uint8Array(),
    ]);
    return zipSync(Object.fromEntries(entries), { level: 0 });
  };
  test.each<[string, () => Uint8Array, RegExp]>([
    ["a bomb", bomb, /unpacks to more than can be read: its part xl\/worksheets\/sheet1\.xml/],
    ["more parts than any workbook has", many, /has 20001 parts/],
    [
      "a part that says that it is larger than it can be",
      () => written(file, sheet + 24, 4, 2_000_000_000),
      /says that it is larger than it can be/,
    ],
    [
      "two entries over the same bytes",
      () => written(file, sheet + 42, 4, 0),
      /its part .* overlaps another/,
    ],
    [
      "an entry that reaches into the list",
      () => written(file, recordOf(file, "docProps/app.xml") + 20, 4, 100_000),
      /overlaps another/,
    ],
    [
      "an entry that begins where none does",
      () => written(file, sheet + 42, 4, 7),
      /is not where its list says/,
    ],
    ["an entry beyond the end", () => written(file, sheet + 42, 4, 4_000_000), /is not where/],
    ["a list that is broken off", () => written(file, sheet, 4, 0), /list of parts is broken off/],
    [
      "more entries than there are",
      () => written(file, file.length - 12, 2, 900),
      /list of parts is broken off/,
    ],
    ["an encrypted part", () => written(file, sheet + 8, 2, 1), /is encrypted \(its part/],
    ["a packing that is unknown", () => written(file, sheet + 10, 2, 99), /packed in a way/],
    ["an end that is cut off", () => file.subarray(0, -30), /the end of the file is missing/],
    ["nothing", () => new Uint8Array(), /is empty/],
    ["four bytes", () => file.subarray(0, 4), /the end of the file is missing/],
  ])("%s", (_what, make, message) => {
    const made = make();
    const before = performance.now();
    expect(() => {
      const pack = openPackage(made);
      for (const name of pack.names) pack.bytes(name);
    }).toThrow(message);
    expect(performance.now() - before).toBeLessThan(2000);
  });

  test("two parts of one name", () => {
    const made = archive({ "xl/a.xml": "1", "xl/b.xml": "2" });
    const name = recordOf(made, "xl/b.xml") + 46;
    expect(() => openPackage(written(made, name + 3, 2, 0x2e41))).toThrow(/has two parts/);
  });
});

test("any byte that is changed is either told or changes nothing that is read wrongly", () => {
  const file = archive(PARTS);
  fc.assert(
    fc.property(fc.nat(file.length - 1), fc.integer({ min: 1, max: 255 }), (at, by) => {
      const broken = Uint8Array.from(file);
      broken[at] = (broken[at] ?? 0) ^ by;
      try {
        const pack = openPackage(broken);
        for (const name of pack.names) {
          const text = pack.text(name);
          // A name may be another then; what is in a part may not.
          expect(Object.values(PARTS)).toContain(text);
        }
      } catch (error) {
        expect((error as Error).name).toBe("BookError");
      }
    }),
    { numRuns: 2000 },
  );
});
