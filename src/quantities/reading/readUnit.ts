import { memoizeText } from "../memoizeText";
import { quoted } from "../quoted";
import { answer, type Result, refuse } from "../result";
import { UNITS, type Unit, unitSize } from "../units";

/** How prefixes are written. Only m and M are told apart by their case. */
const PREFIXES: Readonly<Record<string, string>> = {
  t: "T",
  tera: "T",
  g: "G",
  gig: "G",
  giga: "G",
  M: "M",
  meg: "M",
  mega: "M",
  k: "k",
  kilo: "k",
  kil: "k",
  h: "h",
  m: "m",
  milli: "m",
  mili: "m",
  µ: "µ",
  u: "µ",
  micro: "µ",
  micr: "µ",
  mikro: "µ",
  mikr: "µ",
  n: "n",
  nano: "n",
};

/** How the units that take a prefix are written, and those that take none, in lower case. */
const BASES: Readonly<Record<string, string>> = {
  ω: "Ω",
  ohm: "Ω",
  ohms: "Ω",
  ohmio: "Ω",
  ohmios: "Ω",
  v: "V",
  volt: "V",
  volts: "V",
  voltio: "V",
  voltios: "V",
  a: "A",
  amp: "A",
  amps: "A",
  ampere: "A",
  amperes: "A",
  ampère: "A",
  ampères: "A",
  amperio: "A",
  amperios: "A",
  pa: "Pa",
  bar: "bar",
  s: "s",
  sec: "s",
  secs: "s",
  second: "s",
  seconds: "s",
  sek: "s",
  sekunde: "s",
  sekunden: "s",
  seconde: "s",
  secondes: "s",
  segundo: "s",
  segundos: "s",
  min: "min",
  mins: "min",
  minute: "min",
  minutes: "min",
  minuten: "min",
  minuto: "min",
  minutos: "min",
  m: "m",
  metre: "m",
  metres: "m",
  meter: "m",
  meters: "m",
  kg: "kg",
  c: "°C",
  "°c": "°C",
  degc: "°C",
  celsius: "°C",
  "%": "%",
  "%rh": "%",
  percent: "%",
  n·m: "N·m",
  nm: "N·m",
  kgf·m: "kgf·m",
  kgfm: "kgf·m",
  mkgf: "kgf·m",
  kg·m: "kgf·m",
  kgm: "kgf·m",
  kgf·cm: "kgf·cm",
  kgfcm: "kgf·cm",
  kg·cm: "kgf·cm",
  kgcm: "kgf·cm",
  dan·m: "daN·m",
  danm: "daN·m",
  "kgf/cm²": "kgf/cm²",
  "kgf/cm2": "kgf/cm²",
  "kg/cm²": "kgf/cm²",
  "kg/cm2": "kgf/cm²",
  va: "VA",
  hz: "Hz",
  ft: "ft",
  foot: "ft",
  feet: "ft",
  in: "in",
  inch: "in",
  inches: "in",
  '"': "in",
  mil: "mil",
  mils: "mil",
  thou: "mil",
  lb: "lb",
  lbs: "lb",
  pound: "lb",
  pounds: "lb",
  t: "t",
  tonne: "t",
  tonnes: "t",
  psi: "psi",
  psig: "psi",
  psia: "psi",
  inhg: "inHg",
  mmhg: "mmHg",
  f: "°F",
  "°f": "°F",
  degf: "°F",
  fahrenheit: "°F",
};

/** Torque in feet or inches and pounds, whichever comes first: ft·lb, lbf·ft, in-lbs, pound-feet; pi-lb and po-lb in French. */
const POUND_FOOT =
  /^(?:(?:lbf?s?|pounds?)·?(ft|foot|feet|pi|in|inch|inches|po)|(ft|foot|feet|pi|in|inch|po)·?(?:lbf?s?|pounds?))$/;

const PREFIXED =
  /^(tera|giga?|mega?|kilo|milli|mili|mi[ck]ro|nano|(?:mi[ck]r|kil)(?=ohm)|[tgkhmµu])?(ω|ohm(?:ios?|s)?|volt(?:ios?|s)?|v|amp(?:[eè]re|erio)?s?|a|pa|bar|m|s|sec(?:onde?)?s?|sek(?:unden?)?|segundos?)$/i;
const NANO = /^n(ω|ohms?|a)$/i;

/** Units and prefixes in Arabic words, a hamza left out (from memory). */
const ARABIC_BASES: Readonly<Record<string, string>> = {
  اوم: "Ω",
  فولت: "V",
  امبير: "A",
  باسكال: "Pa",
  بار: "bar",
  ثانيه: "s",
  ثانية: "s",
  ثواني: "s",
  دقيقة: "min",
  دقيقه: "min",
  دقائق: "min",
  مئوية: "°C",
  درجةمئوية: "°C",
  نيوتنمتر: "N·m",
};
const ARABIC_PREFIXES: Readonly<Record<string, string>> = {
  تيرا: "T",
  جيجا: "G",
  غيغا: "G",
  ميجا: "M",
  ميغا: "M",
  كيلو: "k",
  ملي: "m",
  مللي: "m",
  ميلي: "m",
  ميكرو: "µ",
  مايكرو: "µ",
};
const ARABIC = new RegExp(
  `^(${Object.keys(ARABIC_PREFIXES).join("|")})?(${Object.keys(ARABIC_BASES).join("|")})$`,
  "u",
);

