import { type Unit, unitSize } from "../../quantities/units";
import type { Column, RecordKind } from "../../records/kind";
import { plainWords } from "./fields";
import { splitTitle } from "./readTitle";

/** What a layout of somebody's own may work out or judge itself, which is compared and never taken over. */
export const STATED = {
  limit:
    /^(?:limit|limit value|acceptance|acceptance limit|criterion|(?:min|max|minimum|maximum|least)(?: value)?|(?:required|specified)(?: torque| value)?|grenzwert|mindestwert|höchstwert|sollwert|limite|valeur (?:min|max)|par requerido|couple requis|límite|valor (?:mín|máx|mínimo|máximo))$/,
  corrected:
    /^(?:(?:r|ir|resistance)? ?corrected.*|(?:r|ir|resistance) (?:at )?20 ?(?:°c|c)?|(?:widerstand )?korrigiert.*|(?:résistance )?corrigée?.*|(?:resistencia )?corregida?.*)$/,
  spread:
    /^(?:(?:pole |phase |max |maximum |greatest )?(?:spread|deviation|difference|discrepancy|unbalance)|(?:pol|max )?abweichung|streuung|spreizung|écart|dispersion|desviación|dispersión)$/,
  error:
    /^(?:(?:ratio |meter |current |time )?error|(?:ratio )?error of ratio|fehler|übersetzungsfehler|erreur|error de relación)$/,
  result:
    /^(?:result|verdict|assessment|pass|pass fail|ok|ok nok|in order|ergebnis|bewertung|beurteilung|résultat|resultado)$/,
} as const satisfies Record<string, RegExp>;

export type StatedField = keyof typeof STATED;

/** What each is, in words. */
export const STATED_NAMES: Readonly<Record<StatedField, string>> = {
  limit: "limit of the layout",
  corrected: "corrected value of the layout",
  spread: "spread of the layout",
  error: "error of the layout",
  result: "result of the layout",
};

export const isStated = (field: string): field is StatedField => Object.hasOwn(STATED, field);

/** The limit that a reading of the kind is held against. */
const LIMITS = ["minimum", "maximum", "required"];

/** How far the poles of a device are apart: resistances in per cent, times. */
const SPREADS = ["spread", "poleSpread"];

/**
 * The column of a kind that a layout's own limit, corrected value, spread, error or result is compared with.
 *
 * @example statedColumn(contact, "limit")?.id // "maximum"
 */
export const statedColumn = ({ columns }: RecordKind, field: StatedField): Column | undefined =>
  field === "limit"
    ? columns.find(({ id }) => LIMITS.includes(id))
    : field === "result"
      ? columns.find(({ role }) => role === "result")
      : columns.find(({ id }) => (field === "spread" ? SPREADS.includes(id) : id === field));

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

const PASSES =
  /^(?:✓|✔|ok|okay|pass|passed|in order|satisfactory|acceptable|i ?o|in ordnung|bestanden|conforme|correct|correcto|apto|bon)$/;
const FAILS =
  /^(?:✗|✘|nok|n ok|not ok|fail|failed|rejected|n ?i ?o|nicht bestanden|non conforme|no conforme|no apto)$/;

/** A result in somebody's own words: `Pass`, `Fail`, or undefined for what is neither. */
export const statedResult = (text: string): "Pass" | "Fail" | undefined => {
  const words = /^[✓✔✗✘]$/.test(text.trim()) ? text.trim() : plainWords(text);
  return PASSES.test(words) ? "Pass" : FAILS.test(words) ? "Fail" : undefined;
};
