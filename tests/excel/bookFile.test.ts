import { describe, expect, test } from "vitest";
import { bookFile, type FileSource } from "../../src/excel/bookFile";

/** A document as Office gives it, with so many bytes in a slice, and what it was asked for. */
function source(bytes: Uint8Array, slice: number, fails?: "file" | "slice") {
  const asked = { closed: 0, slices: 0 };
  const failed = { status: "failed", error: { message: "The file is busy." } };
  const document = {
    url: "https://example.org/jobs/Quay%20records.xlsx?web=1",
    getFileAsync: (_type: string, _options: object, done: (result: object) => void) =>
      done(
        fails === "file"
          ? failed
          : {
              status: "succeeded",
              value: {
                size: bytes.length,
                sliceCount: Math.ceil(bytes.length / slice),
                getSliceAsync: (index: number, told: (result: object) => void) => {
                  asked.slices += 1;
                  const data = [...bytes.slice(index * slice, (index + 1) * slice)];
                  told(fails === "slice" ? failed : { status: "succeeded", value: { data } });
                },
                closeAsync: () => {
                  asked.closed += 1;
                },
              },
            },
      ),
  };
  return { asked, document: document as unknown as FileSource };
}

const BYTES = Uint8Array.from({ length: 1000 }, (_, at) => at % 251);

describe("the open workbook as a file", () => {
  test("is put together of its slices, closed, and called as it is", async () => {
    const { asked, document } = source(BYTES, 300);
    expect(await bookFile(document)).toEqual({ bytes: BYTES, name: "Quay records.xlsx" });
    expect(asked).toEqual({ closed: 1, slices: 4 });
  });

  test("has a name of its own where it was never saved", async () => {
    const { document } = source(BYTES, 300);
    expect((await bookFile({ ...document, url: "" })).name).toBe("workbook.xlsx");
    expect((await bookFile({ ...document, url: "C:\\jobs\\100 %.xlsx" })).name).toBe("100 %.xlsx");
  });

  test("is closed as well where a slice does not come, and the reason is told", async () => {
    const { asked, document } = source(BYTES, 300, "slice");
    await expect(bookFile(document)).rejects.toThrow("The file is busy.");
    expect(asked.closed).toBe(1);
  });

  test("is refused with what to do where Excel gives none", async () => {
    await expect(bookFile(source(BYTES, 300, "file").document)).rejects.toThrow("save it");
    await expect(bookFile({ url: "" } as FileSource)).rejects.toThrow("command line");
  });
});
