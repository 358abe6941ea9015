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
