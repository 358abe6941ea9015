import { strFromU8, strToU8, type Unzipped, unzipSync, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import type { Finding } from "../../src/check/findings/finding";
import { markFile } from "../../src/xlsx/writeMarks";
import { RICH } from "./richBooks";

/**
 * Workbooks whose styles part lists no looks, or that have none: number 0 of each list is the look of a cell
 * that says none (ECMA-376 part 1, 18.8.10 and 18.8.45), so a reader that looks it up fails where the list
 * is empty, as openpyxl does.
 */
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const STYLES = "xl/styles.xml";
const parts: Unzipped = unzipSync(RICH.sparklines?.().file ?? new Uint8Array());
const withStyles = (xml: string) => zipSync({ ...parts, [STYLES]: strToU8(xml) });
const without = (part: string, tag: RegExp) => ({
  [part]: strToU8(strFromU8(parts[part] ?? new Uint8Array()).replace(tag, "")),
});
const bare = () => {
  const { [STYLES]: _styles, ...others } = parts;
  return zipSync({
    ...others,
    ...without("[Content_Types].xml", /<Override[^>]*styles[^>]*>/),
    ...without("xl/_rels/workbook.xml.rels", /<Relationship [^>]*styles[^>]*>/),
  });
};

const MARK: Finding = {
  rule: "future-date",
  weight: "stop",
  sheet: "Own",
  address: "B2",
  message: "invented",
};
const texts = (file: Uint8Array) =>
  Object.entries(unzipSync(file)).map(([name, bytes]) => [name, strFromU8(bytes)]);
const stylesOf = (file: Uint8Array) => strFromU8(unzipSync(file)[STYLES] ?? new Uint8Array());

describe.each<[string, () => Uint8Array]>([
  ["closes itself", () => withStyles(`<styleSheet xmlns="${MAIN}"/>`)],
  [
    "closes itself behind a blank",
    () => withStyles(`<?xml version="1.0"?>\n<styleSheet xmlns="${MAIN}" />\n`),
  ],
  ["holds nothing", () => withStyles(`<styleSheet xmlns="${MAIN}"></styleSheet>`)],
  [
    "has empty lists and a prefix",
    () =>
      withStyles(
        `<x:styleSheet xmlns:x="${MAIN}"><x:fonts count="0"/><x:cellXfs count="0"/></x:styleSheet>`,
      ),
  ],
  [
    "has looks of its own for conditional formats",
    () => withStyles(`<styleSheet xmlns="${MAIN}"><dxfs count="1"><dxf/></dxfs></styleSheet>`),
  ],
  ["is not there", bare],
])("a styles part that %s", (_what, make) => {
  test("a marked copy has a look number 0 in each list", async () => {
    const styles = stylesOf(await markFile(make(), [MARK]));
    for (const [list, item] of [
      ["fonts", "font"],
      ["fills", "fill"],
      ["borders", "border"],
      ["cellStyleXfs", "xf"],
      ["cellXfs", "xf"],
    ])
      expect(styles).toMatch(new RegExp(`<(x:)?${list}( count="[1-9]")?><(x:)?${item}[ >]`));
  });

  test("once the marks are taken off, every part is as it was", async () => {
    const file = make();
    expect(texts(await markFile(await markFile(file, [MARK]), []))).toEqual(texts(file));
  });

  test("a change of nothing is the same file", async () => {
    const file = make();
    expect(Buffer.compare(await markFile(file, []), file)).toBe(0);
  });
});

test("a styles part that holds something else is named", async () => {
  await expect(markFile(withStyles("<sst/>"), [MARK])).rejects.toThrow(
    /its part xl\/styles.xml holds no styles/,
  );
});
