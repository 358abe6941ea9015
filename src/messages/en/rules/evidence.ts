import type { RuleTexts } from "../../ruleWords";

/** Rules of what a record rests on: its instrument, permit, conditions and remarks. */
export const evidence = {
  "permit-lacking": {
    title: "Work on a day without a permit",
    finds:
      "records of work on the gear on a day, or at an hour, that no permit of the workbook covers; tests above 1 kV that no sanction for high-voltage tests covers, where the workbook has one",
    why: "Nobody can show that the circuit was isolated, earthed and handed over on that day.",
    satisfies: "the further permit entered, or the day put right",
    quiet:
      "for documents, receipt and inspection points, for work before the first permit, for days that several permits cover between them, and where no permit has both its days",
    row: (row: string, day: string, permit: string) =>
      `${row}: made on ${day}, which no "${permit}" covers. Enter the permit of that day, or put the day right.`,
    permit: (row: string, to: string, days: readonly string[], records: readonly string[]) =>
      `${row}: valid to ${to}, and no permit covers the work after it: ${records.join(", ")} on ${days.join(", ")}. Enter the further permit or the extension.`,
  },
  "remark-contradicts": {
    title: "A remark against the result",
    finds:
      "a remark, note or comment beside a row that passes which speaks of a flashover or breakdown, a test to be repeated, a value that was estimated or not measured, something defective, or a borrowed instrument",
    why: "Whoever wrote it saw what the numbers do not show; a reader of the dossier finds it.",
    satisfies: "the test repeated or the result put right; or the remark saying how it was settled",
    quiet:
      "where the remark says that it was not so or how it was seen to since, and for rows that do not pass; words are known in English, German, French, Spanish, Portuguese and Arabic",
    doubts: {
      discharge: "a disruptive discharge",
      repeat: "a test still to be made",
      estimated: "a value that was not read off, or not trusted",
      "not measured": "something that was not measured",
      defective: "something defective",
      borrowed: "an instrument of unknown calibration",
    },
    message: (row: string, remark: string, says: string) =>
      `${row}: passes, and beside it stands "${remark}" (${says}). Repeat the test, put the result right, or say how it was settled.`,
  },
  "instrument-misfit": {
    title: "An instrument that cannot have taken the reading",
    finds:
      "a reading whose instrument is, by its description, of another sort, does not reach the test voltage, current or value, or is less accurate than the error that it is to prove",
    why: "Either another instrument was used, whose calibration nobody has seen, or the reading was not taken.",
    satisfies: "the instrument that was used, or the test made again with one that fits",
    quiet:
      "where the list of instruments does not say what one measures or reaches, and for conditions, which other instruments take",
    sort: (row: string, instruments: readonly string[], header: string) =>
      `${row}: "${header}" cannot have been taken with the instrument named (${instruments.join("; ")}); name the one that was used.`,
    beyond: (row: string, header: string, reading: string, instruments: readonly string[]) =>
      `${row}: "${header}" is ${reading}, beyond what the instrument named reaches by its description (${instruments.join("; ")}); name the one that was used, or put the entry right.`,
    coarse: (
      row: string,
      instruments: readonly string[],
      accuracy: number,
      header: string,
      limit: number,
    ) =>
      `${row}: the instrument named (${instruments.join("; ")}) is accurate to ±${accuracy} %, too coarse to prove "${header}" of ${limit} %; test again with a finer one.`,
  },
} satisfies RuleTexts;
