import type { RuleTexts } from "../../ruleWords";

/** Rules of days: what comes before what. */
export const order = {
  "hold-not-released": {
    title: "A hold point passed over",
    finds: "records of a kind that went ahead before the hold point that guards it was released",
    why: "A hold point is where the client agreed to look first; what was done without it may have to be done again.",
    satisfies: "the release, dated on or before the records' day",
    quiet: "where inspection points are left out, and for rows without readings",
    notReleased: (row: string, activity: string) =>
      `${row}: went ahead of the hold point "${activity}", which is not released. Nothing that it guards goes ahead before its release.`,
    releasedLate: (row: string, activity: string, released: string, day: string) =>
      `${row}: went ahead of the hold point "${activity}", released on ${released}, after this record of ${day}. Nothing that it guards goes ahead before its release.`,
  },
  "withstand-before-insulation": {
    title: "Withstand before insulation",
    finds:
      "a withstand test on a circuit whose insulation had not passed before it; once, as a query, where the project leaves insulation out",
    why: "A withstand test on wet or dirty insulation destroys what drying would have saved.",
    satisfies: "the insulation measured and passed on the day of the withstand test or before",
    quiet: "for withstand rows without a reading",
    leftOut: (reason: string) =>
      `Insulation is left out of this workbook (${reason}), so that it does not show whether the insulation had passed before the withstand test; look it up where it is kept, or take it in.`,
    noRow: (row: string) =>
      `${row}: tested, though its insulation before the test had not passed (no insulation row for this circuit).`,
    notPassed: (row: string, open: readonly string[]) =>
      `${row}: tested, though its insulation before the test had not passed (${open.join(", ")}).`,
    measuredLater: (row: string, day: string, measured: string) =>
      `${row}: tested on ${day}, before its insulation "before" was measured on ${measured}.`,
  },
  "after-before-withstand": {
    title: '"After" dated before',
    finds:
      'insulation "after" the withstand test that is dated before it, or before the measurement "before" of the same connection',
    why: "It is then not the insulation after the test.",
    satisfies: "the day on which it was measured, or the measurement made",
    quiet: "where one of the two has no date",
    beforeTest: (row: string, day: string, test: string) =>
      `${row}: dated ${day}, before the withstand test of ${test} that it should follow.`,
    beforeFirst: (row: string, day: string, first: string) =>
      `${row}: dated ${day}, before the measurement "before" of ${first} that it should follow.`,
  },
  "before-predecessor": {
    title: "Dated before what must come first",
    finds:
      "a record dated before the record of the same panel or section that must have passed before it, the trip of a relay before its injection, an injection before the wiring was tested or before a setting of its element was changed, or settings read back before the relay's last injection: once for a panel and day",
    why: "A contact resistance measured before the joints were tightened, a withstand test before the gas was filled, or an injection before the setting was changed, says nothing about what is there now.",
    satisfies: "the day on which it was made; or the test made again after the earlier work",
    quiet:
      "where one of the two has no date; for settings that were left as they were found; for injections before the wiring, and for settings read back, with a remark; for relays whose own record says what they were left at; insulation and withstand are held against each other by rules of their own",
    message: (row: string, day: string, record: string, first: string) =>
      `${row}: dated ${day}, before "${record}" of ${first}, which must come first.`,
    expected: (first: string) => `${first} or later`,
  },
  "out-of-order": {
    title: "Out of the order of the work",
    finds:
      "records dated on the wrong side of another step on the same panel: work before its receipt; cables tested before their panel was installed; installation or joints after the insulation or withstand test; earthing after the withstand test; anything after energization",
    why: "A joint made, or a part fitted, after the test was never tested.",
    satisfies: "the day put right, or the test repeated after the later work",
    quiet:
      "on one day, for rows without a day or reading, and where record kinds name what must come first: another rule reports that",
    late: (row: string, day: string, record: string, first: string) =>
      `${row}: dated ${day}, after "${record}" of ${first} on the same panel, which comes after it. Correct the date, or repeat what came before.`,
    early: (row: string, day: string, record: string, last: string) =>
      `${row}: dated ${day}, before "${record}" of ${last} on the same panel, which comes before it. Correct the date, or repeat the test.`,
  },
  "operations-uncounted": {
    title: "Operations that were not counted",
    finds:
      "an operation counter that moved by less than the coils tried in its row had to operate, or that stands where an earlier record of the breaker left it although the breaker was timed on the days between",
    why: "A counter that does not count, or readings of it that were made up, say nothing of how often the breaker worked.",
    satisfies: "the counter read again, or the record that it was read wrongly",
    quiet:
      "without both readings and a day, for operations of the same day as a reading of the counter, whose order the records do not tell, and where the counter runs back, which the row's result tells",
    row: (row: string, counted: number, shown: number) =>
      `${row}: the counter moved by ${counted}, and the coils tried in this row closed the breaker at least ${shown} times. Read the counter again.`,
    between: (
      row: string,
      {
        moved,
        from,
        closings,
        first,
      }: {
        /** By how much the counter moved since the record before. */
        readonly moved: number;
        readonly from: string;
        /** That other records show on the days between, and the day of the first. */
        readonly closings: number;
        readonly first: string;
      },
    ) =>
      `${row}: the counter moved by ${moved} since the record of ${from}, and the breaker was closed at least ${closings === 1 ? "once" : `${closings} times`} between (first on ${first}). Read the counter again.`,
  },
  "inspection-off": {
    title: "An inspection that cannot have looked on",
    finds:
      "a witness point held before the work that it witnesses, or on a day on which the test was not made; a point asked for after it was held, a witness or hold point released by who made the records",
    why: "Who was not there has witnessed nothing, and nobody releases his own work.",
    satisfies: "the day and name of the inspection as it was, or the inspection held again",
    quiet:
      "for review points, for points that are not released, and for activities whose words name no record of the workbook",
    requested: (row: string, requested: string, held: string) =>
      `${row}: asked for on ${requested}, after it was held on ${held}. Correct the dates.`,
    early: (row: string, held: string, record: string, first: string) =>
      `${row}: held on ${held}, before the first record of "${record}" on ${first}, so that nothing was witnessed. Correct the date, or have it witnessed.`,
    elsewhen: (row: string, held: string, record: string, days: readonly string[]) =>
      `${row}: held on ${held}, on which no record of "${record}" was made (${days.join(", ")}). Correct the date, or have it witnessed.`,
    own: (row: string, by: string, record: string) =>
      `${row}: released by ${by}, who also made records of "${record}". Somebody else has to release it.`,
  },
  "checked-late": {
    title: "Looked at only after the tests",
    finds:
      "a review of drawings, procedures or calibration, or a document's revision, that is dated after the first test of its panels",
    why: "What was tested from the wrong drawing or with a lapsed instrument is tested again; the look comes first.",
    satisfies: "the day put right; a remark that says what was looked at before, and when",
    quiet:
      "for reviews of other things, such as test reports, for documents whose remarks say something, where the same revision was looked at before, and for a test whose day stands but once for its panel",
    message: (row: string, day: string, record: string, first: string) =>
      `${row}: looked at on ${day}, after the first "${record}" of ${first}, which relies on it. Correct the date, or say what was looked at before.`,
  },
  "step-skipped": {
    title: "Done before what it waits for",
    finds:
      "an item of the first energization that is answered while earlier ones of its panel or of the lineup are blank, or were found not OK, which is a stop; readings under load while the panel's rotation and phasing are blank or failed",
    why: "What is put back, released and tried before voltage is worth nothing afterwards.",
    satisfies: "the earlier items answered as they were, or not applicable with a remark",
    quiet:
      "where nothing later is answered, and for items of the project's own without a place in the order",
    message: (row: string, blank: readonly string[], all: number) =>
      `${row}: answered, while what comes before it is blank: ${blank.join("; ")}${all > blank.length ? ` and ${all - blank.length} more` : ""}. Answer these, or put the item back.`,
    wrong: (row: string, failed: readonly string[], all: number) =>
      `${row}: answered although earlier steps were found not in order: ${failed.join("; ")}${all > failed.length ? ` and ${all - failed.length} more` : ""}. Inform the person in charge of switching; put it in order and record that before going on.`,
  },
  "energized-unproven": {
    title: "Energized without proof",
    finds:
      "a panel that stood under voltage by the energization's records, or by readings that are taken alive, while records of it or of its bus section fail, prove nothing or are missing; a query where only labels, heaters, meters or its receipt are not in order",
    why: "Energizing gear that failed, or that nobody tested, is how people get hurt and gear is lost.",
    satisfies:
      "the records as they were before voltage; or each of them soundly accepted, by name, in the sheet Concessions",
    quiet:
      "for panels of which no record tells of voltage, for records of the energization itself, papers and permits, and for kinds that the project leaves out",
    message: (row: string, panel: string, unproven: readonly string[], all: number) =>
      `${row}: ${panel} was energized, but its records do not prove that it was fit to be: ${unproven.join("; ")}${all > unproven.length ? ` and ${all - unproven.length} more` : ""}. Inform the person in charge of switching at once; put the records in order, or have each accepted by name.`,
  },
  "not-alive-yet": {
    title: "Live reading before energization",
    finds:
      "phasing, partial discharge or hot spots under voltage that are dated before the first record of voltage, or while no record tells of any; once for a day",
    why: "Without voltage there was nothing to read; with voltage, somebody gave it before it was released.",
    satisfies:
      "the day put right, the steps of the energization answered, or a remark that says what fed it",
    quiet:
      "on the day of the first voltage, for readings with a remark, in maintenance, where the gear was alive before, and where the project keeps no record of the energization",
    early: (row: string, day: string, first: string) =>
      `${row}: a live reading of ${day}, before the gear was first energized by its records on ${first}. Correct the date, or say in the remarks what fed it.`,
    never: (row: string, day: string) =>
      `${row}: a live reading of ${day}, but no record shows the gear energized. Answer the steps of the energization as they were, or say in the remarks what fed it.`,
  },
  "remark-asked": {
    title: "Required remark missing",
    finds: "an item that says what is to stand in its remarks, answered OK without any",
    why: "A release without the name of who released it, or a cable without its far end, is none.",
    satisfies: "what the item asks for, in its remarks",
    quiet: "for any remark, and for items that are not answered, not OK or not applicable",
    message: (row: string) =>
      `${row}: answered without the remark it requires. Write in the remarks what the item asks for.`,
  },
  "two-places": {
    title: "At two places at one minute",
    finds:
      "one instrument, or one person, that tested on two panels at the same minute; two tests of a minute and more that one instrument began at the same minute, by their days or by where their readings come from",
    why: "One of the two was tested at another time, with another instrument, or not at all.",
    satisfies: "the time or the instrument put right",
    quiet:
      "for days without an hour, for crews, where more than two places or tests share a minute, which is then the time of an export, and of two tests with a remark, as of phases that were joined",
    once: (row: string, who: string, minute: string, other: string) =>
      `${row}: begun with ${who} at ${minute}, as was ${other}, and each takes a minute and more. Put the time right, or say in the remarks that they were tested together.`,
    message: (row: string, who: string, minute: string, other: string) =>
      `${row}: ${who} tested here at ${minute}, and at that minute also ${other}. Put the time or the instrument right.`,
  },
  "future-date": {
    title: "A date in the future",
    finds: "a record dated after the day of the check",
    why: "It was not made on the day it names, or was written before it was made.",
    satisfies: "the day of the test",
    quiet: "for the day of the check itself",
    message: (row: string, day: string) => `${row}: dated ${day}, which is in the future.`,
  },
  "date-swapped": {
    title: "Day and month exchanged",
    finds:
      "a date that stands more than three weeks apart from all others of its table, and among them when day and month are exchanged",
    why: "Programs read 03/11 as March or November by their own setting; the order of tests and the calibration are judged by it.",
    satisfies: "the day of the test, written so that nobody can read it otherwise: 2026-11-03",
    quiet: "for tables with fewer than three other dates, and days after the twelfth",
    message: (row: string, day: string, first: string, last: string, exchanged: string) =>
      `${row}: dated ${day}, away from the table's others (${first} to ${last}); with day and month exchanged it is ${exchanged}.`,
  },
} satisfies RuleTexts;
