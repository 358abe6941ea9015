import type { RuleTexts } from "../../ruleWords";

/** Rules of readings among readings: what stands out, and what is too much alike. */
export const likeness = {
  "mixed-units": {
    title: "Off by a factor of a thousand",
    finds:
      "a reading about a thousand times above or below similar ones: of the other panels, or of its own where there are no others",
    why: "Instruments change the prefix by themselves. MΩ written for GΩ, or mΩ for µΩ, can turn a failure into a pass.",
    satisfies: "the reading in the unit of the header, or written with its unit: 5.2 GΩ",
    quiet:
      "with fewer than five readings to compare with (three of other panels), and where their own spread reaches so far that chance explains it",
    message: (
      row: string,
      {
        value,
        unit,
        times,
        middle,
        count,
        factor,
      }: {
        readonly value: string;
        readonly unit: string;
        readonly times: string;
        /** Of the similar readings, in the same unit. */
        readonly middle: string;
        readonly count: number;
        /** Within which the similar readings lie. */
        readonly factor: string;
      },
    ) =>
      `${row}: ${value} ${unit} is ${times} times ${middle} ${unit}, the middle of ${count} similar readings (which lie within a factor of ${factor} of it, by median deviation). Was the wrong unit prefix recorded?`,
    expected: (middle: string) => `about ${middle}`,
  },
  "off-group": {
    title: "A reading far from its group",
    finds:
      "a reading that stands out from similar ones on a logarithmic scale: more than six times their robust spread (median deviation; twelve times among ten readings), and at least a factor of five; on a path to earth one of more than ten times its like, which is a query",
    why: "What is made alike measures alike. The odd one may be the first sign of a defect, a wrong connection or a reading of another row.",
    satisfies: "a second reading; nothing, where it is so",
    quiet: "below six readings in a group, within a factor of five, and for rows that fail",
    message: (
      row: string,
      {
        value,
        unit,
        others,
        middle,
        times,
        isAbove,
        factor,
      }: {
        readonly value: string;
        readonly unit: string;
        readonly others: number;
        readonly middle: string;
        readonly times: string;
        readonly isAbove: boolean;
        /** Within which half of the similar readings lie. */
        readonly factor: string;
      },
    ) =>
      `${row}: ${value} ${unit} stands out from ${others} similar readings: their middle is ${middle} ${unit}, and it is ${times} times ${isAbove ? "above" : "below"} it, where half of them lie within a factor of ${factor}.`,
    expected: (middle: string) => `about ${middle}`,
  },
  "same-run": {
    title: "The same readings twice",
    finds:
      "a row, or all phases of one part, points of one device or rows of one panel or section, whose measured numbers are digit for digit those of another, or one column of three phases and more, where chance would make that less than once in a thousand such tables",
    why: "Two instruments' worth of digits do not repeat. A block was copied to be typed over and was not, or readings went to two panels.",
    satisfies: "the readings of this panel; nothing, where they were measured so",
    quiet:
      "where readings of the same test carry too few digits, or spread over too small a range, to tell a copy from chance; the finding gives the numbers",
    message: (
      row: string,
      {
        further,
        count,
        earlier,
        address,
        seldom,
      }: {
        /** Rows after it that are copied with it. */
        readonly further: number;
        /** Of the readings that are the same. */
        readonly count: number;
        readonly earlier: string;
        readonly address: string;
        /** In so many tables chance makes one such likeness. */
        readonly seldom: string;
      },
    ) =>
      `${row}${further > 0 ? ` and the ${further} after it` : ""}: ${count} readings are digit for digit those of ${earlier} (${address}). By the range and digits of such readings chance would make that about once in ${seldom} such tables. Were they copied?`,
  },
  "near-copy": {
    title: "Nearly the same readings",
    finds:
      "a row, all phases of one part, or a panel's rows of a table, that read digit for digit as another's but for one or two cells, where chance would make that less than once in a thousand such tables",
    why: "A block was copied and a digit changed, so that it does not look like one.",
    satisfies: "the readings of this panel; nothing, where they were measured so",
    quiet:
      "for fewer than four readings, readings of too few digits or too small a range; what is the same throughout is reported by another rule",
    message: (row: string, same: number, all: number, earlier: string, seldom: string) =>
      `${row}: ${same} of ${all} readings are digit for digit those of ${earlier}. By the range and digits of such readings chance would make that about once in ${seldom} such tables. Were they copied?`,
  },
  "same-phases": {
    title: "All phases at one reading",
    finds:
      "at least three phases of a part, or rows of a panel, with the very same number in a column: a query where chance would make that less than once in a thousand such tables, by how the other parts' phases lie apart; a note up to once in fifty",
    why: "Three conductors do not measure alike to the last digit. One was measured and written down three times.",
    satisfies: "the reading of each phase; nothing, where they were measured so",
    quiet:
      "with fewer than four parts to compare with, for numbers whose few digits let phases be alike, where most parts are so, as one sheath is around three cores, and where rows are the same in all of several columns: another rule tells copies",
    message: (
      row: string,
      further: number,
      alike: readonly { readonly header: string; readonly value: string }[],
      seldom: string,
    ) =>
      `${row} and the ${further} after it: ${alike.map(({ header, value }) => `"${header}" is ${value}`).join(", ")} in all of them. By how phases differ elsewhere chance would make that about once in ${seldom} such tables. Was each measured?`,
  },
  "after-as-before": {
    title: "After the test as before it",
    finds:
      "at least two readings of a part after the withstand test that are digit for digit those before it: a query of three or more where chance would make that less than once in a thousand such tables; else a note, up to once in fifty",
    why: "Insulation does not read the same twice. What was to be measured after the test was copied from before it.",
    satisfies: "the readings after the test; nothing, where they were measured so",
    quiet:
      "for a single reading, for bounds such as > 10 TΩ, and for readings of too few digits to tell a copy from chance",
    message: (row: string, same: number, all: number, seldom: string) =>
      `${row}: ${same} of ${all} readings after the withstand test are digit for digit those before it. By how such readings differ elsewhere chance would make that about once in ${seldom} such tables. Were they copied?`,
  },
  "even-steps": {
    title: "Readings in even steps",
    finds:
      "at least five readings in the order of their rows that go up or down by the very same step, where chance would make that less than once in a thousand such tables, by how such readings lie",
    why: "Readings scatter. A row of even steps was filled down, or made up.",
    satisfies: "the instrument's own record of the readings",
    quiet:
      "within one panel, as of the points of a meter, for fewer rows, and where readings of few digits or a small range let chance do it",
    message: (row: string, header: string, readings: number, step: string, rarely: string) =>
      `${row}: "${header}" goes on by ${step} in each of ${readings} rows, from here on. By how such readings lie chance would make that about once in ${rarely} such tables. Were they read?`,
  },
  "without-error": {
    title: "No error at any point",
    finds:
      "a meter, relay or transformer of at least three points without any error, to the last digit that such readings have or within three of it: a query where chance would make that less than once in a thousand such tables, by how far the others are off; a note up to once in fifty",
    why: "Every device is off by something. Readings without error are what was applied or calculated, written down again.",
    satisfies: "the instrument's own record of the readings; nothing, where they were read so",
    quiet:
      "for fewer points, with fewer than eight points of others, and where readings of few digits hide the error",
    message: (
      row: string,
      header: string,
      points: number,
      further: readonly string[],
      seldom: string,
      /** True where they are within a few last digits of it. */
      nearly: boolean,
    ) =>
      `${row}: "${header}" is ${nearly ? "within three last digits of" : "exactly"} what it should be at all of ${points} points, from here on${further.map((one) => ` and from ${one} on`).join("")}. By how far such readings are off elsewhere chance would make that about once in ${seldom} such tables. Were they read?`,
  },
  "phases-apart": {
    title: "One phase far from the others",
    finds:
      "the burden of one phase more than five times above or below that of the other phases of its winding or core; a current of one phase above four times, or below a fifth (of leakage in µA, a fifteenth), the middle of its other phases and of like circuits; a pole's contact resistance below half of its others'; a winding's resistance more than 1.4 times apart from both; an insulation resistance below an eighth of both, or above 25 times",
    why: "A lead was off, a fuse out or a phase open: the test of that phase proves little.",
    satisfies: "the phase measured again; nothing, where it is so",
    quiet:
      "half as far again without at least five like rows, for rows that fail, where the middle is within twenty last digits of nothing, with fewer than three phases, and where more than one stands apart",
    message: (row: string, header: string, value: string, middle: string) =>
      `${row}: "${header}" is ${value}, and the middle of the other phases is ${middle}. Was the lead on, and the whole phase in?`,
    expected: (middle: string) => `about ${middle}`,
  },
  "versions-differ": {
    title: "Another firmware than its like",
    finds:
      "one relay that shows another firmware than at least two others with settings of the same names, which all show one; a relay with two versions in its own rows",
    why: "A relay of another firmware may act otherwise with the same settings, and was then not tested as the others were.",
    satisfies:
      "the version put right, or the maker's word that the versions are alike in what is used",
    quiet: "with fewer than three such relays, and where more than one differs",
    message: (row: string, version: string, usual: string, others: number) =>
      `${row}: firmware ${version}, and ${others} others with the same settings show ${usual}. Read it again, or ask the maker what differs.`,
    own: (row: string, version: string, other: string) =>
      `${row}: firmware ${version}, and another row of the same relay shows ${other}. Was it changed after that?`,
  },
  "half-turn": {
    title: "An angle half a turn from the others",
    finds:
      "an angle of current against the injected one that lies about 180° from those of three other rows or more, which agree within 30°",
    why: "A reversed current transformer, or a reversed connection, shows so; a differential relay adds up what it should take off.",
    satisfies:
      "the polarity put right and tried again; or a remark that says why it is so, as where the relay counts a current out of the zone the other way",
    quiet:
      "with a remark, for a current that is tried in reverse, and where the others do not agree",
    message: (row: string, angle: string, others: number, middle: string) =>
      `${row}: the angle is ${angle}°, and ${others} other rows have about ${middle}°. Check the polarity, or say in the remarks why it is so.`,
  },
  "against-siblings": {
    title: "The other way round than its siblings",
    finds:
      "two quantities of one device, such as its speeds of closing and opening, of which the greater is the lesser in all others of its make",
    why: "Two readings were exchanged as they were written down, and both may still lie within their limits.",
    satisfies: "the readings put right; nothing, where it is so",
    quiet:
      "with fewer than five devices of the same limits, and where the others have no clear order",
    message: (row: string, one: string, other: string, address: string, others: number) =>
      `${row}: ${one} and ${other} (${address}) stand the other way round than in all of ${others} others of the same limits. Were they exchanged?`,
  },
  "below-background": {
    title: "A level below its background",
    finds: "a level under voltage that is more than 2 dB below the background before it",
    why: "What is there without voltage is there with it: one of the two was read elsewhere, otherwise, or written in the wrong cell.",
    satisfies: "background and level read again, with the same sensor at the same place",
    quiet: "within 2 dB, and without both",
    message: (row: string, level: string, background: string) =>
      `${row}: level ${level}, below the background of ${background}. Were the two exchanged?`,
    expected: (background: string) => `at least ${background}`,
  },
  "same-file": {
    title: "One settings file at two relays",
    finds: "the same hash of a settings file beside two relays",
    why: "Every relay has settings of its own, at least its name: a file that is the same was not read out of both.",
    satisfies: "the hash of each relay's own file",
    quiet: "within one relay",
    message: (row: string, hash: string, other: string, address: string) =>
      `${row}: the file's hash ${hash} is that of ${other} (${address}). Was the file read out of this relay?`,
  },
  "too-good": {
    title: "Better than readings are",
    finds:
      "at least twenty readings of three digits that all are exactly their limit, calculation or reference; at least three clearances or lengths of three digits that all are exactly their limit; at least ten rows that share three and more columns digit for digit; no charging current, or the same one in eight rows and more, on withstand tests that pass",
    why: "What is measured scatters. One chance in ten for the last digit of each makes twenty on target once in a hundred million million million.",
    satisfies: "the instrument's own record of its readings, or how they came about",
    quiet:
      "for tools that show what they were set to, such as click wrenches, for what is set and not read, for fewer digits and few rows",
    onTarget: (row: string, header: string, count: number, target: string) =>
      `${row}: "${header}" is exactly "${target}" here and in nearly all of ${count} readings. Were they read?`,
    atLimit: (row: string, header: string, count: number) =>
      `${row}: "${header}" is exactly the limit in all of ${count} rows with one, to the millimetre. Were they measured?`,
    sameDigits: (row: string, rows: number, headers: readonly string[]) =>
      `${row}: ${rows} rows share ${headers
        .map((header) => `"${header}"`)
        .slice(0, 6)
        .join(", ")}${headers.length > 6 ? " and more" : ""} digit for digit. Were they read?`,
    noCurrent: (row: string, header: string) =>
      `${row}: passes with "${header}" of 0; insulation under alternating or rising voltage takes a charging current. Was the test object connected?`,
    sameCurrent: (row: string, header: string, value: string, count: number) =>
      `${row}: "${header}" is ${value} in ${count} rows; charging currents differ with the circuit. Were they read?`,
  },
  "digit-pattern": {
    title: "Digits that repeat",
    finds:
      "a column of at least 60 readings whose third digits are far from evenly spread: chi-square above 45 for ten digits, which chance exceeds about once in a million",
    why: "Instruments know no favourite digit; people do, when they round, estimate or invent.",
    satisfies:
      "nothing, where the instrument shows no third digit; else the instrument's own record of its readings",
    quiet:
      "for fewer readings, fewer than three digits, and readings too close together for their digits to vary",
    message: (
      header: string,
      {
        readings,
        counts,
        even,
        chi,
        seldom,
      }: {
        readonly readings: number;
        /** Of each digit from 0. */
        readonly counts: readonly number[];
        readonly even: string;
        readonly chi: string;
        readonly seldom: number;
      },
    ) =>
      `"${header}": the third digits of ${readings} readings are unevenly spread: ${counts.map((count, digit) => `${digit}: ${count}`).join(", ")} (about ${even} each are to be expected; chi-square ${chi}, above ${seldom} about once in a million). Does the instrument show a third digit?`,
    expected: (seldom: number) => `at most ${seldom}`,
  },
} satisfies RuleTexts;
