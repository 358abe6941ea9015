/** What is wrong in a lineup, after the path to where it is. */
export const lineup = {
  noJson: (why: string) => `is not JSON: ${why}`,
  twice: (key: string) => `says ${key} a second time in the same braces; keep one`,
  kinds: {
    object: "an object in braces",
    record: "an object in braces",
    array: "a list in brackets",
    string: "text in quotation marks",
    number: "a number",
    int: "a whole number",
    boolean: "true or false",
  },
  missing: (wanted: string) => `is missing; it is ${wanted}`,
  wrongKind: (wanted: string) => `must be ${wanted}`,
  oneOf: (choices: readonly string[]) => `must be one of ${choices.join(", ")}`,
  unknownKeys: (file: string, keys: readonly string[]) =>
    `has what no ${file} has: ${keys.join(", ")}; take it out or correct its name`,
  /** What a field must be, by the key that its schema says. */
  must: {
    notBlank: "must not be blank",
    short: "must be at most 80 characters",
    oneLine: "must be one line",
    seenText:
      "holds characters that are not seen (control characters, marks of direction, blanks of no width); type it anew",
    seen: "holds characters that are not seen; type it anew",
    oneAlphabet:
      "mixes letters that look alike of two alphabets, such as K and Cyrillic К; type it anew in one",
    aboveZero: "must be more than zero",
    notNegative: "must not be below zero",
    day: "must be a date as 2026-11-25",
    leastBelowMost: "least must be below most",
    gasOrder: "lockout must lie below alarm, and alarm below filling",
    gasAlarms: "alarm and lockout are missing; only a sealed compartment does without them",
    gasMaximum: "the maximum must not lie below filling",
    oneOrFive: "must be 1 or 5",
    degree: "is a degree of protection as on the plate: IP3X, IP42",
    percentage: "is a percentage of full scale",
    atMost20: "must be at most 20",
    mediumVoltage: "must be at most 72.5 kV: beyond medium voltage",
    frequency: "must be 50 or 60",
    panels: "must have at least one panel",
    holdPoint: "only a hold point guards what follows; make it a hold point or leave guards out",
    unit: "is not a known unit; use, for example, MΩ, µΩ, kV, V, A, °C or kPa",
  },
  aboveRated: (operatingkV: number, ratedkV: number) =>
    `${operatingkV} kV is above the rated voltage of ${ratedkV} kV; gear is operated at its rated voltage or below`,
  items: {
    panels: "panels",
    instruments: "instruments",
    joints: "groups of joints",
    currentTransformers: "cores",
    voltageTransformers: "windings",
    meters: "meters",
    protection: "elements",
    cables: "cables",
    motion: "quantities of motion",
    arresters: "arresters",
    schemes: "schemes",
    relaySettings: "settings",
    arcSensors: "arc sensors",
    batteries: "batteries",
    heaters: "heaters",
    inspectionPoints: "inspection points",
    checkItems: "check items",
  },
  sameName: (items: string, name: string, other: string) =>
    `two ${items} are named "${name}" (the other is ${other}); each needs a name of its own`,
  sectionName: (name: string) =>
    `"${name}" is also the name of a bus section; a panel and a section need names apart`,
  dueBefore: (due: string, calibrated: string) =>
    `due on ${due}, before it was calibrated on ${calibrated}`,
  noTarget: (name: string) => `"${name}" is neither a panel nor a bus section of this lineup`,
  sameDrawing: (name: string, other: string) =>
    `two drawings are numbered "${name}" (the other is ${other}); list each once, with its latest approved revision`,
  leftOutTwice: (name: string, other: string) =>
    `"${name}" is left out twice (the other is ${other}); give one reason`,
  askedTwice: (name: string, other: string) =>
    `"${name}" is asked for twice (the other is ${other}); once is enough`,
  leftOutToo: (name: string) => `"${name}" is left out as well; take it out of one of the two`,
  notMeasured: (kind: string) => `an item of ${kind} is not measured; take least and most out`,
  measured: (kind: string) => `an item of ${kind} is measured; give its least or its most, mm`,
};
