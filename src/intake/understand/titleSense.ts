import { readUnit, unitCalled } from "../../quantities/reading/readUnit";
import { type Unit, unitSize } from "../../quantities/units";
import { objectKey } from "../rows/candidates";
import { operationOf } from "../words/operationIn";
import { wholeWord } from "../words/phrases";
import { isColour, isOneOf, namesPosition } from "../words/readPosition";
import { readStage, STAGE, WITHSTAND } from "../words/readStage";
import { splitTitle } from "../words/readTitle";
import { type Sense, type SensedWord, sensesOf } from "../words/senses";
import { isWithWave, withoutWave } from "../words/wave";

/** What the title of a column says, one line of it or all of them together. */
export interface TitleSense {
  /** Its words without its unit. */
  readonly text: string;
  readonly senses: ReadonlySet<Sense>;
  /** Its words that speak of something. */
  readonly words: readonly SensedWord[];
  /** Words that speak of nothing known. */
  readonly unknown: number;
  readonly unit?: Unit;
  /** A unit that readings are not converted in, as a column's own title has it: ppmv, dBmV, m/s. */
  readonly foreign?: string;
  /** How many times the rated voltage to earth it names: 0.5 of "0.5 U0". */
  readonly ofU0?: number;
  /** A time that it names, in seconds: 60 of "R 1 min". */
  readonly seconds?: number;
  /** A phase, pole or combination, as it is written. */
  readonly position?: string;
  readonly stage?: string;
  readonly operation?: "closing" | "opening";
  /** The panel or section that it names, as the lineup has it. */
  readonly object?: string;
  /** Whatever else is measured in it: "@ 500 V". */
  readonly stated: readonly Stated[];
}

/** A value with its unit in a title or heading. */
export interface Stated {
  readonly text: string;
  readonly unit: Unit;
}

/** What is known of the titles beside it. */
export interface TitleContext {
  /** Titles that are one letter or figure of a scheme of phases, of which all are there. */
  readonly letters: ReadonlySet<string>;
  /** The letters of the scheme that titles begin or end with: `ABC` of `Trip A`, `Trip B`, `Trip C`; else none. */
  readonly ends: string;
  /** What stands beside such a letter in several titles, in capitals; in others a letter is no phase. */
  readonly stems?: ReadonlySet<string>;
  readonly objectOf: (text: string) => string | undefined;
  /** Whether titles beside it speak of a closing, so that "open" is the other operation and no open pole. */
  readonly hasClosing?: boolean;
  /** Seconds by the titles that are a time alone, where several stand side by side. */
  readonly times?: ReadonlyMap<string, number>;
  /** Titles that name a panel or section and a phase of it, with both. */
  readonly placed?: ReadonlyMap<string, { readonly object: string; readonly position: string }>;
}

