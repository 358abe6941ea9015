/** What the facts of a panel's equipment are called on the sheet, by their keys in the lineup. No two alike. */
const WORDS: Readonly<Record<string, string>> = {
  massKg: "Mass kg",
  breaker: "Breaker",
  contactLimit: "contact resistance at most µΩ",
  document: "document",
  closingMs: "closing ms",
  openingMs: "opening ms",
  least: "least",
  most: "most",
  closingV: "closing coil V",
  controlV: "control V",
  controlKind: "control supply",
  openingControlV: "opening release's control V",
  openingControlKind: "opening release's control supply",
  openingV: "opening release V",
  chargingS: "spring charged within s",
  device: "in its place",
  poleSpreadMs: "pole spread at most ms",
  closingSpreadMs: "pole spread closing at most ms",
  openingSpreadMs: "pole spread opening at most ms",
  secondTripCoil: "second opening release",
  undervoltageV: "undervoltage release V",
  pickupMost: "picks up by",
  dropoutLeast: "drops out at least",
  dropoutMost: "drops out at most",
  gas: "SF6",
  fillingMPa: "filling MPa at 20 °C",
  alarmMPa: "alarm MPa at 20 °C",
  lockoutMPa: "lockout MPa at 20 °C",
  maximumMPa: "maximum MPa at 20 °C",
  tolerancekPa: "tolerance kPa",
  monitorClass: "monitor's class %",
  monitorSpanMPa: "monitor's span MPa",
  sealed: "sealed for life",
  pressure: "pressures are",
  currentTransformers: "Current transformer core",
  voltageTransformers: "Voltage transformer winding",
  name: "name",
  primaryA: "primary A",
  secondaryA: "secondary A",
  primaryV: "primary V",
  secondaryV: "secondary V",
  accuracy: "class",
  burdenVA: "burden VA",
  burdenLeastVA: "burden at least VA",
  ratingFactor: "rating factor",
  encloses: "encloses",
  voltageFactor: "voltage factor",
  accuracyLimitFactor: "accuracy limit factor",
  kneeV: "least knee V",
  excitingA: "exciting current at the knee at most A",
  windingOhm: "winding at 75 °C at most Ω",
  meters: "Meter",
  designation: "designation",
  quantity: "quantity",
  fullScale: "full scale",
  unit: "unit",
  accuracyOf: "class in percent of",
  points: "tested at % of full scale, point",
  protection: "Protection element",
  relay: "relay",
  element: "element",
  pickup: "pick-up",
  curve: "curve",
  setting: "time setting",
  slopePercent: "slope %",
  multiples: "tested at times pick-up, point",
  pickupPercent: "pick-up tolerance %",
  resetPercent: "reset ratio %",
  timePercent: "time tolerance %",
  timeS: "time tolerance s",
  cables: "Cable",
  ratedkV: "rated kV",
  u0kV: "U0 kV",
  purpose: "tested for",
  sheathMm: "oversheath mm",
  wave: "test wave",
  joints: "Joint",
  bolt: "bolt",
  grade: "grade",
  torqueNm: "torque N·m",
  torqueLbfFt: "torque lbf·ft",
};

const KEYS: ReadonlyMap<string, string> = new Map(
  Object.entries(WORDS).map(([key, words]) => [words, key]),
);

const BETWEEN = " · ";

/** Where a fact stands in a panel: keys, and places in lists from 0. */
export type Path = readonly (string | number)[];

/**
 * A path in words; a place in a list counts from 1.
 *
 * @example inWords(["currentTransformers", 0, "primaryA"]) // "Current transformer core 1 · primary A"
 */
export const inWords = (path: Path): string =>
  path.reduce<string>((text, step) => {
    if (typeof step === "number") return `${text} ${step + 1}`;
    return `${text}${text && BETWEEN}${WORDS[step] ?? step}`;
  }, "");

/**
 * The path that words mean.
 *
 * @example pathOf("Current transformer core 1 · primary A") // ["currentTransformers", 0, "primaryA"]
 */
export const pathOf = (words: string): Path =>
  words.split(BETWEEN).flatMap((step) => {
    const whole = KEYS.get(step);
    if (whole !== undefined) return [whole];
    const [, name = step, place] = /^(.+) (\d+)$/.exec(step) ?? [];
    return [KEYS.get(name) ?? name, ...(place === undefined ? [] : [Number(place) - 1])];
  });
