import type { Told } from "../../messages/told";
import type { UnitSize } from "../../quantities/units";
import { KINDS } from "../../records/kinds";
import { OWN_LANGUAGE } from "./languages/languages";
import { plainWords } from "./plainWords";

/** What a column of an export can hold: what is measured, where it is a quantity. Its name stands in the messages. */
export interface Field {
  readonly quantity?: UnitSize["quantity"];
}

export const FIELDS: Readonly<Record<keyof Told["intake"]["fields"], Field>> &
  Readonly<Record<string, Field>> = {
  object: {},
  circuit: {},
  section: {},
  part: {},
  position: {},
  operation: {},
  stage: {},
  test: {},
  reading: {},
  resistance: { quantity: "resistance" },
  r30s: { quantity: "resistance" },
  r10min: { quantity: "resistance" },
  voltage: { quantity: "voltage" },
  controlV: { quantity: "voltage" },
  current: { quantity: "current" },
  temperature: { quantity: "temperature" },
  air: { quantity: "temperature" },
  surface: { quantity: "temperature" },
  humidity: { quantity: "share" },
  pressure: { quantity: "pressure" },
  unit: {},
  duration: { quantity: "time" },
  discharge: {},
  date: {},
  time: {},
  by: {},
  instrument: {},
  serial: {},
  remarks: {},
};

const BY_TITLE: ReadonlyMap<string, string> = new Map([
  ...KINDS.flatMap((kind) =>
    kind.columns
      .filter(({ role }) => role === "key" || role === "entry")
      .map(({ header, unit, id, role }): [string, string] => [
        plainWords(unit ? header.replace(` ${unit}`, "") : header),
        role === "key" && !(id in FIELDS) ? "position" : id,
      ]),
  ),
  ...Object.entries(OWN_LANGUAGE.titles).flatMap(([field, titles]) =>
    titles.map((title): [string, string] => [plainWords(title), field]),
  ),
]);

/** The field that a title without its unit names: a word of the trade, or the header of a column of the records. */
export const fieldOf = (title: string): string | undefined => BY_TITLE.get(plainWords(title));

const COLUMN_IDS: ReadonlySet<string> = new Set(
  KINDS.flatMap(({ columns }) =>
    columns.filter(({ role }) => role === "entry").map(({ id }) => id),
  ),
);

export const isField = (field: string): boolean =>
  Object.hasOwn(FIELDS, field) || COLUMN_IDS.has(field);

/** Key columns of the records besides the panel, the part and the stage say where a reading was taken. */
const POSITION_IDS: ReadonlySet<string> = new Set(
  KINDS.flatMap(({ columns }) =>
    columns.flatMap(({ id, role }) => (role === "key" && !(id in FIELDS) ? id : [])),
  ),
);

/**
 * The field that a user's word for it means: the field itself, the id of a column of the records, or a
 * word that titles use for it.
 *
 * @example fieldMeant("combination") // "position"
 */
export const fieldMeant = (word: string): string | undefined =>
  isField(word) ? word : POSITION_IDS.has(word) ? "position" : fieldOf(word);
