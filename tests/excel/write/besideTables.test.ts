import { expect, test } from "vitest";
import { addBeside, readExcel, removeBeside, selectedCell } from "../../../src/excel/workbook";
import { messagesFor } from "../../../src/messages/messages";
import { bookOfFile } from "../../../src/standin/bench/bookFile";
import { boxAt, putBox, sheetNamed } from "../../../src/standin/book";
import { insertRows } from "../../../src/standin/edits";
import { type StandInHost, standIn } from "../../../src/standin/host";
import { checkSurvey } from "../../../src/survey/checkSurvey";
import { resultColumns } from "../../../src/survey/results/resultColumns";
import { ownBook } from "../../support/ownBook";
import { inExcel, state } from "../excelSupport";

const ANSWERS = { ratedkV: 15, basis: "NETA" } as const;
const TEXT = messagesFor("en").survey;

const opened = async () => standIn(await bookOfFile(await ownBook()));
const read = (host: StandInHost) =>
  inExcel(host, (context) => readExcel(context, { sheets: "every" }));
const columnsOf = async (host: StandInHost) =>
  resultColumns(await read(host), 48_000, ANSWERS, TEXT).beside;
const add = async (host: StandInHost) => {
  const columns = await columnsOf(host);
  await inExcel(host, (context) => addBeside(context, columns));
  return columns;
};
const remove = (host: StandInHost) => inExcel(host, (context) => removeBeside(context));
const reported = async (host: StandInHost) => checkSurvey(await read(host), 48_000, ANSWERS, TEXT);

test("columns stand beside the tables in their look, and leave the workbook as it was when they are removed", async () => {
  const host = await opened();
  const before = state(host.book);
  const said = await reported(host);
  const columns = await add(host);
  expect(columns.map(({ sheet }) => sheet)).toEqual(["IR summary"]);
  const sheet = sheetNamed(host.book, "IR summary");
  expect(boxAt(sheet, 4, 6)).toEqual({ value: "GEAR result" });
  expect(boxAt(sheet, 5, 6)?.formula).toContain('GEAR.JUDGE(B6,F6,"least",0,"GΩ")');
  expect(await reported(host)).toEqual(said);
  expect(await remove(host)).toBe(1);
  expect(state(host.book)).toEqual(before);
  expect(await remove(host)).toBe(0);
});

test("columns that are added again take the place of those of before", async () => {
  const host = await opened();
  await add(host);
  const once = state(host.book);
  await add(host);
  expect(state(host.book)).toEqual(once);
});

test("columns are removed from where they have moved to", async () => {
  const host = await opened();
  const plain = await opened();
  await add(host);
  for (const { book } of [host, plain]) insertRows(book, sheetNamed(book, "IR summary"), 8, 2);
  expect(await remove(host)).toBe(1);
  expect(state(host.book)).toEqual(state(plain.book));
});

test("nothing is written over what was filled in since, and nothing on a protected sheet", async () => {
  const host = await opened();
  const columns = await columnsOf(host);
  const sheet = sheetNamed(host.book, "IR summary");
  putBox(host.book, sheet, 9, 6, { value: "witnessed" });
  const before = state(host.book);
  const write = () => inExcel(host, (context) => addBeside(context, columns));
  await expect(write()).rejects.toThrow(/filled since the check/);
  putBox(host.book, sheet, 9, 6);
  sheet.protected = true;
  await expect(write()).rejects.toThrow(/"IR summary" is protected/);
  sheet.protected = false;
  putBox(host.book, sheet, 9, 6, { value: "witnessed" });
  expect(state(host.book)).toEqual(before);
});

test.each([0.2, 0.5, 0.9])(
  "what a failure leaves half written, %d of a batch, is removed as well",
  async (share) => {
    const host = await opened();
    const before = state(host.book);
    const columns = await columnsOf(host);
    host.reset();
    host.fault = { batch: 2, when: "midway", share };
    await expect(inExcel(host, (context) => addBeside(context, columns))).rejects.toThrow(
      /did not come to its end/,
    );
    host.fault = undefined;
    await remove(host);
    expect(state(host.book)).toEqual(before);
  },
);

test("the first of the selected cells is told with its sheet", async () => {
  const host = await opened();
  host.book.active = { sheet: "IR summary", area: { top: 4, left: 3, bottom: 9, right: 4 } };
  expect(await inExcel(host, selectedCell)).toEqual({ sheet: "IR summary", address: "D5" });
});
