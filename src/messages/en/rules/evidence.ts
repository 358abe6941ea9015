import type { RuleTexts } from "../../ruleWords";

/** Rules of what a record rests on: its instrument, permit, conditions and remarks. */
export const evidence = {
  "permit-lacking": {
    title: "Work on a day without a permit",
    finds:
      "records of work on the gear on a day, or at an hour, that no permit of the workbook covers; two sorts of permit under one number; tests above 1 kV that no sanction for high-voltage tests covers, where the workbook has one",
    why: "Nobody can show that the circuit was isolated, earthed and handed over on that day.",
    satisfies: "the further permit entered, or the day put right",
    quiet:
      "for documents, receipt and inspection points, for work before the first permit, for days that several permits cover between them, and where no permit has both its days",
    row: (row: string, day: string, permit: string) =>
      `${row}: made on ${day}, which no "${permit}" covers. Enter the permit of that day, or correct the date.`,
    sameNumber: (row: string, number: string, other: string) =>
      `${row}: has the number ${number} of "${other}"; two permits cannot share a number. Enter the number that stands on this one.`,
    permit: (row: string, to: string, days: readonly string[], records: readonly string[]) =>
      `${row}: valid to ${to}, and no permit covers the work after it: ${records.join(", ")} on ${days.join(", ")}. Enter the further permit or the extension.`,
    notYet: (row: string, from: string, days: readonly string[], records: readonly string[]) =>
      `${row}: valid from ${from}, and no permit covers the work before it: ${records.join(", ")} on ${days.join(", ")}. Enter the earlier permit, or put its first day right.`,
  },
  "remark-contradicts": {
    title: "A remark against the result",
    finds:
      "a remark, note or comment beside a row that passes which speaks of a flashover or breakdown, a test to be repeated, a value that was estimated or not measured, something defective, phases in another order than the lineup's, a borrowed instrument, or one of the list that the row does not name",
    why: "Whoever wrote it saw what the numbers do not show; a reader of the dossier finds it.",
    satisfies: "the test repeated or the result put right; or the remark saying how it was settled",
    quiet:
      "where the remark says that it was not so or how it was seen to since, that the other instrument was only compared with, and for rows that do not pass; words are known in English, German, French, Spanish, Portuguese, Italian and Arabic",
    doubts: {
      discharge: "a disruptive discharge",
      repeat: "a test still to be made",
      estimated: "a value that was not read off, or not trusted",
      "not measured": "something that was not measured",
      "cut short": "a test that was not made in full",
      attempts: "a result that others came before",
      defective: "something defective",
      borrowed: "an instrument of unknown calibration",
      "other instrument": "another instrument than the row names",
      "other order": "another order of the phases than the lineup's",
    },
    message: (row: string, remark: string, says: string) =>
      `${row}: passes, and beside it stands "${remark}" (${says}). Repeat the test, put the result right, or say how it was settled.`,
  },
  "left-for-test": {
    title: "Left as for the test",
    finds:
      "a remark, note or comment that tells of a jumper, link, wire, earth, short circuit, fuse or interlock that was put in, lifted or taken out for a test and is still so; a stop beside a step of the energization",
    why: "A jumper or an earth that is forgotten makes a trip that does not come, or a fault on first voltage.",
    satisfies: "the thing put back, and the remark saying so",
    quiet:
      "where the remark says that it was removed, restored or closed since, that none was left, or that it is so by the drawing, and where the row fails; words are known in English, German, French, Spanish, Portuguese, Italian and Arabic",
    message: (row: string, remark: string) =>
      `${row}: the remark tells of something left as for the test ("${remark}"). Put it back, and say in the remark that it was.`,
  },
  "points-nowhere": {
    title: "A remark that points to nothing",
    finds:
      "a remark, note or comment that sends to an item of the punch list of which the list has no such number, to the sheet Repairs where nothing is entered in it, or to an empty reading history",
    why: "What would explain the row is not in the dossier.",
    satisfies: "the item, repair or first reading entered; or the remark saying what it has to say",
    quiet:
      "where the list has the item, and for documents outside the workbook; words are known in English, German, French, Spanish, Portuguese, Italian and Arabic",
    lists: {
      "punch list": "the punch list has no such item",
      repairs: "the sheet Repairs is empty",
      history: "the reading history is empty",
    },
    message: (row: string, remark: string, says: string) =>
      `${row}: "${remark}", but ${says}. Enter it there, or say in the remark what was found.`,
  },
  "first-reading-gone": {
    title: "A repeat without its first reading",
    finds:
      "a remark by which a reading was repeated or measured again, of a record of which neither the reading history nor the sheet Repairs has anything",
    why: "Whoever repeats a test had a reason; without the first reading nobody can judge it.",
    satisfies: "the first reading in the sheet Reading history; or the repair in the sheet Repairs",
    quiet:
      "where either of them names the record or its panel, for what was repeated with the same result, on request, or as a matter of course, and for what was 'repeated after' a thing that the remark names, without a first reading in it",
    message: (row: string, remark: string) =>
      `${row}: the remark tells of a repeat ("${remark}"), and the first reading is nowhere. Enter it in the sheet Reading history, and what was done in between in the sheet Repairs.`,
  },
  "work-untold": {
    title: "Work told in a remark alone",
    finds:
      "a remark that tells of work on the gear, such as a joint remade or a part replaced, on a panel that was tested on an earlier day and of which the sheet Repairs has nothing",
    why: "What was opened after its test was not tested as it is left; only the sheet Repairs tells which tests have to be made again.",
    satisfies: "the work in the sheet Repairs, with its day and what was worked on",
    quiet:
      "where Repairs names the panel or its section, before the first test, for what was not done or is still to be done, and for instruments, leads, batteries, lamps and labels; words are known in English, German, French, Spanish, Portuguese, Italian and Arabic",
    message: (row: string, remark: string, record: string, day: string) =>
      `${row}: the remark tells of work ("${remark}"), after "${record}" of ${day}. Enter it in the sheet Repairs, and test again what it makes void.`,
  },
  "changed-since-intake": {
    title: "A reading changed since it was brought in",
    finds:
      "an entry that an export gave and that holds something else now; the workbook remembers what each export said, and its file who saved it last",
    why: "What the instrument wrote and what the dossier says are two things, and nobody can see who changed it, when and why.",
    satisfies:
      "the export's value put back; or the change in the sheet Reading history, with where the new value comes from",
    quiet:
      "for what was typed, for the same quantity written otherwise, for an hour beside the same day, for changes that the reading history has, for a permit that was renewed or handed on, and after the intake was taken back; one change made to several rows is told once, and so is what was changed of one panel on a sheet; a reading rounded to the digits that it is written with is a note",
    message: (
      row: string,
      header: string,
      now: string,
      was: string,
      origin: string,
      saved: { readonly name: string; readonly day?: string } | undefined,
    ) =>
      `${row}: "${header}" holds ${now}, and the export gave ${was}${origin === "" ? "" : ` (${origin})`}. Put it back, or enter the change in the reading history.${saved ? ` The workbook was last saved by ${saved.name}${saved.day ? ` on ${saved.day}` : ""}.` : ""}`,
  },
  "verdict-by-condition": {
    title: "A pass that hangs on its condition",
    finds:
      "a row that passes with the temperature, humidity or pressure typed for it and would not with that of the other rows of its day and instrument",
    why: "A typed temperature turns a failing reading into a pass without a trace.",
    satisfies: "the condition as it was read, or why it differed there",
    quiet:
      "where it lies within what such a reading is uncertain by, or within the spread of its day, for fewer than four rows of a day and instrument, for rows hours apart, and where the remarks tell of heating",
    message: (
      row: string,
      header: string,
      value: string,
      middle: string,
      others: number,
      verdict: string,
    ) =>
      `${row}: passes with "${header}" of ${value} alone; with ${middle}, the middle of the ${others} other rows of that day and instrument, it comes to ${verdict}. Put the condition right, or say why it differed.`,
  },
  "condition-off-day": {
    title: "A condition unlike its day",
    finds:
      "a temperature, humidity or pressure far from the other rows of its day and instrument; air at saturation, gear out of service that is hot, a surface far from the air around it",
    why: "Readings are corrected by it, and it shows whether somebody looked.",
    satisfies: "the condition as it was read, or why it differed there",
    quiet:
      "for fewer than five rows of a day and instrument, for rows hours apart, where the remarks tell of heating, and where the dew point or a changed verdict is reported already",
    far: (row: string, header: string, value: string, middle: string, others: number) =>
      `${row}: "${header}" is ${value}; the middle of the ${others} other rows of that day and instrument is ${middle}. Put it right, or say why it differed.`,
    odd: (row: string, header: string, value: string, why: string) =>
      `${row}: "${header}" is ${value}, ${why}. Put it right, or say how it came about.`,
    humidity: "which air on site hardly has",
    hot: "hotter than gear out of service gets",
    apart: (air: string) => `far from the air around it at ${air} °C`,
  },
  "register-odd": {
    title: "A list of instruments that was edited, or cannot be",
    finds:
      "two instruments with one Id or serial number; a calibration that ends before it began or holds for more than three years; a due date later, or a calibration earlier, than the lineup has it; another serial number or accuracy, or the serial number gone",
    why: "A due date is moved more easily than an instrument is calibrated.",
    satisfies: "what the certificate says, in the lineup and on the sheet",
    quiet:
      "for an instrument calibrated anew, which has both its days later; for what the lineup does not give; a test outside the calibration is reported by another rule",
    sameId: (id: string) =>
      `${id}: the Id is there twice; a record does not say which of the two was used.`,
    sameSerial: (id: string, serial: string, other: string) =>
      `${id}: has the serial number ${serial} of ${other}; two instruments cannot share a serial number. Look at the certificates.`,
    noSerial: (id: string, before: string) =>
      `${id}: has no serial number here, ${before} in the lineup that the workbook was built for. Without it no certificate can be matched to this instrument; enter it again.`,
    backwards: (id: string, calibrated: string, due: string) =>
      `${id}: calibrated on ${calibrated} and due on ${due}, no later. Look at the certificate.`,
    long: (id: string, calibrated: string, due: string) =>
      `${id}: calibrated on ${calibrated} and due on ${due}, more than three years later. Look at the certificate.`,
    moved: (id: string, now: string, before: string) =>
      `${id}: ${now} here, ${before} in the lineup that the workbook was built for. Look at the certificate, and put right what is wrong.`,
  },
  "instrument-misfit": {
    title: "An instrument that cannot have taken the reading",
    finds:
      "a reading whose instrument is, by its description, of another sort, gives another sort of voltage (AC, DC or very low frequency), does not reach the test voltage, current or value, or is less accurate than the error that it is to prove",
    why: "Either another instrument was used, whose calibration nobody has seen, or the reading was not taken.",
    satisfies: "the instrument that was used, or the test made again with one that fits",
    quiet:
      "where the list of instruments does not say what one measures or reaches, and for conditions, which other instruments take",
    sort: (row: string, instruments: readonly string[], header: string) =>
      `${row}: "${header}" cannot have been taken with the instrument named (${instruments.join("; ")}); name the one that was used.`,
    beyond: (row: string, header: string, reading: string, instruments: readonly string[]) =>
      `${row}: "${header}" is ${reading}, beyond what the instrument named reaches by its description (${instruments.join("; ")}); name the one that was used, or put the entry right.`,
    wave: (row: string, header: string, asked: string, instruments: readonly string[]) =>
      `${row}: "${header}" is a test with ${asked}, and the test set named gives another voltage (${instruments.join("; ")}); name the one that was used.`,
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
