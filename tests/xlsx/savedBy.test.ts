import { unzipSync, zipSync } from "fflate";
import { writeXlsx } from "hucre/xlsx";
import { expect, test } from "vitest";
import { readBook } from "../../src/xlsx/readBook";

const CORE = "docProps/core.xml";

/** A workbook of another writer, with its core properties as given (ISO/IEC 29500-2, 11). */
const bookWith = async (properties: string | undefined): Promise<Uint8Array> => {
  const parts = unzipSync(
    await writeXlsx({
      sheets: [{ name: "One", rows: [["a"]] }],
      properties: { creator: "A. Writer (invented)" },
    }),
  );
  if (!(CORE in parts)) throw new Error("the writer gives no core properties");
  if (properties === undefined) delete parts[CORE];
  else parts[CORE] = new TextEncoder().encode(properties);
  return zipSync(parts);
};
const core = (inner: string) =>
  `<?xml version="1.0"?><cp:coreProperties xmlns:cp="http://schemas.openxmlformats.org/package/2006/metadata/core-properties" xmlns:dcterms="http://purl.org/dc/terms/">${inner}</cp:coreProperties>`;
const saved = async (properties: string | undefined) =>
  (await readBook(await bookWith(properties))).savedBy;

test("who saved a workbook last, and on which day, is read from its core properties", async () => {
  const by = "<cp:lastModifiedBy>T. Aylward (invented)</cp:lastModifiedBy>";
  expect(
    await saved(core(`${by}<dcterms:modified>2026-11-22T14:03:00Z</dcterms:modified>`)),
  ).toEqual({ name: "T. Aylward (invented)", day: "2026-11-22" });
  expect(await saved(core(by))).toEqual({ name: "T. Aylward (invented)" });
});

test("a workbook whose properties do not tell, are broken or are gone is opened without", async () => {
  expect(await saved(core(""))).toBeUndefined();
  expect(await saved("<cp:coreProperties")).toBeUndefined();
  expect(await saved(undefined)).toBeUndefined();
});
