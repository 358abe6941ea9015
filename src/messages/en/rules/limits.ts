import type { RuleTexts } from "../../ruleWords";
import { quotedList } from "../words";

/** Rules of what was measured against its limit, and of how the test was made. */
export const limits = {
  "out-of-limits": {
    title: "Out of limits",
    finds:
      "every limit that is not met, a test that broke down, every word that says that something is not right",
    why: "It is what the test was made to find.",
    satisfies: "the defect repaired and the test repeated; or a concession with its reason",
    quiet:
      "where it cannot be judged: another rule reports that; a row that lacks another reading is reported all the same",
    discharge: (row: string) =>
      `${row}: a disruptive discharge occurred; find and repair it, then repeat the test.`,
    word: (row: string, header: string, word: string, sound: readonly string[]) =>
      `${row}: "${header}" is ${word}; required: ${sound.join(" or ")}.`,
    limit: (row: string, header: string, value: string, bounds: string) =>
      `${row}: "${header}" is ${value}. Limit: ${bounds}.`,
    bounds: {
      most: (limit: string) => `at most ${limit}`,
      least: (limit: string) => `at least ${limit}`,
      within: (limit: string) => `within ± ${limit}`,
      equal: (limit: string) => limit,
    },
  },
  "dew-point": {
    title: "A surface near the dew point",
    finds:
      "a test on a surface at or below the dew point (stop), or less than the usual margin above it (note)",
    why: "Water on insulation makes readings that say nothing about the insulation, and a withstand test can destroy what only had to dry.",
    satisfies: "the surface dried and warmed, and the test made again",
    quiet:
      "where air temperature, humidity or surface temperature is not recorded: another rule reports that",
    wet: (row: string, surface: string) =>
      `${row}: the surface at ${surface} °C is at or below the dew point; dry and warm it, then test again.`,
    near: (row: string, margin: string, usual: number) =>
      `${row}: the surface is ${margin} K above the dew point; ${usual} K is common practice.`,
    expectedWet: "more than 0",
    expected: (usual: number) => `at least ${usual}`,
  },
  "index-below-one": {
    title: "Insulation that falls with time",
    finds:
      "a polarization index or absorption ratio below 1; where the readings are too high for an index to mean anything, one that is more than a fifth below an earlier one of its test",
    why: "Resistance rises while a steady voltage is held. Where it falls, the insulation heats up or leaks over a wet or dirty surface, or the readings were exchanged.",
    satisfies:
      "the readings put in their right places, or the surface cleaned and dried and the test repeated",
    quiet:
      "within a fifth where there is no index, which readings of that size are uncertain by (common practice, no source); and where the row fails by it already",
    message: (row: string, header: string, index: string) =>
      `${row}: "${header}" is ${index}: the resistance fell while the voltage was held. Were the readings exchanged, or does the insulation leak?`,
    fallen: (row: string, header: string, value: string, before: string, was: string) =>
      `${row}: "${header}" is ${value}, below "${before}" of ${was}: the resistance fell while the voltage was held. Were the readings exchanged, or does the insulation leak?`,
    expected: "at least 1",
  },
  inconclusive: {
    title: "A reading that proves nothing",
    finds:
      "a row that has its readings and conditions and still cannot be judged: a bound that does not reach the limit, too low a test voltage, too short a test, no limit",
    why: "It looks tested and is not.",
    satisfies: "a test that reaches the limit, or the limit that is missing",
    quiet: "where a condition is not recorded, or an entry cannot be read: other rules report that",
    message: (row: string, reasons: readonly string[]) =>
      `${row}: cannot be judged${reasons.length > 0 ? `: ${reasons.join("; ")}` : ""}.`,
    notWorkedOut: (header: string) => `"${header}" cannot be worked out`,
    tooSmall: (header: string, above: string) =>
      above === "0"
        ? `"${header}" is 0, which no sound object measures: not connected, or not read`
        : `"${header}" is not above ${above}, and no sound object measures so little: not connected, mixed up with another, or typed in another unit`,
    notAnswered: (header: string) => `"${header}" is not answered by a word of its list`,
    always: (header: string, word: string) =>
      `"${header}" is "${word}", and this applies to every such panel`,
    noLimit: (headers: readonly string[]) =>
      `there is no ${quotedList(headers, " or ")} to judge by`,
    notCorrected:
      "the reading, or a condition that it is corrected by, lies outside what the correction holds for",
    withinUncertainty: (header: string, limitHeader: string) =>
      `"${header}" meets "${limitHeader}" by less than the uncertainty of its instrument, and the cover asks for guarded acceptance`,
    against: (header: string, value: string, limitHeader: string, limit: string) =>
      `"${header}" is ${value} against "${limitHeader}" of ${limit}`,
  },
  "fallen-after": {
    title: "Insulation lower after the withstand test",
    finds: "insulation after the withstand test below half of what it was before",
    why: "A withstand test that harms the insulation shows in what is left of it (common practice, no source).",
    satisfies: "an explanation such as weather or connection; otherwise the test repeated",
    quiet:
      "where the reading after is ten times the minimum or more: such readings vary that much by themselves",
    message: (row: string, after: string, before: string) =>
      `${row}: ${after} MΩ after the withstand test, ${before} MΩ before it; a fall below half asks for an explanation (common practice).`,
    expected: (minimum: string) => `at least ${minimum}`,
  },
  "risen-after": {
    title: "Insulation far higher after the withstand test",
    finds:
      "insulation after the withstand test of more than fifteen times what it was before, where the others of its sort did not rise alike",
    why: "No withstand test mends insulation: the lead was off, another range was read, or a thing that leaks was still connected before.",
    satisfies: "the reading taken again; or a remark that says what was disconnected in between",
    quiet:
      "for bounds, where the reading before had failed and was dried, where the others of its sort rose as well, with fewer than two others, and where the remarks say anything",
    message: (row: string, after: string, before: string, times: number) =>
      `${row}: ${after} MΩ after the withstand test is ${times} times the ${before} MΩ before it, and the others did not rise so. Was the lead on? Measure it again, or say what was disconnected.`,
  },
  "loss-falls": {
    title: "A loss that falls as the voltage rises",
    finds:
      "a dissipation factor that is lower at a higher step of voltage, by more than a twentieth and 0.1e-3",
    why: "The loss of a sound cable stays or rises: one that falls tells of steps exchanged, of a termination that leaks over its surface, or of a bad joint.",
    satisfies: "the readings put at their steps, or the ends cleaned and the test repeated",
    quiet: "within a twentieth or 0.1e-3, and for steps that are blank",
    message: (row: string, header: string, is: string, before: string, was: string) =>
      `${row}: "${header}" is ${is}, and "${before}" at the lower voltage ${was}. Were the steps exchanged, or does an end leak?`,
  },
  "stands-out": {
    title: "A pole that stands out",
    finds:
      "a pole, joint or earth bar whose resistance is above the lowest of its group by more than the accepted share; the lowest itself, where all but a few of the others stand out from it together",
    why: "Poles of one breaker are made alike: the odd one has worn, dirty or loose contacts.",
    satisfies: "an investigation and its outcome",
    quiet: "where fewer than two poles have readings; it is no failure by itself",
    above: (row: string, reading: string, percent: number, limitPercent: number) =>
      `${row}: ${reading} is ${percent} % above the lowest of its group; more than ${limitPercent} % calls for investigation.`,
    absurd: (row: string, reading: string, times: number, lowest: string | undefined) =>
      `${row}: ${reading} is ${times} times the lowest of its group${lowest === undefined ? "" : `, ${lowest}`}: one of them is written in another unit, or is not a reading; correct that first.`,
    below: (row: string, reading: string, next: string) =>
      `${row}: ${reading}, and the next above it in its group is ${next}, near which the others lie. Measure this one again: the lead may have been past the joint, or the unit another.`,
    expected: (share: number) => `at most ${share}`,
  },
  "over-voltage": {
    title: "Tested too high",
    finds:
      "a withstand test above the required voltage by more than the tolerance; a cable tested more than a twentieth above; control wiring tested more than half above what is required; insulation measured more than a tenth above the voltage that the project or the maker gives; a coil worked more than a fifth above the highest voltage of its range",
    why: "It strained the insulation more than was agreed.",
    satisfies: "the maker's word that the insulation bears it, or a corrected record",
    quiet:
      "within the tolerance; of insulation, where the test voltage is a standard's least; but for withstand tests, with a remark",
    message: (row: string, applied: string, required: string, percent: number) =>
      `${row}: ${applied} kV was applied; required is ${required} kV ± ${percent} %.`,
    beyond: (row: string, header: string, is: string, limit: string, most: string, share: number) =>
      `${row}: "${header}" is ${is}, more than ${share} % above the ${most} of "${limit}". Put the entry right, or say in the remarks who agreed to it.`,
  },
  altitude: {
    title: "A site above 1000 m",
    finds: "a site so high that external insulation needs a higher rated level than up to 1000 m",
    why: "Thinner air withstands less: a level that serves at sea level may flash over on a mountain (IEC 62271-1).",
    satisfies:
      "the maker's document that the rated level was chosen for the altitude; a concession that names it",
    quiet: "up to 1000 m, and where the lineup has no withstand test",
    message: (metres: number, factor: string, free: number, kV: number, isGapUnknown: boolean) =>
      `The site is at ${metres} m: external insulation needs ${factor} times the level that serves up to ${free} m. Show from the maker's documents that the rated level of ${kV} kV was chosen for it${isGapUnknown ? ", and agree with the maker whether the test voltage is to be corrected to the air of the day" : ""}.`,
    source: "IEC 62271-1:2011, altitude factor (read)",
  },
} satisfies RuleTexts;
