import { countIn } from "../plurals";

const count = countIn("en");
const limitWords = (side: "least" | "most", limit: string) =>
  side === "least" ? `at least ${limit}` : `at most ${limit}`;

/** What the check of a workbook in somebody's own layout says. */
export const survey = {
  beyondLimit: (value: string, side: "least" | "most", limit: string, from: string) =>
    `${value} is outside the limit: ${limitWords(side, limit)} (${from}).`,
  markedPass: (
    value: string,
    side: "least" | "most",
    limit: string,
    from: string,
    result: string,
  ) =>
    `${value} is outside the limit, ${limitWords(side, limit)} (${from}), and the line says "${result}".`,
  failedAsSaid: (value: string, side: "least" | "most", limit: string, from: string) =>
    `${value} is outside the limit, ${limitWords(side, limit)} (${from}); the line says so too. Repair and retest.`,
  broughtTo20: (value: string, reading: string, temperature: string) =>
    `${value} at 20 °C (${reading} at ${temperature})`,
  limitMisread: (lines: number, all: number, side: "least" | "most", limit: string) =>
    `${lines} of ${all} readings lie outside the stated limit, ${limitWords(side, limit)}, and are marked as passed: is the limit, or its unit, the right one?`,
  belowCriterion: (value: string, criterion: string, source: string) =>
    `The test level of this table is ${value}; the criterion is ${criterion} (${source}): which document sets the lower level?`,
  toldOnce: (times: number, readings: number, message: string) =>
    `${message} The same holds ${times} times among ${readings} readings: is the table laid out as it was read here?`,
  /** By what a table was recognised: the titles of its readings, their units, the words over it. */
  recognisedBy: (titles: readonly string[], units: readonly string[], heading?: string) =>
    [
      `readings under ${titles.map((title) => `"${title}"`).join(", ")}`,
      ...(units.length > 0 ? [`in ${units.join(", ")}`] : []),
      ...(heading === undefined ? [] : [`under "${heading}"`]),
    ].join("; "),
  statedAt: (address: string) => `stated at ${address}`,
  missingReading: (result: string | undefined) =>
    result === undefined
      ? "There is no reading here."
      : `There is no reading here, and the line says "${result}".`,
  openLines: (lines: number) =>
    `${count(lines, { one: "line has", other: "lines have" })} no reading yet.`,
  notAReading: (text: string) => `"${text}" is not a reading; write the number with its unit.`,
  missingEntry: (title: string, filled: number, all: number) =>
    `"${title}" is blank here, and filled in ${filled} of ${all} lines.`,
  missingLabel: (label: string) => `"${label}" is blank on this sheet.`,
  unitSlip: (value: string, median: string, factor: number) =>
    `${value} is about ${factor} times off the other readings here (middle ${median}): wrong unit or misplaced decimal mark?`,
  levelTooLow: (value: string, required: string, from: string) =>
    `Test level ${value} is below ${required} (${from}).`,
  levelTooHigh: (value: string, required: string, from: string) =>
    `Test level ${value} is above ${required} (${from}): an overstress has to be reported to the maker.`,
  timeTooShort: (value: string, required: string, from: string) =>
    `Held for only ${value}; should be ${required} (${from}).`,
  asOthers: (share: string) => `as in ${share} of the lines`,
  asHeading: "as the heading says",
  brokeDown: (said: string, result: string | undefined) =>
    result === undefined
      ? `A disruptive discharge is recorded ("${said}") and no result.`
      : `A disruptive discharge is recorded ("${said}"), and the line says "${result}".`,
  failWithoutReason: (result: string) =>
    `The line says "${result}", and every reading in it is within its limit: which is right?`,
  otherFormula: (most: number, all: number) =>
    `This formula differs from the one in ${most} of ${all} lines: does it refer to another line?`,
  typedOver: (most: number, all: number) => `A typed value; ${most} of ${all} lines calculate it.`,
  otherLimit: (value: string, most: string, share: number, all: number) =>
    `The limit here is ${value}; in ${share} of ${all} places it is ${most}.`,
  notCorrected: (value: string, expected: string, method: string) =>
    `The corrected value ${value} does not follow from the reading; by ${method}, as in the other lines, it is ${expected}.`,
  invertedFactor: (value: string, expected: string, method: string) =>
    `The corrected value ${value} looks divided by the factor instead of multiplied, or the other way round; by ${method}, as in the other lines, it is ${expected}.`,
  doesNotAddUp: (title: string, value: string, expected: string, method: string) =>
    `"${title}" is ${value} here; ${method}, as in the other lines, it is ${expected}.`,
  /** How a column or a line of totals is worked out from readings. */
  ways: {
    mean: "mean",
    sum: "sum",
    lowest: "lowest",
    highest: "highest",
    aboveLowestPercent: "highest above lowest, in percent of the lowest",
    rangePercentOfMean: "highest less lowest, in percent of the mean",
    rangePercentOfHighest: "highest less lowest, in percent of the highest",
    furthestFromMeanPercent: "furthest from the mean, in percent",
    range: "highest less lowest",
    highestThroughLowest: "highest through lowest",
    lastThroughFirst: "the last through the first",
    lastThroughFirstPercent: "the last through the first, in percent",
    changePercent: "the last less the first, in percent of the first",
    change: "the last less the first",
    errorOfExpected: "reading against what is expected, in percent",
    errorOfApplied: "reading against what was applied, in percent",
    errorOfPrimary: "ratio times secondary, against the primary, in percent",
  },
  halving: (base: number) => `halving per 10 K to ${base} °C`,
  factorOf: (temperature: number) => `the factor of the other lines at ${temperature}°`,
  oneFactor: "the one factor of this table",
  duplicate: (other: string, panel: string) =>
    `The readings are the same, one by one, as those of ${panel} at ${other}: copied?`,
  repeatedTable: (copies: number, all: number, other: string) =>
    `${copies} of the ${all} sets of readings here are the same, one by one, as in the table at ${other}: is one a copy of the other?`,
  repeatedLine: (other: string) =>
    `The same panel and connection stand at ${other} too: which one counts?`,
  future: (day: string) => `${day} lies in the future.`,
  beforeStage: (after: string, before: string) =>
    `The test after the withstand test is dated ${after}, before the one that came before it (${before}).`,
  outOfOrder: (day: string, other: string) =>
    `The withstand test is dated ${day}, and the insulation test that goes with it ${other}: which came first?`,
  farDate: (day: string, middle: string) =>
    `${day} lies far from the other dates of this table (middle ${middle}): is the year right?`,
  notADate: (text: string) => `"${text}" is not a date.`,
  outOfCalibration: (id: string, due: string, day: string) =>
    `${id} was in calibration until ${due} and was used on ${day}.`,
  beyondClass: (error: string, name: string, most: string, document: string) =>
    `The error is ${error} %; class ${name} allows ±${most} % at the rated value (${document}): why?`,
  apart: (value: string, least: string, share: number) =>
    `${value} is ${share} % above the lowest of its kind here, ${least}: why?`,
  offSeries: (value: string, middle: string) =>
    `${value} lies off the others, which are close to ${middle}: are the digits right?`,
  offError: (value: string, most: string) =>
    `The error is ${value} %, and no other line exceeds ${most} %: is the reading right?`,
  otherName: (name: string, other: string) =>
    `"${name}" stands here, and "${other}" elsewhere: is the same panel meant?`,
  oddTemperature: (value: string, middle: string) =>
    `${value} is no temperature of this test; the middle of the table is ${middle}: are the digits or the unit right?`,
  oddHumidity: (text: string) => `A humidity lies between 0 and 100 %; "${text}" does not.`,
  oddResult: (text: string, usual: string, times: number) =>
    `"${text}" says neither passed nor failed; ${count(times, { one: "line says", other: "lines say" })} "${usual}".`,
  notTogether: (apart: string, most: string) =>
    `The poles operate ${apart} apart; at most ${most} is usual.`,
  falls: (value: string, before: string) =>
    `${value} after ${before}: insulation resistance rises with time; are the digits right?`,
  curveFalls: (value: string, before: string) =>
    `${value} after ${before}: the exciting current rises with the voltage; are the digits right?`,
  counter: (after: string, before: string) =>
    `The counter shows ${after} after ${before}: it cannot run back.`,
  drop: (after: string, before: string) =>
    `${after} after the withstand test, and ${before} before it: what changed?`,
  missingRow: (panel: string, position: string, others: number) =>
    `${panel} has no line for ${position}, and ${others} other panels have one.`,
  remark: (text: string, result: string) =>
    `The remark "${text}" stands beside "${result}": which is right?`,
  oddWord: (text: string, usual: string, times: number) =>
    `"${text}" stands here, and "${usual}" in ${count(times, { one: "line", other: "lines" })}: was it put right?`,
  results: {
    corrected: "GEAR corrected, MΩ",
    limit: (side: "least" | "most", several: boolean, unit: string | undefined) =>
      `GEAR limit${several ? (side === "least" ? " at least" : " at most") : ""}${unit === undefined ? "" : `, ${unit}`}`,
    source: "GEAR source",
    result: "GEAR result",
    statedAt: (address: string) => `Stated at ${address}`,
    noLimit: "No limit stated, and no criterion without a lineup",
    unreadable: (text: string) => `"${text}" cannot be read by a formula`,
    lineFails: (said: string) => `The line says "${said}"`,
    stopped: (message: string) => `The check stops here: ${message}`,
    notJudged: "no limit is stated in it, and without a lineup there is no criterion for it",
    noRoom: "the cells beside it are filled",
  },
  rated: "Rated voltage? Say --rated with kilovolts, for example --rated 15.",
  basis: "By which practice is it judged? Say --basis IEC or --basis NETA.",
  noBlocks:
    "no records were recognised: a table needs titles over its columns and at least one column of readings with a unit",
} as const;
