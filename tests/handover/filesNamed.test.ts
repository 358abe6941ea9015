import { describe, expect, test } from "vitest";
import { filesIn, filesListed } from "../../src/handover/filesNamed";

describe("names of files", () => {
  test.each([
    ["Film on the contact (see bolt-3.jpg).", ["bolt-3.jpg"]],
    [
      "IMG_0042.HEIC, IMG_0043.heic; certificate:CAL-77.pdf",
      ["IMG_0042.HEIC", "IMG_0043.heic", "certificate:CAL-77.pdf"],
    ],
    ['"lugs.png"', ["lugs.png"]],
    ["Tightened to 60.5 N·m, see 7.3.2", []],
    [".png alone, or a.b", []],
  ])("among the words of %j", (text, names) => {
    expect(filesIn(text)).toEqual(names);
  });

  test("of a cell that lists them may have spaces", () => {
    expect(filesListed("pole L1.png; report 12.pdf;\n ;x.jpg")).toEqual([
      "pole L1.png",
      "report 12.pdf",
      "x.jpg",
    ]);
  });
});
