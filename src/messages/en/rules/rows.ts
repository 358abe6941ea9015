import { countIn } from "../../plurals";
import type { RuleTexts } from "../../ruleWords";
import { lookAlike, quotedList } from "../words";

const count = countIn("en");

const ROWS = { one: "row", other: "rows" };
const andMore = (rows: number) =>
  rows === 0 ? "" : ` and ${count(rows, { one: "more row", other: "more rows" })}`;

/** Rules of what is missing, twice there, hidden or named otherwise. */
export const rows = {
  "missing-column": {
    title: "A column lost",
    finds: "a column that a record table of ours no longer has",
    why: "What stood in it is not judged, and formulas that used it give errors.",
    satisfies: "the column given its header again",
    quiet: "for columns added to the table",
    message: (table: string, header: string) =>
      `The table "${table}" has no column "${header}": it was deleted, or its header was changed. Give the column that header again.`,
  },
  "missing-row": {
    title: "A test missing",
    finds:
      "a row or a whole table that the lineup needs and the workbook lacks; of mapped blocks once for each part of a panel",
    why: "A test without a row is missed by everybody who reads the sheet.",
    satisfies: "the lineup built onto the workbook again, or the line in a mapped block",
    quiet: "for record kinds that the project leaves out",
    noTable: (record: string) =>
      `The workbook has no table for "${record}"; build the lineup onto it again, or map the block that holds these records.`,
    noRow: (row: string) =>
      `${row}: the lineup needs this row and the table lacks it; build the lineup onto the workbook again.`,
    /** Of mapped blocks, `named` being the first of all the records that are lacking; none where the part says it all. */
    noLine: (part: string, named: readonly string[], all: number) => {
      const more = all - named.length;
      const records =
        named.length === 0
          ? "this record"
          : `${all === 1 ? "the record" : `${all} records:`} ${named.join(", ")}${more > 0 ? ` and ${more} more` : ""},`;
      return `${part}: the lineup needs ${records} and no line of the mapped blocks is ${all === 1 ? "it" : "one of them"}; put it there, or map the block that holds it.`;
    },
  },
  "key-changed": {
    title: "A row renamed",
    finds:
      "a row that is none of the lineup's and has all but one key cell of a row that is missing; a row with readings and no name; it says so where the two names look the same and are written in letters of two alphabets",
    why: "The reading stands under another name than the one it was taken for, and the test it belongs to looks missing.",
    satisfies: "the name restored",
    quiet:
      "for rows added by the project, where no row of the lineup is missing that they resemble, and for spaces that nobody sees in a name, which no rule heeds",
    renamed: (row: string, header: string, expected: string, alike: readonly string[]) =>
      `${row}: the lineup has no such row, and the workbook lacks the one whose "${header}" is ${expected}; restore the name.${lookAlike(alike)}`,
    nameless: "A row with readings has no name; restore it.",
  },
  "missing-reading": {
    title: "A reading missing",
    finds: "a row that the lineup needs without its reading",
    why: "The test was not made, or not written down.",
    satisfies: "the reading",
    quiet:
      "for tests of which nothing is recorded yet, while less than nine tenths of the workbook's rows have something; for record kinds that the project leaves out, and rows that do not apply; what no line of a user's own layout has a cell for is reported once for its block",
    message: (row: string, header: string) => `${row}: ${header} not recorded.`,
    noCell: (row: string, headers: readonly string[]) =>
      `${row}, and every other line of the block: the sheet has no cell for ${quotedList(headers)}; add a column, or leave these records out of the lineup with the project's reason.`,
  },
  "still-open": {
    title: "Still open at hand-over",
    finds:
      "in the check for hand-over, tests of which nothing is recorded: one line for each panel and record",
    why: "What was not tested cannot be handed over as tested.",
    satisfies: "the readings, or the record left out in the lineup with the project's reason",
    quiet: "but for the check for hand-over, and for record kinds that the project leaves out",
    message: (object: string, record: string, open: number, all: number) =>
      open === all
        ? `${object}, ${record}: nothing recorded (${count(all, ROWS)}).`
        : `${object}, ${record}: ${open} of ${count(all, ROWS)} without anything recorded.`,
  },
  "missing-condition": {
    title: "A condition not recorded",
    finds:
      "a reading without the condition that its judgement needs: temperature, test voltage, an answer",
    why: "The reading cannot be corrected or held against its limit.",
    satisfies: "the condition, as it was on the day",
    quiet:
      "for rows without a reading, and conditions that the row or lineup does without; what no line of a user's own layout has is reported once for its block",
    message: (row: string, headers: readonly string[], wholeBlock: boolean) =>
      `${row}${wholeBlock ? ", and every other line of the block" : ""}: reading recorded without ${quotedList(headers)}; without it the reading cannot be fully judged.`,
  },
  "missing-trail": {
    title: "Who, when, with what",
    finds:
      "a reading without its date, name, instrument, or a condition that goes on record with it",
    why: "A reading that nobody signed, on no day, by no instrument, proves nothing to others.",
    satisfies: "the date, the name, the instrument",
    quiet:
      "for rows without a reading; what no line of a user's own layout has is reported once for its block",
    message: (row: string, headers: readonly string[], wholeBlock: boolean) =>
      `${row}${wholeBlock ? ", and every other line of the block" : ""}: reading recorded without ${quotedList(headers)}.`,
  },
  "exempt-unexplained": {
    title: "Does not apply, without a reason",
    finds: "a check that is marked as not applicable, with no word why",
    why: "A word takes a check out of the record as easily as it takes out work not done.",
    satisfies: "a reason in the remarks",
    quiet: "where the remarks say anything",
    message: (row: string, header: string, word: string) =>
      `${row}: "${header}" is ${word}; say in the remarks why it does not apply.`,
  },
  "duplicated-row": {
    title: "A row entered twice",
    finds: "two rows of one table with the same name",
    why: "Of two readings of one test nobody can say which counts; the worse one disappears easily.",
    satisfies: "one row kept, the other removed or named for what it is",
    quiet: "for further permits, each with its own number or days, as their sheet asks for",
    message: (row: string, earlier: string) =>
      `${row}: the row is there twice (also at ${earlier}); keep the one that counts.`,
  },
  "hidden-list": {
    title: "Hidden lists",
    finds:
      "the list of instruments, the reading history, the repairs or the concessions on a hidden sheet",
    why: "Who reads the records sees neither what they were measured with nor what was replaced in them.",
    satisfies: "the sheet shown",
    quiet:
      "for a list with nothing in it, and where the program that read the workbook does not tell what is hidden",
    message: (sheet: string) =>
      `The sheet "${sheet}" goes with the records and is hidden; show it.`,
  },
  "hidden-row": {
    title: "Hidden rows",
    finds: "rows of a record that are hidden or filtered away, and record tables on hidden sheets",
    why: "Who reads or prints the sheet takes it for the whole record.",
    satisfies: "the filter cleared, the rows or the sheet shown",
    quiet: "where the program that read the workbook does not tell what is hidden",
    sheet: (sheet: string, table: string) =>
      `The sheet "${sheet}" with the table "${table}" is hidden; show it.`,
    rows: (first: string, last: string, rows: number) =>
      rows === 1
        ? `${first}: the row is hidden or filtered away; show it.`
        : `${first} to ${last}: ${count(rows, ROWS)} are hidden or filtered away; show them.`,
  },
  "hidden-cell": {
    title: "Values that the sheet does not show",
    finds:
      "columns of a record that are hidden or of a hair's width; values in the colour of their ground; number formats that show nothing, or digits of their own",
    why: "Who reads or prints the sheet takes what is shown for what was recorded.",
    satisfies: "the column shown, the cell in a colour that can be read, an ordinary number format",
    quiet:
      "for hidden columns of what is neither an entry nor a result, for blank cells, for units in a number format, and where the program that read the workbook tells nothing of columns and formats (Excel's pane)",
    column: (values: number, header: string) =>
      `The column "${header}", with ${count(values, { one: "value", other: "values" })}, is hidden; show it.`,
    colour: (row: string, more: number, header: string) =>
      `${row}${andMore(more)}: "${header}" is written in the colour of its ground and cannot be read; change its colour.`,
    format: (row: string, more: number, header: string) =>
      `${row}${andMore(more)}: the number format of "${header}" does not show the value that is stored; give it an ordinary number format.`,
  },
  "set-aside": {
    title: "Rows of a panel that the lineup does not have",
    finds: "rows of a panel or section that the lineup does not have; one note a panel and table",
    why: "A panel taken out of a lineup leaves its readings; nobody should take them for readings of this lineup, or lose them.",
    satisfies:
      "nothing, where the panel was taken out; the panel's name corrected where it was misspelt",
    quiet: "for blank rows",
    message: (name: string, rows: number, readings: number) =>
      `${name} is not a panel or section of the lineup: ${count(rows, ROWS)} with ${count(readings, { one: "reading", other: "readings" })} set aside, not counted and not judged.`,
  },
} satisfies RuleTexts;
