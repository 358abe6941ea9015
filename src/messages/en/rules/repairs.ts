import type { RuleTexts } from "../../ruleWords";

/** Rules of what failed and was repaired, and of the punch list. */
export const repairs = {
  "void-after-repair": {
    title: "Made before a repair that reaches it",
    finds:
      "a record that was made before a repair by which it no longer holds, and a repaired record that was not tested again; as a query where it depends on what was touched. The table at the end says which repair reaches which records (common practice, no source)",
    why: "What was opened, replaced or adjusted after a test was never tested as it is now.",
    satisfies: "the test made again after the repair, with its new day",
    quiet:
      "for records of the day of the repair or later, for records that failed or that hold nothing, and for repairs that lack their work or day: other rules report that",
    stands: (row: string, day: string, work: string, repaired: string, on: string) =>
      `${row}: dated ${day}, before the repair of ${repaired} on ${on} ("${work}"), which makes it void. Test it again.`,
    asks: (row: string, day: string, work: string, repaired: string, on: string) =>
      `${row}: dated ${day}, before the repair of ${repaired} on ${on} ("${work}"). If the repair touched it, test it again; else accept this with the reason.`,
    notAgain: (row: string, day: string, on: string) =>
      `${row}: dated ${day}, and repaired on ${on}. Test it again.`,
    outstanding: (row: string, on: string) =>
      `${row}: failed, was repaired on ${on}, and has not been tested again.`,
  },
  "repair-incomplete": {
    title: "A repair that does not say enough",
    finds:
      "a row of the sheet Repairs that lacks its record, cause, work, what was done, who or when; a work that is none of the list; a day in the future, or before the failed test; a record that the workbook does not have",
    why: "Without its work and day nobody can say which tests it makes void, and without its cause the failure comes again.",
    satisfies: "what it lacks",
    quiet: "for blank rows",
    lacks: (row: string, header: string) => `The repair of ${row} has no "${header}".`,
    work: (row: string, work: string, works: string) =>
      `The repair of ${row} was made on "${work}", which is none of the list; use one of: ${works}.`,
    future: (row: string, day: string) =>
      `The repair of ${row} is dated ${day}, which is in the future.`,
    early: (row: string, day: string, tested: string) =>
      `The repair of ${row} is dated ${day}, before the failed test of ${tested}.`,
    noRecord: (row: string, sheet: string) =>
      `The repair names "${row}" on the sheet "${sheet}", and the workbook has no such record; give sheet and row as the finding gives them.`,
  },
  "punch-open": {
    title: "Open on the punch list",
    finds:
      "in the check for hand-over, an item that was put onto the punch list by hand and is not closed, or is closed without a note; in every check, one that is closed though the record that it names still fails; it weighs what its severity says",
    why: "What somebody saw on site and wrote down is as open as what the check found.",
    satisfies: "the item seen to, and closed with a note that says how",
    quiet:
      "for items that came of a finding, for open ones outside the check for hand-over, and for closed ones whose words do not name a record's every key",
    open: (what: string) => `On the punch list, and open: ${what}`,
    noNote: (what: string, state: string) =>
      `On the punch list, ${state.toLowerCase()} without a note that says how: ${what}`,
    stillFails: (what: string, row: string, place: string) =>
      `On the punch list, closed, and ${row} still fails (${place}): ${what} Open it again, or enter what the record holds since.`,
  },
} satisfies RuleTexts;
