import { existsSync, mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { writeXlsx } from "hucre/xlsx";
import { expect, test, vi } from "vitest";
import { saveBook } from "../../../src/cli/files/saveBook";
import { perBook } from "../../../src/cli/jobs/checkFile";
import { openPackage } from "../../../src/xlsx/package/package";
import { RICH } from "../../xlsx/richBooks";

const at = (name: string) => join(mkdtempSync(join(tmpdir(), "gearproof-save-")), name);
const plain = () => writeXlsx({ sheets: [{ name: "Own", rows: [["Panel"]] }] });
const withMacros = async () => RICH.macros?.().file ?? new Uint8Array();

test.each([
  ["book.xlsx", plain],
  ["book.XLSX", plain],
  ["book", plain],
  ["book.xlsm", withMacros],
])("%s is written as it is", async (name, make) => {
  const [out, file] = [at(name), await make()];
  saveBook(out, file);
  expect(readFileSync(out).equals(file)).toBe(true);
});

test.each([
  ["book.xlsm", plain, /book\.xlsm: Excel opens .* ends in \.xlsx \(it has no macros\)/],
  ["book.xltx", plain, /ends in \.xlsx/],
  ["book.xlsx", withMacros, /book\.xlsx: Excel opens .* ends in \.xlsm \(it has macros\)/],
])("%s under which Excel would not open the file is refused", async (name, make, message) => {
  const [out, file] = [at(name), await make()];
  expect(() => saveBook(out, file)).toThrow(message);
  expect(existsSync(out)).toBe(false);
});

test("of a workbook with a digital signature it is said that this no longer holds", async () => {
  const said = vi.spyOn(process.stderr, "write").mockReturnValue(true);
  const signed = openPackage(await plain());
  signed.put("_xmlsignatures/sig1.xml", "<Signature/>");
  saveBook(at("plain.xlsx"), await plain());
  expect(said).not.toHaveBeenCalled();
  saveBook(at("signed.xlsx"), signed.save());
  expect(said.mock.calls.flat().join("")).toMatch(/signed\.xlsx: carries a digital signature/);
  said.mockRestore();
});

test.each([
  ["page.html", "gear/H01.xlsx", "page-H01.html"],
  ["copy.xlsx", "gear/H01.xlsx", "copy-H01.xlsx"],
  ["copy.xlsx", "gear/H01.xlsm", "copy-H01.xlsm"],
  ["copy", "H01.xlsm", "copy-H01"],
  ["out.d/copy", "H01.xlsm", "out.d/copy-H01"],
])("of several workbooks %s for %s is named %s", (out, file, name) => {
  expect(perBook(out, file, true)).toBe(name);
  expect(perBook(out, file, false)).toBe(out);
});
