import fc from "fast-check";
import { expect, test } from "vitest";
import { decode } from "../../../src/intake/text/decode";
import { english, inWords } from "../../support/inWords";

const TEXT = "Panel;R (µΩ)\r\n=H01;31,5 Ω\r\n";
const utf16 = (text: string, little: boolean, mark = "") =>
  new Uint8Array(
    [...(mark + text)].flatMap((sign) => {
      const code = sign.charCodeAt(0);
      const pair = [code & 0xff, code >> 8];
      return little ? pair : pair.reverse();
    }),
  );
const utf8 = (text: string) => new TextEncoder().encode(text);

// Byte order marks and the patterns of NULs: Unicode Standard, section 23.8 and 3.10 (memory).
test.each<[string, Uint8Array, string, string, string]>([
  ["UTF-8", utf8(TEXT), "utf-8", "certain", TEXT],
  ["UTF-8 with its mark", utf8(`\ufeff${TEXT}`), "utf-8", "certain", TEXT],
  ["UTF-16 LE by its mark", utf16(TEXT, true, "\ufeff"), "utf-16le", "certain", TEXT],
  ["UTF-16 BE by its mark", utf16(TEXT, false, "\ufeff"), "utf-16be", "certain", TEXT],
  ["UTF-16 LE by NULs", utf16(TEXT, true), "utf-16le", "likely", TEXT],
  ["UTF-16 BE by NULs", utf16(TEXT, false), "utf-16be", "likely", TEXT],
  ["plain", utf8("Panel;R\n"), "utf-8", "certain", "Panel;R\n"],
  [
    "Windows-1252",
    new Uint8Array([...utf8("R ("), 0xb5, ...utf8("V)\n18 "), 0xb0, ...utf8("C")]),
    "windows-1252",
    "likely",
    "R (µV)\n18 °C",
  ],
])("%s", (_name, bytes, encoding, confidence, text) => {
  expect(decode(bytes)).toMatchObject({
    ok: true,
    value: { text, encoding: { value: encoding, confidence } },
  });
});

test("refused: two encodings in one file, and a workbook", () => {
  expect(inWords(decode(new Uint8Array([...utf8("R (µΩ)\n18 "), 0xb0])))).toMatchObject({
    ok: false,
    say: expect.stringMatching(/^mixes encodings: line 1 is UTF-8 and line 2 is not/),
  });
  expect(inWords(decode(new Uint8Array([0x50, 0x4b, 3, 4])))).toMatchObject({
    say: expect.stringMatching(/is a workbook or an archive/),
  });
});

test("what the user says counts", () => {
  expect(inWords(decode(new Uint8Array([0x35, 0xb5]), "windows-1252"))).toMatchObject({
    value: { text: "5µ", encoding: { evidence: "Windows-1252, as you set it" } },
  });
});

test("whatever the bytes are, there is text or a plain line", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
      const read = decode(bytes);
      if (!read.ok) expect(read.say(english)).toMatch(/^[^\p{Cc}]+\.$/u);
    }),
  );
});
