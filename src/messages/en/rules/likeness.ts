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
      "a reading that passes and stands out from similar ones on a logarithmic scale: more than six times their robust spread (median deviation; twelve times among ten readings), and at least a factor of five",
    why: "What is made alike measures alike. The odd one may be the first sign of a defect, a wrong connection or a reading of another row.",
    satisfies: "a second reading; nothing, where it is so",
    quiet: "below six readings in a group, within a factor of five, and for rows that do not pass",
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
      "a row, or all phases of one part, whose measured numbers are digit for digit those of another, where chance would make that less than once in a thousand such tables",
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
  "too-good": {
    title: "Better than readings are",
    finds:
      "at least twenty readings of three digits that all are exactly their limit, calculation or reference; at least ten rows that share three and more columns digit for digit; no charging current, or the same one in eight rows and more, on withstand tests that pass",
    why: "What is measured scatters. One chance in ten for the last digit of each makes twenty on target once in a hundred million million million.",
    satisfies: "the instrument's own record of its readings, or how they came about",
    quiet:
      "for tools that show what they were set to, such as click wrenches, for what is set and not read, for fewer digits and few rows",
    onTarget: (row: string, header: string, count: number, target: string) =>
      `${row}: "${header}" is exactly "${target}" here and in nearly all of ${count} readings. Were they read?`,
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
