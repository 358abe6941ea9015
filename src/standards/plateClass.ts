/** What the plate of an instrument transformer writes in one line: class or classes, limit factor, burdens. */
export interface PlateClass {
  /** Classes in the standard's spelling, without factor and burden: `0.5`, `5P`, `C200`. */
  readonly names: readonly string[];
  /** Accuracy limit factor: 20 of 5P20. */
  readonly factor?: number;
  /** Rated burden, VA, where it stands with the class: of `15 VA`. */
  readonly burdenVA?: number;
  /** Standard burden of IEEE C57.13, Ω: 0.5 of B-0.5; the greatest of several. */
  readonly burdenOhm?: number;
  /** Letters of standard burdens of IEEE C57.13 for voltage transformers: WXYZ. */
  readonly letters?: string;
}

const BURDEN_VA = /(\d+(?:\.\d+)?)\s*VA\b/;
const SECURITY = /\bFS\s*[<≤]?\s*\d+/g;
const EXTENDED = /\bEXT\.?\s*\d+\s*%?/g;
const WORDS = /\b(?:CLASS|KLASSE|CL|KL|ACC|ACCURACY)\b\.?:?/g;
const OHMS = /[BE]-?\s*(\d+(?:\.\d+)?)/g;

/**
 * The accuracy class or classes that a plate writes, with limit factor and burdens taken off.
 *
 * @example plateClass("5P20 15 VA") // { names: ["5P"], factor: 20, burdenVA: 15 }
 * @example plateClass("0.3B-0.5") // { names: ["0.3"], burdenOhm: 0.5 }
 * @example plateClass("0.5/3P") // { names: ["0.5", "3P"] }
 */
export const plateClass = (accuracy: string): PlateClass => {
  const text = accuracy
    .toUpperCase()
    .replace(/(\d),(\d)/g, "$1.$2")
    .replace(WORDS, " ")
    .replace(SECURITY, " ")
    .replace(EXTENDED, " ")
    .trim();
  const burden = BURDEN_VA.exec(text)?.[1];
  const parts = text
    .replace(BURDEN_VA, " ")
    .split(/[/&+,;]/)
    .map(onePart)
    .filter(({ name }) => name !== "");
  const factor = parts.find((part) => part.factor !== undefined)?.factor;
  const ohms = parts.flatMap((part) => part.ohms);
  const letters = parts.map((part) => part.letters).join("");
  return {
    names: parts.map(({ name }) => name),
    ...(factor === undefined ? {} : { factor }),
    ...(burden === undefined ? {} : { burdenVA: Number(burden) }),
    ...(ohms.length === 0 ? {} : { burdenOhm: Math.max(...ohms) }),
    ...(letters === "" ? {} : { letters }),
  };
};

interface Part {
  readonly name: string;
  readonly factor?: number;
  readonly ohms: readonly number[];
  readonly letters: string;
}

const onePart = (text: string): Part => {
  const plain = text.trim().replace(/\s+/g, " ");
  const [limited, index, remanence = "", factor] = /^(\d+P)(R?) ?(\d+)?$/.exec(plain) ?? [];
  if (limited !== undefined)
    return {
      name: `${index}${remanence}`,
      ...(factor === undefined ? {} : { factor: Number(factor) }),
      ohms: [],
      letters: "",
    };
  const [relaying, kind, volts] = /^([CKT])[ -]?(\d+)$/.exec(plain) ?? [];
  if (relaying !== undefined) return { name: `${kind}${volts}`, ohms: [], letters: "" };
  const [lettered, number = "", letters = ""] =
    /^(\d\.\d+S?) ?([WXMYZ]+(?: ?, ?[WXMYZ]+)*)$/.exec(plain) ?? [];
  if (lettered !== undefined) return { name: number, ohms: [], letters };
  const [standard, accuracy = ""] = /^(\d\.\d+S?) ?[BE]-?\s*\d/.exec(plain) ?? [];
  if (standard !== undefined)
    return {
      name: accuracy,
      ohms: [...plain.matchAll(OHMS)].map(([, ohm]) => Number(ohm)),
      letters: "",
    };
  return { name: plain.replace(/^(\d)\.0$/, "$1"), ohms: [], letters: "" };
};