/** A prefix alone, as in "5.2G" or "800 Megs": usual for resistance and nothing else. */
const BARE = /^(tera|giga?|mega?|kilo|[TGMk])s?$/i;

/**
 * Tells a unit from how it is written: `MOhms`, `Gohm`, `kv`, `microohm`, `deg C`, `5.2G`.
 *
 * m and M differ by a factor of 10^9 and are often mixed up, so milliohm is refused where a kilo or
 * mega unit belongs, and megohm where a milli or micro unit does.
 *
 * @param text the unit alone
 * @param expected the unit that belongs here, where one is known
 * @returns `wrong` for an unknown unit, and for one that could be milli or mega
 * @example readUnit("GOHM") // "GΩ"
 */
export const readUnit = (text: string, expected?: Unit): Result<Unit> => {
  const unit = (expected?.endsWith("Ω") ? prefixAlone(text) : undefined) ?? unitCalled(text);
  if (unit === undefined)
    return refuse("wrong", ({ quantities }) => quantities.unknownUnit(quoted(text), expected));
  const power = expected?.endsWith("Ω") ? unitSize(expected).exponent : 0;
  const mixedUp = (unit === "mΩ" && power > 0) || (unit === "MΩ" && power < 0);
  return mixedUp
    ? refuse("wrong", ({ quantities }) =>
        quantities.milliOrMega(quoted(text), String(expected), power > 0),
      )
    : answer(unit);
};

/** No unit is written longer than this. */
const LONGEST = 40;

const tidy = (text: string): string =>
  text
    .trim()
    .replace(/[\u2126\u03c9]/g, "Ω")
    .replace("㏁", "MΩ")
    .replace("㏀", "kΩ")
    .replace(/\u03bc/g, "µ")
    .replace("℃", "°C")
    .replace("cm^2", "cm²")
    .replace(/º/g, "°")
    .replace(/^még/i, "meg");

const unspaced = (text: string): string => text.replace(/[\s.-]/g, "");

/** The unit of resistance of which the prefix alone is written. */
const prefixAlone = (text: string): Unit | undefined => {
  const written = tidy(text);
  const prefix = isUnit(written) ? undefined : BARE.exec(unspaced(written))?.[1];
  return prefix === undefined ? undefined : unitOf(prefix, "Ω");
};

/**
 * The unit that a text is, whichever belongs there; undefined for none. The same few texts are asked about
 * over and over.
 *
 * @example unitCalled("deg C") // "°C"
 */
export const unitCalled = memoizeText((text): Unit | undefined => {
  if (text.length > LONGEST) return undefined;
  const written = tidy(text);
  if (isUnit(written)) return written;
  const bare = unspaced(written);
  return spelled(bare) ?? inArabic(bare);
});

const spelled = (text: string): Unit | undefined => {
  if (text === "S" || text === "M") return undefined;
  const alone =
    own(BASES, text.replace(/[*⋅•]/g, "·").toLowerCase()) ?? poundFoot(text.toLowerCase());
  if (alone !== undefined) return unitOf("", alone);
  const [, prefix = "", base = ""] = PREFIXED.exec(text) ?? [];
  if (base !== "") return unitOf(prefix, own(BASES, base.toLowerCase()) ?? "");
  const nano = text.startsWith("n") ? NANO.exec(text)?.[1] : undefined;
  return nano === undefined ? undefined : unitOf("n", own(BASES, nano.toLowerCase()) ?? "");
};

const inArabic = (text: string): Unit | undefined => {
  const [, prefix = "", base] = ARABIC.exec(text.replace(/[أإآ]/g, "ا")) ?? [];
  return base === undefined
    ? undefined
    : unitOf(own(ARABIC_PREFIXES, prefix) ?? "", own(ARABIC_BASES, base) ?? "");
};

const poundFoot = (text: string): string | undefined => {
  const [whole, last, first] = POUND_FOOT.exec(text.replace(/[*⋅•]/g, "·")) ?? [];
  if (whole === undefined) return undefined;
  return /^(?:in|po)/.test(last ?? first ?? "") ? "lbf·in" : "lbf·ft";
};

const unitOf = (prefix: string, base: string): Unit | undefined => {
  const sign = prefix === "" ? "" : (own(PREFIXES, prefix) ?? own(PREFIXES, prefix.toLowerCase()));
  const unit = `${sign}${base}`;
  return isUnit(unit) ? unit : undefined;
};

const isUnit = (text: string): text is Unit => Object.hasOwn(UNITS, text);

const own = (table: Readonly<Record<string, string>>, key: string): string | undefined =>
  Object.hasOwn(table, key) ? table[key] : undefined;
