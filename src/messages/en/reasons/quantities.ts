import type { QuantityName } from "../../inputName";

/** Why a text is no reading, and what is known of how a file writes its numbers. */
export const quantities = {
  /** What a unit measures. */
  of: (quantity: QuantityName): string => quantity,
  marks: { ".": "point", ",": "comma" },
  numberOrBound: 'a number belongs here, or a bound such as "> 3160000".',
  pureNumber: "a number without a unit belongs here, such as 1.5.",
  unknownUnit: (text: string, expected: string | undefined) =>
    `${text} is not a unit known here${expected ? `; ${expected} belongs here` : ""}.`,
  milliOrMega: (text: string, expected: string, isMega: boolean) =>
    `${text} could be milliohm or megohm, a factor of 10^9 apart, where ${expected} belongs. ${
      isMega
        ? "If megohm, write MΩ; if milliohm, write it in Ω."
        : "If milliohm, write mΩ; if megohm, write it in kΩ."
    }`,
  notFinite: (value: number, from: string, to: string) =>
    `${value} is not a number that can be brought from ${from} to ${to}.`,
  otherQuantity: (from: string, of: string, to: string, wanted: string) =>
    `${from} is a unit of ${of}; a ${wanted} in ${to} belongs here.`,
  beyondNumbers: (number: string, from: string, to: string) =>
    `${number} ${from} is beyond what can be kept as a number in ${to}.`,
  nothingWritten: (unit: string) => `No reading is written here; write one such as "12.5 ${unit}".`,
  withoutRange: (text: string, unit: string) =>
    `${text} is over range but does not say of which range; write the instrument's range too, such as "> 2000 ${unit}".`,
  overAndUnder: (text: string) => `${text} says both over range and less than; write one of them.`,
  noReading: (text: string, unit: string) =>
    `${text} is not a reading; write a number and its unit, such as "12.5 ${unit}" or "> 12.5 ${unit}".`,
  because: (text: string, why: string) => `${text}: ${why}`,
  otherMark: (text: string, mark: string, rule: string) =>
    `${text} has a decimal ${mark}, but decimal ${rule} is the rule here.`,
  eitherMark: (text: string, decimal: string, grouped: string, plain: string) =>
    `${text} could be ${decimal} or ${grouped}; say which decimal mark is used, or write it so that it can be read one way only: "${plain}0" or "${grouped}".`,
};
