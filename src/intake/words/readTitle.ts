import { memoizeText } from "../../quantities/memoizeText";
import { unitCalled } from "../../quantities/reading/readUnit";
import { type Unit, unitSize } from "../../quantities/units";
import { KINDS } from "../../records/kinds";
import { FIELDS, fieldOf } from "./fields";
import { LANGUAGES } from "./languages/languages";
import { lostInTitle } from "./lostUnit";
import { plainWords } from "./plainWords";
import { type TitleWords, titleWords } from "./synonyms";
import { WAVES, withoutWave } from "./wave";

export interface Title {
  readonly field?: string;
  readonly unit?: Unit;
}

/** A title's name and unit: `R (MΩ)`, `R [GΩ]`, `R/MΩ`, `R in MΩ`, `R, MΩ`, `R MΩ`. */
const WITH_UNIT = [
  /^(.+?)\s*[([]\s*([^()[\]]+?)\s*[)\]]$/,
  /^(.+?)\s*\/\s*([^/]+)$/,
  /^(.+?)\s+in\s+(\S+)$/,
  new RegExp(`^(.+?)[\\s,_]+([^\\s_]+(?:\\s${WAVES})?)$`, "i"),
];
const SHIPPED = titleWords();

/** The name of a title and the unit that it ends with; the unit is left where it is none that is known. */
export const splitTitle = memoizeText((title): { readonly name: string; readonly unit?: Unit } => {
  const text = tidy(title);
  if (SECONDARY.test(text)) return { name: text };
  for (const form of WITH_UNIT) {
    const [, name = "", written = ""] = form.exec(text) ?? [];
    const unit = unitCalled(withoutWave(written));
    if (unit !== undefined) return { name, unit };
  }
  const alone = unitCalled(text.replace(/^[([]|[)\]]$/g, ""));
  if (alone !== undefined && !/^[a-z]$/i.test(text)) return { name: "", unit: alone };
  // A header of ours may have its unit within: "Closing coil worked at V, low".
  return { name: text, unit: OWN_HEADERS.get(text)?.unit };
});

/** The sign of a current or voltage with the secondary side, which is no second: `I sec.`, `U_sec`. */
const SECONDARY = /^[IUV][\s_.]{0,2}sec\.?$/i;

const tidy = (title: string) => title.slice(0, 200).trim().replace(/\s+/g, " ");

/**
 * What a column's title says: the field, by its trade word, and the unit, if it carries one.
 *
 * @param given the field that the user has named for this title, which then counts alone
 * @param other words for fields besides the trade's English ones
 * @example readTitle("Insulation resistance [GΩ]") // { field: "resistance", unit: "GΩ" }
 */
export const readTitle = (title: string, given?: string, words: TitleWords = SHIPPED): Title => {
  if (given !== undefined) return titleIn(title, given, words);
  // The same few titles are looked at again for every delimiter and on every page.
  const known = READ.get(words) ?? new Map<string, Title>();
  READ.set(words, known);
  const remembered = known.get(title);
  if (remembered) return remembered;
  const read = titleIn(title, undefined, words);
  if (known.size > MAX_READ) known.clear();
  if (title.length < 200) known.set(title, read);
  return read;
};

const MAX_READ = 5000;
const READ = new WeakMap<TitleWords, Map<string, Title>>();

const titleIn = (title: string, given: string | undefined, words: TitleWords): Title => {
  const text = tidy(title);
  const named = (name: string) => fieldOf(name) ?? words(name);
  const own = OWN_HEADERS.get(text);
  if (own && given === undefined) return own;
  const field = given ?? own?.field ?? named(text);
  for (const form of WITH_UNIT) {
    const [, name = "", written = ""] = form.exec(text) ?? [];
    const unit = unitCalled(withoutWave(written));
    const found =
      unit !== undefined && (given !== undefined || field === undefined)
        ? withUnit(name, unit, given ?? named(name), given !== undefined)
        : undefined;
    if (found) return found;
  }
  return { field: lostField(text, field, named) ?? field };
};

/** A name with its unit as a title, where the two go together. */
const withUnit = (
  name: string,
  unit: Unit,
  meant: string | undefined,
  isGiven: boolean,
): Title | undefined => {
  const size = unitSize(unit).quantity;
  const quantity = FIELDS[meant ?? ""]?.quantity;
  // A title of ours with its unit in brackets: "Conductor (°C)" is no conductor, "Applied (N·m)" no voltage.
  const ours = isGiven || quantity === size ? undefined : OWN_NAMES.get(ownName(name, unit));
  if (ours) return ours;
  if (meant === undefined) return undefined;
  if (meant === "time" && size === "time") return { field: "duration", unit };
  return quantity === undefined || quantity === size ? { field: meant, unit } : undefined;
};

/** The quantity that a title names whose unit has lost a sign. */
const lostField = (
  text: string,
  field: string | undefined,
  named: (name: string) => string | undefined,
): string | undefined => {
  const lost = field === undefined ? lostInTitle(text) : undefined;
  const meant = lost && named(lost.name);
  return FIELDS[meant ?? ""]?.quantity === undefined ? undefined : meant;
};

const ownName = (name: string, unit: Unit) => `${plainWords(name)} ${unit}`;

/** The headers of our own record tables, whose unit is the column's. */
const OWN_HEADERS: ReadonlyMap<string, Title> = new Map(
  KINDS.flatMap(({ columns }) =>
    columns
      .filter(({ role, unit }) => role === "entry" && unit !== undefined)
      .map(({ id, header, unit }): [string, Title] => [header, { field: id, unit }]),
  ),
);

/** The same by their name in plain words and their unit, and other names that their unit makes sure. */
const OWN_NAMES: ReadonlyMap<string, Title> = new Map([
  ...[...OWN_HEADERS].flatMap(([header, title]): [string, Title][] => {
    const { name, unit } = splitTitle(header);
    return unit === undefined || name === "" ? [] : [[ownName(name, unit), title]];
  }),
  ...LANGUAGES.flatMap(({ titlesWithUnit = [] }) =>
    titlesWithUnit.flatMap(({ field, unit, titles }) =>
      titles.map((name): [string, Title] => [ownName(name, unit), { field, unit }]),
    ),
  ),
]);
