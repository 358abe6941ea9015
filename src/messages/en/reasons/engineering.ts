/** Why a calculation refuses, and what would be right. `what` is one of `names`. */
export const engineering = {
  notNumberFrom: (what: string, least: number, most: number, unit: string) =>
    `${what} must be a number from ${least} to ${most}${unit && ` ${unit}`}.`,
  outside: (what: string, least: number, most: number, unit: string, value: number) =>
    `${what} must be from ${least} to ${most}${unit && ` ${unit}`}; ${value} is outside.`,
  notNumberAbove: (what: string, unit: string) =>
    `${what} must be a number and must be above 0${unit && ` ${unit}`}.`,
  notAbove: (what: string, unit: string, value: number) =>
    `${what} must be above 0${unit && ` ${unit}`}; ${value} is not.`,
  notNumberOrMore: (what: string, unit: string) =>
    `${what} must be a number and must be 0${unit && ` ${unit}`} or more.`,
  negative: (what: string, unit: string, value: number) =>
    `${what} must be 0${unit && ` ${unit}`} or more; ${value} is not.`,
  notNumber: (what: string) => `${what} must be a number.`,
  oneOf: (what: string, words: readonly string[]) => `${what} must be one of ${words.join(", ")}.`,
  beyondNumbers: "The result is beyond what can be kept as a number; check the inputs.",
  noMultiple: (what: string, most: number, multiple: number) =>
    `${what} must be above 1 and at most ${most}; ${multiple} is outside. An element does not operate at or below its pick-up.`,
  notRising: "Voltages must rise from point to point, and currents must be above 0.",
  unpaired: (volts: number, amps: number) =>
    `An excitation curve needs a current for each voltage; there are ${volts} voltages and ${amps} currents.`,
  fewerPoints: (fewest: number, points: number) =>
    `An excitation curve needs at least ${fewest} points; there are ${points}.`,
  endsBelowKnee: (volts: number | undefined, rule: string) =>
    `The curve ends at ${volts} V before its knee by ${rule}: go on to a higher voltage.`,
  startsAboveKnee: (volts: number | undefined, rule: string) =>
    `The curve starts at ${volts} V above its knee by ${rule}: begin at a lower voltage.`,
  noPoint: (what: string, unit: string, point: number) =>
    `${what} must be a number in ${unit} at every point; point ${point} is none.`,
  firstPoint: (what: string, unit: string, value: number | undefined) =>
    `${what} must be above 0 ${unit}; the first point has ${value} ${unit}.`,
  fallingPoint: (
    what: string,
    unit: string,
    point: number,
    value: number | undefined,
    before: number | undefined,
  ) =>
    `${what} must rise from point to point; point ${point} has ${value} ${unit} after ${before} ${unit}. Sort the points by voltage and leave out those taken on the way down.`,
  liquid: (temperature: number, most: string, absolute: string) =>
    `At ${temperature} °C SF6 liquefies at about ${most} MPa absolute, so that ${absolute} MPa there does not keep its density. Read it warmer.`,
  noIndex: (r1min: number, most: number) =>
    `The index is not meaningful: ${r1min} MΩ after 1 min is above ${most} MΩ (IEEE 43-2013).`,
  noRatio: "The ratio is not meaningful: a resistance is only known to lie beyond a bound.",
  fewValues: "A spread needs at least two values, such as those of two poles.",
  fewTimes: "A spread needs at least two times, such as those of two poles.",
};
