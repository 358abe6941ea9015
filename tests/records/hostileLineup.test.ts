import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readLineup } from "../../src/records/readLineup";
import { repeatedKeys } from "../../src/records/repeatedKeys";
import { inWords } from "../support/inWords";
import { SAMPLE } from "../support/lineups";

const text = readFileSync(SAMPLE, "utf8");
const named = (designation: string) => {
  const lineup = JSON.parse(text);
  lineup.panels[0].designation = designation;
  return readLineup(JSON.stringify(lineup));
};
const errors = (read: ReturnType<typeof readLineup>) => (read.ok ? [] : inWords(read.errors));

test.each([
  ["an escape sequence", "K1\u001b[2J", /holds characters that are not seen/],
  ["half a letter", "K1\ud800", /holds characters that are not seen/],
  ["writing turned round", "K\u202e1", /holds characters that are not seen/],
  ["a blank of no width", "K\u200b1", /holds characters that are not seen/],
  ["a Cyrillic letter among Latin ones", "AК1", /mixes letters that look alike/],
])("a panel's name with %s is refused where it stands", (_what, name, message) => {
  expect(errors(named(name))).toContainEqual({
    path: "panels[0].designation",
    message: expect.stringMatching(message),
  });
});

test("keys said twice are told with their line; the sample says none twice", () => {
  const twice = text.replace('"basis"', '"note": "a",\n  "note": "b",\n  "basis"');
  expect(errors(readLineup(twice))).toEqual([
    {
      path: expect.stringMatching(/^line \d+$/),
      message: expect.stringMatching(/says "note" a second time/),
    },
    ...(text.includes('"note"') ? [expect.anything()] : []),
  ]);
  expect(repeatedKeys(text)).toEqual([]);
  // RFC 8259, section 4: names within an object should be unique; elsewhere they may come again.
  expect(repeatedKeys('{"a": {"a": 1}, "b": [{"a": "a"}, {"a": "\\"a\\":"}]}')).toEqual([]);
  expect(repeatedKeys('{"a": 1,\n"\\u0061" : 2}')).toEqual([{ key: "a", line: 2 }]);
});