const BRACKETS = /[([{]\s*([^()[\]{}]*?)\s*[)\]}]/g;
const MEASURE =
  /(?<![\p{L}\p{N}.,])(?:@\s*|at\s+)?(\d+(?:[.,]\d+)?)\s*([\p{L}µμΩΩ°%]{1,10}|['"′″])(?![\p{L}\p{N}])/giu;
const AT = new RegExp(`(?:@|${wholeWord(({ at }) => at)})\\s*$`, "iu");
const DIRECT = new RegExp(`^\\s*${wholeWord(({ direct }) => direct)}`, "iu");
/** A direct wave that is written to its unit: `5000 VDC`. */
const DIRECT_UNIT = /(?:DC|CC)$/i;

/** In a heading a voltage or current is that of the test where it says DC, or "at". */
export const ofTheTest = (heading: string): string =>
  heading.replace(MEASURE, (whole, _number: string, mark: string, at: number) => {
    const read = readUnit(withoutWave(mark));
    const quantity = read.ok ? unitSize(read.value).quantity : undefined;
    if (quantity !== "voltage" && quantity !== "current") return whole;
    const [before, after] = [heading.slice(0, at), heading.slice(at + whole.length)];
    return /^(?:@|at\s)/i.test(whole) ||
      AT.test(before) ||
      DIRECT.test(after) ||
      DIRECT_UNIT.test(mark)
      ? whole
      : " ";
  });
/** Minutes and seconds as a clock shows them. */
const CLOCK = /[([]?\b(?:mm?|min):(?:ss?|sec)\b[)\]]?/i;
const PRIMES: Readonly<Record<string, Unit>> = { "'": "min", "′": "min", '"': "s", "″": "s" };

/**
 * What one line of a title says.
 *
 * @example titleSense("IR 1 min (GΩ)", context) // senses insulation and resistance, 60 seconds, unit GΩ
 */
export const titleSense = (title: string, context: TitleContext): TitleSense => {
  const text = inWords(title.slice(0, 200).replace(/\s+/g, " ").trim());
  const across = acrossSense(title, context);
  if (across) return across;
  const object = context.objectOf(text);
  // What stands in a panel is more than the panel: a breaker across is not its joint.
  if (object !== undefined)
    return { ...NOTHING, object: objectKey(text) === objectKey(object) ? object : text };
  if (isPhrase(text)) return { ...NOTHING, text, ...sensesOf(text) };
  const foreign = foreignIn(text);
  const ofU0 = multipleOfU0(foreign.rest);
  const found = measuresIn(ofU0.rest.replace(CLOCK, "(min)").replace(/\b(i?r)(?=\d)/gi, "$1 "));
  const inBrackets = unitInside(found.rest);
  const rest = inBrackets.rest.replace(/[\s,;:/@–-]+$/g, "").trim();
  const opened = context.hasClosing ? openedPole(rest, context) : undefined;
  if (opened) return { ...NOTHING, ...found.said, ...inBrackets.said, ...opened };
  if (isPosition(rest) || context.letters.has(rest))
    return { ...NOTHING, ...found.said, ...inBrackets.said, ...foreign.said, position: rest };
  const lettered = splitTitle(rest);
  if (context.letters.has(lettered.name))
    return {
      ...NOTHING,
      ...found.said,
      ...foreign.said,
      unit: lettered.unit,
      position: lettered.name,
    };
  const { position, own } = placedIn(rest, inBrackets.said.unit === undefined, context);
  const { stage, rest: named } = stageIn(own.name, text);
  const unit = inBrackets.said.unit ?? own.unit ?? unitAmong(rest);
  const { senses, words, unknown } = sensesOf(isTimeSign(named, unit) ? "time" : named);
  const telling = [
    ...words.filter((word) => word.senses.length > 0),
    ...(NUMBER_SIGN.test(text) ? [NUMBERED] : []),
    ...(found.corrected ? [CORRECTED] : []),
    ...(stage === undefined ? [] : stageWord(stage)),
  ];
  return {
    text: inBrackets.rest.trim(),
    senses: new Set([...senses, ...telling.flatMap((word) => word.senses)]),
    words: telling,
    unknown,
    stated: found.said.stated,
    unit,
    ...foreign.said,
    ...ofU0.said,
    seconds: found.said.seconds,
    position,
    stage,
    operation: operationOf(senses),
  };
};

/** What a title is by those beside it: a time, or a panel with its phase. */
const acrossSense = (title: string, { times, placed }: TitleContext): TitleSense | undefined => {
  const seconds = times?.get(title);
  if (seconds !== undefined) return { ...NOTHING, seconds };
  const named = placed?.get(title);
  return named && { ...NOTHING, ...unitInside(title.slice(0, 200)).said, ...named };
};

/** Symbols of what is fed into a transformer and comes out of it: `Ip A`, `Us (V)`. */
const SYMBOL = /^([IU]) ?([ps])(?=$|[\s,/]|[([])/;
const SYMBOLS: Readonly<Record<string, string>> = {
  Ip: "primary current",
  Is: "secondary current",
  Up: "primary voltage",
  Us: "secondary voltage",
};
const inWords = (title: string): string =>
  title.replace(
    SYMBOL,
    (whole, quantity: string, side: string) => SYMBOLS[quantity + side] ?? whole,
  );

/** The pole of which a title says that it opens: `Open A`. */
const openedPole = (text: string, { letters, ends }: TitleContext) => {
  const { words } = sensesOf(text);
  const [opening, ...others] = words.filter(({ senses }) => senses.includes("opening"));
  const pole = text
    .split(" ")
    .filter((word) => word.toLowerCase() !== opening?.text)
    .join(" ");
  const isPole = isPosition(pole) || letters.has(pole) || isOneOf(ends, pole.toUpperCase());
  return opening !== undefined && others.length === 0 && isPole
    ? {
        operation: "opening" as const,
        position: pole,
        senses: new Set<Sense>(["opening"]),
        words: [opening],
      }
    : undefined;
};

/** The sign of a time, which by itself is one of temperatures too: `t [s]`. */
const isTimeSign = (name: string, unit: Unit | undefined): boolean =>
  unit !== undefined && unitSize(unit).quantity === "time" && /^t$/i.test(name.trim());

/** Words with a stroke between that are one thing, and no unit: `P/F`. */
const isPhrase = (text: string): boolean =>
  text.includes("/") && sensesOf(text).words.length === 1 && sensesOf(text).unknown === 0;

/** A unit of these stands in brackets or ends a title. */
const FOREIGN =
  /[\s,/]*(?:[([]\s*)?(?<![\p{L}\p{N}])(dB(?:[mµμu]V)?|ppm[vw]?|(?:m|ft|in)\/s|(?:[x×]\s*)?(?:1\s*)?e[-−]3|(?:[x×]\s*)?10(?:\^|\*\*)?(?:[-−]3|⁻³)|‰)(?:\s*[)\]])?\s*$/iu;

const foreignIn = (text: string): { said: { foreign?: string }; rest: string } => {
  const found = FOREIGN.exec(text);
  if (found?.[1] === undefined || found.index === 0) return { said: {}, rest: text };
  return { said: { foreign: foreignKey(found[1]) }, rest: text.slice(0, found.index) };
};

/** A unit of readings that are not converted, in one writing. */
export const foreignKey = (unit: string): string =>
  /3$|³$|‰/.test(unit) ? "e-3" : unit.toLowerCase().replace(/[µμ]/g, "u");

const U0 = /(?:(\d+(?:[.,]\d+)?)\s*[x×·*]?\s*)?(?<!\p{L})U\s?(?:0|o|₀)(?![\p{L}\p{N}])/iu;

const multipleOfU0 = (text: string): { said: { ofU0?: number }; rest: string } => {
  const found = U0.exec(text);
  if (!found) return { said: {}, rest: text };
  const times = Number((found[1] ?? "1").replace(",", "."));
  return { said: { ofU0: times }, rest: text.replace(U0, " ") };
};

/** A title that is the thing and no length. */
const METER = /^met(?:er|re)s?$/i;
const LEADING_WAVE = /^(?:AC|DC|CA|CC)\s+/i;

/** The phase that a title begins or ends with, and what is left of it: its name, and its unit where it has one outside brackets. */
const placedIn = (rest: string, isOpen: boolean, context: TitleContext) => {
  const { position, rest: unplaced } = isWithWave(rest)
    ? { position: undefined, rest: rest.replace(LEADING_WAVE, "") }
    : positionIn(rest, context);
  const isName = METER.test(unplaced);
  const own = isOpen && !isName ? nameAndUnit(unplaced) : { name: unplaced };
  if (position !== undefined || own.unit === undefined) return { position, own };
  // A phase before the unit: "Leakage L1 / mA".
  const before = positionIn(own.name.replace(/[\s,;:/–-]+$/, ""), context);
  return { position: before.position, own: { ...own, name: before.rest } };
};

/** A title's name and the unit that it ends with, or is: seconds and volts as well, where they are no letters of phases. */
const nameAndUnit = (text: string): ReturnType<typeof splitTitle> =>
  text === "s" || text === "V" ? { name: text, unit: text } : splitTitle(withoutWave(text));

const NOTHING: TitleSense = { text: "", senses: new Set(), words: [], unknown: 0, stated: [] };
/** A temperature in a title is the one that readings were brought to. */
const CORRECTED: SensedWord = { text: "", senses: ["corrected"] };
/** Before or after: of the withstand test, or of what a title names, as a counter is read twice. */
const stageWord = (stage: string): readonly SensedWord[] => {
  const read = readStage(stage);
  return read === undefined ? [] : [{ text: "", senses: [read] }];
};
const NUMBER_SIGN = /[#№]|\bn\s*[°º]/i;
const NUMBERED: SensedWord = { text: "#", senses: ["number"] };

/** The times and other values in a text: a time says when a reading was taken, a temperature what it was brought to. */
export const measuresIn = (text: string) => {
  const stated: Stated[] = [];
  let seconds: number | undefined;
  let corrected = false;
  const rest = text.replace(MEASURE, (whole, number: string, mark: string) => {
    const prime = PRIMES[mark];
    const read =
      prime === undefined ? readUnit(withoutWave(mark)) : { ok: true as const, value: prime };
    if (!read.ok) return whole;
    const size = unitSize(read.value);
    if (size.quantity === "time")
      seconds = Number(number.replace(",", ".")) * (size.times ?? 10 ** size.exponent);
    else if (size.quantity === "temperature") corrected = true;
    else if (size.quantity === "voltage" || size.quantity === "current")
      stated.push({ text: `${number} ${read.value}`, unit: read.value });
    else return whole;
    return " ";
  });
  return { rest, corrected, said: { stated, ...(seconds !== undefined && { seconds }) } };
};

/** A unit that can be nothing else, before the words of a title: `kV VLF`, `mA leakage`, `°C ambient`. */
const UNMISTAKABLE = "kV|mV|mA|µA|[TGMkmµ]Ω|°[CF]|[kMh]Pa|N·?m";
const BEFORE = new RegExp(`^(${UNMISTAKABLE})\\s(?=\\p{L}{2})`, "u");

/** The same, or volts, between two words that are no phase's: `Lowest V trip coil worked`, `Coil worked at V low`. */
const BETWEEN = new RegExp(
  `(?<=\\p{Ll}{2}\\s)(?<!\\b(?:[Pp]hases?|[Pp]oles?|[Ff]ases?|[Pp]olos?|[Pp][ôo]les?|[Pp]ol|[Ll]eiter)\\s)(V|${UNMISTAKABLE})\\s(?=\\p{L}{3})`,
  "u",
);

const unitAmong = (title: string): Unit | undefined =>
  unitCalled(BEFORE.exec(title)?.[1] ?? BETWEEN.exec(title)?.[1] ?? "");

/** The unit in a title's brackets, or at the end of one of the languages that it is written in. */
const unitInside = (text: string): ReturnType<typeof unitInBrackets> => {
  const found = unitInBrackets(text);
  const parts = text.split(" / ");
  if (found.said.unit !== undefined || parts.length !== 2) return found;
  const [first = "", second = ""] = parts;
  const { name, unit } = splitTitle(withoutWave(first.trim()));
  return unit === undefined || name === ""
    ? found
    : { said: { unit }, rest: `${name} / ${second}` };
};

/** The unit in a title's brackets; what else stands in brackets are words like the others. */
const unitInBrackets = (text: string): { said: { unit?: Unit }; rest: string } => {
  let unit: Unit | undefined;
  const rest = text.replace(BRACKETS, (_whole, inside: string) => {
    const read = readUnit(withoutWave(inside));
    if (read.ok) unit = read.value;
    return read.ok ? " " : ` ${inside} `;
  });
  return { said: unit === undefined ? {} : { unit }, rest };
};

/** Whether a text alone is a phase, pole or combination, as those are written: in capitals, or with figures. */
export const isPosition = (text: string): boolean =>
  namesPosition(text) &&
  (/\d/.test(text) || !/\p{Ll}/u.test(text) || text.length > 3 || isColour(text));

/** A phase at the beginning or the end of a title, and the rest of it. */
const positionIn = (
  text: string,
  { ends, letters, stems }: TitleContext,
): { position?: string; rest: string } => {
  const words = text.split(" ");
  for (let count = Math.min(4, words.length - 1); count > 0; count--)
    for (const [some, others] of [
      [words.slice(-count), words.slice(0, -count)],
      [words.slice(0, count), words.slice(count)],
    ] as const) {
      const position = some.join(" ");
      const isLetter =
        /^[A-Z]$/i.test(position) &&
        ((isOneOf(ends, position.toUpperCase()) &&
          (stems?.has(others.join(" ").toUpperCase()) ?? true)) ||
          letters.has(position));
      if (isLetter || (isPosition(position) && isMarked(position)))
        return { position, rest: others.join(" ") };
    }
  return { rest: text };
};

/** A letter with the word for a phase written to it: `A-ph`, `ph. B`. */
const LETTERED = /^(?:[A-Z][\s-]?(?:ph|phase|pole)\.?|(?:ph|phase|pole)\.?[\s-]?[A-Z])$/i;

/** Within other words a phase must show: by a figure, or by capitals alone. */
const isMarked = (text: string): boolean => {
  const bare = text.replace(/[^\p{L}\p{N}]/gu, "");
  return (
    LETTERED.test(text) ||
    /l\d/i.test(bare) ||
    (bare.length > 1 && bare === bare.toUpperCase() && !/^\d+$/.test(bare))
  );
};

/** The stage that a title names, by the whole of it: before a time, "after" tells when a reading was taken. */
const stageIn = (name: string, title: string): { stage?: string; rest: string } => {
  const rest = name.replace(new RegExp(STAGE, "giu"), " ");
  const stage = STAGE.exec(title)?.[0];
  return stage === undefined ? { rest } : { stage, rest: rest.replace(WITHSTAND, " ") };
};

/** The lines of a title together: what a lower line says comes before what the one that groups it says. */
export const stacked = (lines: readonly TitleSense[]): TitleSense =>
  lines.reduce(
    (above, under) => ({
      text: [above.text, under.text].filter((text) => text !== "").join(" "),
      senses: new Set([...above.senses, ...under.senses]),
      words: [...above.words, ...under.words],
      unknown: above.unknown + under.unknown,
      unit: under.unit ?? above.unit,
      foreign: under.foreign ?? above.foreign,
      ofU0: under.ofU0 ?? above.ofU0,
      seconds: under.seconds ?? above.seconds,
      position: under.position ?? above.position,
      stage: under.stage ?? above.stage,
      operation: under.operation ?? above.operation,
      object: under.object ?? above.object,
      stated: [...above.stated, ...under.stated],
    }),
    NOTHING,
  );

/** Whether anything of a title is understood. */
export const isUnderstood = ({ senses, unit, seconds, position, stage, object }: TitleSense) =>
  senses.size > 0 || [unit, seconds, position, stage, object].some((part) => part !== undefined);
