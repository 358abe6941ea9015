import { type Unit, unitSize } from "../../quantities/units";
import type { Column, RecordKind } from "../../records/kind";
import type { StatedWord } from "./languages/language";
import { anyWord } from "./phrases";
import { plainWords } from "./plainWords";
import { splitTitle } from "./readTitle";

const STATED_WORDS = ["limit", "corrected", "spread", "error", "result"] as const;

/** How titles name what a layout of somebody's own works out or judges itself, which is compared and never taken over. */
export const STATED = Object.fromEntries(
  STATED_WORDS.map((field) => [field, new RegExp(`^${anyWord(({ stated }) => stated[field])}$`)]),
) as Readonly<Record<StatedWord, RegExp>>;

export type StatedField = StatedWord;

export const isStated = (field: string): field is StatedField => Object.hasOwn(STATED, field);

/** The limit that a reading of the kind is held against. */
const LIMITS = ["minimum", "maximum", "required"];

/**
 * The column of a kind that a layout's own limit, corrected value, spread, error or result is compared with.
 *
 * @example statedColumn(contact, "limit")?.id // "maximum"
 */
export const statedColumn = (
  { columns, spread }: RecordKind,
  field: StatedField,
): Column | undefined =>
  field === "limit"
    ? columns.find(({ id }) => LIMITS.includes(id))
    : field === "result"
      ? columns.find(({ role }) => role === "result")
      : columns.find(({ id }) => id === (field === "spread" ? spread?.column : field));

/**
 * What a title says that the layout states, where the kind has such a column of that quantity.
 *
 * @param around the unit of the block, for a title that tells none
 * @example statedField(insulation, "Limit [MΩ]") // "limit"
 */
export const statedField = (
  kind: RecordKind,
  title: string,
  around?: Unit,
): StatedField | undefined => {
  const { name, unit } = splitTitle(title);
  const words = plainWords(name);
  const measure = unit ?? around;
  return (Object.keys(STATED) as StatedField[]).find((field) => {
    const column = statedColumn(kind, field);
    return (
      column !== undefined &&
      STATED[field].test(words) &&
      (field === "result"
        ? unit === undefined
        : column.unit === undefined
          ? unit === undefined || unit === "%"
          : measure !== undefined && unitSize(measure).quantity === unitSize(column.unit).quantity)
    );
  });
};

const PASSES = new RegExp(`^(?:[✓✔]|${anyWord(({ pass }) => pass)})$`);
const FAILS = new RegExp(`^(?:[✗✘]|${anyWord(({ fail }) => fail)})$`);

/** A result in somebody's own words: `Pass`, `Fail`, or undefined for what is neither. */
export const statedResult = (text: string): "Pass" | "Fail" | undefined => {
  const words = /^[✓✔✗✘]$/.test(text.trim()) ? text.trim() : plainWords(text);
  return PASSES.test(words) ? "Pass" : FAILS.test(words) ? "Fail" : undefined;
};
