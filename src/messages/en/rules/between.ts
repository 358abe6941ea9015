import type { RuleTexts } from "../../ruleWords";

/** Rules between records: what two of them say of one thing, and what a day of them comes to. */
export const between = {
  "records-contradict": {
    title: "Two records that contradict each other",
    finds:
      "a relay left at another setting than its element was tested at (stop); settings confirmed for energization that another sheet shows to be other than ordered (stop); a main circuit that resists less than the breaker pole in it; a current transformer's burden below what its loop's resistance takes, or more than five times that; readings of one connection more than ten times apart on one day in insulation and insulation over time",
    why: "Each passes by itself, and both cannot be right: one of them was taken elsewhere, or is not what is left.",
    satisfies: "the record that is wrong put right, or the test made again as the device is left",
    quiet:
      "where one of the two has no reading; within what two instruments may differ by; for a setting in primary values of the panel's transformers, or in a unit that cannot be compared; for parameters whose names do not say what they set",
    setting: (row: string, left: string, test: string, tested: string) =>
      `${row}: left at ${left}, and tested at ${tested} ("${test}"). Test it as it is left, or set it as it was tested, by the approved order.`,
    confirmed: (row: string, state: string, parameter: string, agrees: string) =>
      `${row}: seen to as ${state}, and "${parameter}" is ${agrees.toLowerCase()}. Set the relay by its approved order, or withdraw what was confirmed.`,
    whole: (row: string, whole: string, pole: string, part: string) =>
      `${row}: ${whole}, less than the ${part} of the breaker pole in it ("${pole}"). A part cannot resist more than the whole: measure both again.`,
    burden: (row: string, loop: string, core: string, burden: string) =>
      `${row}: the loop takes ${loop}, and the burden was measured as ${burden} ("${core}"). Look for what was connected to one and not to the other, and measure again.`,
    reading: (row: string, here: string, record: string, there: string) =>
      `${row}: ${here} after one minute, and ${there} on the same day in "${record}". Say which of the two it is, or measure again.`,
  },
  "permit-holder": {
    title: "A permit held by somebody who did none of the work",
    finds:
      "a permit whose holder is named by no record as who made it, while other permits are held by those who did the work",
    why: "The holder keeps the isolation and sees to the crew's safety. Who looks on, or works elsewhere, cannot do that.",
    satisfies:
      "the holder put right; nothing, where the holder led the crew without signing records",
    quiet:
      "where no permit is held by anybody who made records, and where one name is a part of the other",
    message: (row: string, holder: string) =>
      `${row}: held by ${holder}, whom no record names as who made it. Was the permit held by those who did the work?`,
  },
  "day-overfull": {
    title: "More testing than a day holds",
    finds:
      "records of one person on one day that come to more than sixteen hours, of cables to more than ten hours with one test set at voltage, or of one instrument to more than a day, by what they last: insulation with its discharge, insulation over time, withstand and cable tests as held, a battery's discharge",
    why: "Either the day, the name or the instrument is wrong, or readings were written down that nobody took.",
    satisfies: "the day, tester or instrument of each record put right",
    quiet:
      "for crews and teams, cables whose remark or second instrument says that phases were tested together, for records that do not tell how long they take, and for a person's part in tests of more than four hours",
    person: (row: string, name: string, day: string, records: number, hours: string) =>
      `${row}: the first of ${records} records by ${name} of ${day}, which take ${hours} h at least. Correct the dates, or name who made them.`,
    watched: (row: string, name: string, day: string, records: number, hours: string) =>
      `${row}: the first of ${records} records with ${name} of ${day}, in which test voltage was on for ${hours} h. Correct the dates, name the second set, or say in the remarks which phases were tested together.`,
    instrument: (row: string, name: string, day: string, records: number, hours: string) =>
      `${row}: the first of ${records} records with ${name} of ${day}, which take ${hours} h at least. Correct the dates, or name the instruments that they were made with.`,
  },
  "withstand-on-failed": {
    title: "High voltage on failed insulation",
    finds:
      "a test at high voltage of something whose insulation failed in the same row, as a cable's, or in the insulation record of another part of its panel, as a breaker's open poles",
    why: "The insulation is looked for, dried or mended first: a withstand test on it may destroy what could have been saved, and endangers people.",
    satisfies:
      "the insulation measured anew and passed before the test; or the test made again after that",
    quiet:
      "where no voltage was applied; for the insulation of the circuit itself, of which another rule tells",
    message: (row: string, applied: string, failed: string) =>
      `${row}: ${applied} was applied, though its insulation had failed (${failed}). Find the cause first, and say what was done.`,
  },
  "repeat-unexplained": {
    title: "A bad reading repeated without a word why",
    finds:
      "a record that does not fail, of which the reading history holds a reading by which it would, without a remark or repair",
    why: "Whoever measures until it passes has found nothing; a reader asks what was wrong the first time.",
    satisfies:
      "the cause in the remarks, such as a lead that was loose; or the repair in the sheet Repairs",
    quiet: "where the remarks say anything, or a repair of the row is recorded",
    message: (row: string, header: string, was: string, now: string) =>
      `${row}: "${header}" was ${was}, which fails, before it was ${now}, and nothing says why it was measured again. Give the cause in the remarks, or the repair.`,
  },
  "curve-turns": {
    title: "A curve that turns back",
    finds:
      "a measured curve of which a point rises along and falls upward against the one before it, or the other way: an exciting current that falls while the voltage rises",
    why: "A winding takes more current at more voltage; a point off its curve was misread or mistyped, and the knee is worked out from it.",
    satisfies: "the point as the instrument showed it, or the curve taken again",
    quiet:
      "for points that are blank, for curves over time, which may rise and fall, and where the row is inconclusive, as another rule tells",
    message: (row: string, header: string, is: string, before: string, was: string) =>
      `${row}: "${header}" is ${is}, and "${before}" before it ${was}: the curve turns back. Put the point right, or take the curve again.`,
    expected: (was: string) => `above ${was}`,
  },
  "struck-but-there": {
    title: "Marked not applicable, but present",
    finds:
      "an item answered as not applicable whose thing another record of the panel tested or tried, or which the lineup itself has: an earthing switch, a relay's trip, instrument transformers, heaters, meters, the interlock between supplies",
    why: "An item that is struck out is not tested, and nobody asks for it again.",
    satisfies: "the item answered as it was found, or the other record put right",
    quiet:
      "where no other record shows the thing, or those that could are blank or struck out as well",
    record: (row: string, word: string, shown: string) =>
      `${row}: marked "${word}", but ${shown} shows that it is there. Record what was found, or correct the other record.`,
    lineup: (row: string, word: string) =>
      `${row}: marked "${word}", but the lineup lists it. Record what was found.`,
  },
} satisfies RuleTexts;
