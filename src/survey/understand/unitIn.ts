import { splitTitle } from "../../intake/words/readTitle";
import { readUnit } from "../../quantities/reading/readUnit";
import type { Unit } from "../../quantities/units";
import { remembered } from "../words/remembered";
import { conceptOf } from "../words/sheetWords";
import type { Concept } from "../words/words";
import { latin, withoutWave } from "./localWords";

/**
 * The unit that a title or label carries, at its end or in it.
 *
 * @example unitIn("µΩ at 100 A DC") // "µΩ"
 */
export const unitIn = remembered((text): Unit | undefined =>
  text.length > 160 ? undefined : read(text),
);

const isUnit = (text: string) => readUnit(withoutWave(text).replace(/^[([]|[)\]]$/g, "")).ok;

/** Whether a text is a unit and nothing else: "GΩ", "(kV)", "V / V". */
export const isUnitText = remembered(
  (text): boolean => isUnit(text) || text.split(/\s?[/:]\s?/).every(isUnit),
);

/** A bar of copper or steel, and no pressure. */
const OF_COPPER =
  /(?<!\p{L})(?:main|earth(?:ing)?|ground|bus|neutral|copper|cu|terminal|pe|link) ?bars?(?!\p{L})/giu;

/** The letter of a prefix in brackets behind the words for an insulation resistance: "IR in (G)". */
const OF_MEGS =
  /(?<=(?<!\p{L})(?:IR|[Ii]nsulation|[Mm]egger|R ?[Ii]so|R)(?: [^()[\]]{0,12})? ?[([])([GM])(?=[)\]]$)/u;

const read = (written: string): Unit | undefined => {
  // "mm/m" is how far something is out of level over a metre; "A." and "C)" number the tables of a sheet.
  const text = withoutWave(latin(written))
    .replace(/\bmm ?(?:\/|per|por|pro|par|je) ?m\b/giu, "mm")
    .replace(/\b(micro|milli|mega|giga) ohms?\b/giu, "$1ohm")
    .replace(/^\p{Lu}[.)] (?=\p{L})/u, "")
    .replace(/±\s?(?=%)/gu, "")
    .replace(OF_COPPER, "")
    .replace(OF_MEGS, "$1Ω");
  // "V prim", "A sec"
  const leading = /^([AV]) (?:prim|sec)/iu.exec(text)?.[1]?.toUpperCase();
  if (leading === "A" || leading === "V") return leading;
  // "t/s" is a time in seconds.
  const timed = /^[tT] ?\/ ?(s|ms|min)$/u.exec(text)?.[1];
  if (timed === "s" || timed === "ms" || timed === "min") return timed;
  // A letter alone is a phase as often as a unit; "S / T" are two of them, and no tonnes.
  if (/^(?:\p{L}|[RSTUVWABC] ?\/ ?[RST])$/u.test(text)) return undefined;
  const { name, unit } = splitTitle(text);
  return (
    inBrackets(text) ??
    (isAtEnd(text, name) ? unit : undefined) ??
    amongWords(text) ??
    (name === "" ? unit : undefined)
  );
};

const inBrackets = (text: string): Unit | undefined => {
  const bracket = /[([]\s*([^()[\]]{1,12}?)\s*(?:AC|DC)?\s*[)\]]/iu.exec(text)?.[1];
  const unit = bracket === undefined ? undefined : readUnit(bracket);
  return unit?.ok ? unit.value : undefined;
};

/** Whether the last word of a title is its unit. */
const isAtEnd = (text: string, name: string): boolean => {
  const last = text.split(/[\s,/]+/).at(-1) ?? "";
  if (/[,;]\s*[AV]$/.test(text)) return name !== "";
  const isUnit = /^(?![ΩΩ])\p{L}$/u.test(last) ? isLettered(text) : !NO_UNITS.test(last);
  const isParted = /,\s?\S+$/.test(text);
  return name !== "" && (isParted || !/\d$/.test(name)) && isUnit;
};

/** Whether a title, or one of its words, names what is written with a letter for its unit. */
const isLettered = (text: string): boolean =>
  [text, ...text.split(" ")].some((words) => LETTERED.includes(conceptOf(words)));

/** The first unit among the words: "µΩ at 100 A"; after a number it is a condition, and no unit of the values. */
const amongWords = (text: string): Unit | undefined => {
  const words = text.split(/[\s,;:()[\]?]+/);
  for (const [index, word] of words.entries()) {
    const isCondition = /^[\d.,]+$/.test(words[index - 1] ?? "");
    if (word.length < 2 || /\d/.test(word) || isCondition || NO_UNITS.test(word)) continue;
    const unit = readUnit(word.replace(/^(k?v)(?:dc|ac)$/i, "$1").replace(/\.$/, ""));
    if (unit.ok) return unit.value;
  }
  return undefined;
};

/** What is titled with a letter for its unit: "I A", "Prim A", "T C"; others have phases after them. */
const LETTERED: readonly (Concept | undefined)[] = [
  "current",
  "primary",
  "secondary",
  "temperature",
  "air",
  "voltage",
  "duration",
];

/** Words that are units elsewhere and prepositions or articles here. */
const NO_UNITS = /^(?:in|t|m|min|mins|minutes?|max|metres?|meters?|feet|foot|pounds?|secs?)\.?$/i;
