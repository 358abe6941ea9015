import { strToU8, unzipSync, zipSync } from "fflate";
import { expect, test } from "vitest";
import { readBook } from "../../src/xlsx/readBook";
import { RICH, textOf } from "./richBooks";

/** A thread has a note beside it for programs that do not know threads; the thread itself has the replies. */
test("a thread is read with its replies, in place of the note that stands for it", async () => {
  const made = RICH["threaded comments"];
  if (!made) throw new Error("there is a workbook with threads");
  const { file } = made();
  const part = "xl/threadedComments/threadedComment1.xml";
  const replied = textOf(file, part).replace(
    "</ThreadedComments>",
    '<threadedComment ref="C2" id="{1}" parentId="{0}"><text>flashover &amp; repeated</text></threadedComment></ThreadedComments>',
  );
  const snapshot = await readBook(zipSync({ ...unzipSync(file), [part]: strToU8(replied) }));
  expect(snapshot.sheets[0]?.cells?.note?.(1, 2)).toBe(
    "after cleaning (invented)\nflashover & repeated",
  );
  expect(snapshot.sheets[0]?.cells?.note?.(0, 0)).toBeUndefined();
});
