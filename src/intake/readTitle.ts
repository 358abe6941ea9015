import { readUnit } from "../quantities/readUnit";
import { type Unit, unitSize } from "../quantities/units";
import { KINDS } from "../records/kinds";
import { FIELDS, fieldOf } from "./fields";

export interface Title {
  readonly field?: string;
  readonly unit?: Unit;
}

/** A title's name and unit: `R (MΩ)`, `R [GΩ]`, `R/MΩ`, `R in MΩ`, `R, MΩ`, `R MΩ`. */
const WITH_UNIT = [
  /^(.+?)\s*[([]\s*([^()[\]]+?)\s*[)\]]$/,
  /^(.+?)\s*\/\s*([^/]+)$/,
  /^(.+?)\s+in\s+(\S+)$/,
  /^(.+?)[\s,_]+([^\s_]+)$/,
];
const WAVE = /\s*\b(?:AC|DC|r\.?m\.?s\.?)$/i;

/**
 * What a column's title says: the field, by its trade word, and the unit, if it carries one.
 *
 * @param given the field that the user has named for this title, which then counts alone
 * @example readTitle("Insulation resistance [GΩ]") // { field: "resistance", unit: "GΩ" }
 */
export const readTitle = (title: string, given?: string): Title => {
  const text = title.slice(0, 200).trim().replace(/\s+/g, " ");
  const own = OWN_HEADERS.get(text);
  const field = given ?? own?.field ?? fieldOf(text);
  if (own && given === undefined) return own;
  for (const form of WITH_UNIT) {
    const [, name = "", written = ""] = form.exec(text) ?? [];
    const unit = readUnit(written.replace(WAVE, ""));
    const named = given ?? fieldOf(name);
    if (!unit.ok || named === undefined || (field !== undefined && given === undefined)) continue;
    const size = unitSize(unit.value).quantity;
    if (named === "time" && size === "time") return { field: "duration", unit: unit.value };
    const quantity = FIELDS[named]?.quantity;
    if (quantity === undefined || quantity === size) return { field: named, unit: unit.value };
  }
  return { field };
};

/** The headers of our own record tables, whose unit is the column's. */
const OWN_HEADERS: ReadonlyMap<string, Title> = new Map(
  KINDS.flatMap(({ columns }) =>
    columns
      .filter(({ role, unit }) => role === "entry" && unit !== undefined)
      .map(({ id, header, unit }): [string, Title] => [header, { field: id, unit }]),
  ),
);
