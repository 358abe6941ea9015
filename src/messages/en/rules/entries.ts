import type { RuleTexts } from "../../ruleWords";
import { lookAlike } from "../words";

/** Rules of single entries: whether they can be read, and whether they can be so. */
export const entries = {
  unreadable: {
    title: "Text that is not a reading",
    finds: "text in the place of a number or date that cannot be read as one",
    why: "The row is judged without it.",
    satisfies: "the reading as a number, or with its unit; the day as a date",
    quiet: "for what reads as a quantity, such as 5.2 GΩ or > 2 TΩ",
    message: (row: string, header: string, reason: string) =>
      `${row}: "${header}" cannot be read: ${reason}`,
    noDate: (text: string) => `"${text}" is text, not a date; type it as 2026-11-25.`,
  },
  "number-as-text": {
    title: "A number stored as text",
    finds:
      "an entry that shows a number and is text, so that formulas pass over it; in a user's own layout, a number whose unit nothing tells",
    why: "It looks measured, and every comparison, sum and plot leaves it out.",
    satisfies: "the number typed again into a cell that is not formatted as text",
    quiet:
      "for readings written with their unit or as a bound, such as 5.2 GΩ or > 2 TΩ: the add-in's functions read them",
    message: (row: string, header: string, text: string) =>
      `${row}: "${header}" holds the text "${text}", not a number; type it again as a number.`,
    noUnit: (row: string, header: string, text: string, unit: string) =>
      `${row}, and every line of the block like it: "${header}" is ${text} without a known unit, so nothing is judged by it; add the unit to the title, such as (${unit}).`,
  },
  "unknown-word": {
    title: "An answer that is not on the list",
    finds:
      "an entry that is not one of the words its column accepts: once for each such word of a column, at its first row",
    why: "The row cannot be judged by it, and two people read it in two ways.",
    satisfies: "one of the listed words; further comments go in the remarks",
    quiet: "where only capital letters differ",
    message: (row: string, header: string, word: string, list: readonly string[]) =>
      `${row}: "${header}" is "${word}"; use ${list.join(", ")}.`,
  },
  implausible: {
    title: "An impossible entry",
    finds: "a number outside what its column can hold",
    why: "It is a slip of the pen, of the unit or of the decimal mark, and the row is judged by it.",
    satisfies: "the number as the instrument showed it, in the unit of the header",
    quiet: "for text: another rule reports that",
    noDate: (row: string, header: string, found: string) =>
      `${row}: "${header}" is ${found}, which is not a date; type it as 2026-11-25.`,
    message: (row: string, header: string, found: string, expected: string) =>
      `${row}: "${header}" is ${found}; expected ${expected}.`,
    range: (least: number, most: number) =>
      most === Number.POSITIVE_INFINITY
        ? `at least ${least}`
        : least === Number.NEGATIVE_INFINITY
          ? `at most ${most}`
          : `${least} to ${most}`,
  },
  "instrument-unknown": {
    title: "An unlisted instrument",
    finds:
      "records whose instrument is not in the table of instruments: once for each instrument and record table, at its first row",
    why: "A reading is worth what its instrument is worth; of this one nothing is known.",
    satisfies: "the instrument listed with its serial number and calibration, or its Id corrected",
    quiet: "where the record names no instrument: another rule reports that",
    message: (row: string, id: string, alike: readonly string[], below: string | undefined) =>
      `${row}: instrument "${id}" is not in the table of instruments; ${
        below === undefined
          ? "list it with its serial number and calibration."
          : `it stands just below it, in ${below}: drag the table's lower right corner down over it.`
      }${lookAlike(alike)}`,
  },
  "instrument-lapsed": {
    title: "An instrument out of calibration",
    finds:
      "tests made with an instrument outside its calibration (stop), or with one whose calibration dates are not listed (query): once for each instrument and record table, at its first row",
    why: "Outside its calibration nobody can say how far the instrument was off.",
    satisfies:
      "the calibration that covers the day of the test, a calibration after it that shows the instrument was right, or the test repeated",
    quiet: "where the test has no date, or the instrument is not listed: other rules report both",
    noDates: (row: string, id: string) =>
      `${row}: instrument "${id}" has no calibration dates in the table of instruments.`,
    lapsed: (row: string, id: string, day: string, calibrated: string, due: string) =>
      `${row}: instrument "${id}" was used on ${day}, outside its calibration from ${calibrated} to ${due}.`,
  },
  "outside-range": {
    title: "A reading outside its instrument's range",
    finds:
      "an entry outside the ranges that the lineup gives for the instruments of its row, of the quantity that it is of; the row is inconclusive",
    why: "Outside its range an instrument shows something, and nobody can say how far it is off.",
    satisfies:
      "the reading taken again with an instrument that reaches it, or the instrument that it was taken with named in its row",
    quiet:
      "where none of the row's instruments has a range of that quantity, and for bounds such as > 2 TΩ",
    message: (row: string, header: string, reading: string, ranges: readonly string[]) =>
      `${row}: "${header}" is ${reading}, outside what its instrument measures (${ranges.join("; ")}); take an instrument that reaches it, or name the one that it was taken with.`,
  },
} satisfies RuleTexts;
