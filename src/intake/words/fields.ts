import type { UnitSize } from "../../quantities/units";
import { KINDS } from "../../records/kinds";
import { OWN_LANGUAGE } from "./languages/languages";
import { plainWords } from "./plainWords";

/** What a column of an export can hold: its name in messages, and what is measured, where it is a quantity. */
export interface Field {
  readonly name: string;
  readonly quantity?: UnitSize["quantity"];
}

export const FIELDS: Readonly<Record<string, Field>> = {
  object: { name: "panel or section" },
  circuit: { name: "circuit, where no panel is named" },
  section: { name: "bus section, where no panel is named" },
  part: { name: "part" },
  position: { name: "combination, phase or pole" },
  operation: { name: "operation of a breaker, which its part is named with" },
  stage: { name: "stage" },
  test: { name: "test" },
  reading: { name: "reading" },
  resistance: { name: "resistance", quantity: "resistance" },
  r30s: { name: "resistance at 30 s", quantity: "resistance" },
  r10min: { name: "resistance at 10 min", quantity: "resistance" },
  voltage: { name: "test voltage", quantity: "voltage" },
  controlV: { name: "control voltage", quantity: "voltage" },
  current: { name: "test current", quantity: "current" },
  temperature: { name: "temperature of what is tested", quantity: "temperature" },
  air: {
    name: "air temperature, which stands in where no other is given",
    quantity: "temperature",
  },
  surface: { name: "surface temperature", quantity: "temperature" },
  humidity: { name: "humidity", quantity: "share" },
  pressure: { name: "air pressure", quantity: "pressure" },
  unit: { name: "unit of the readings beside it" },
  duration: { name: "duration", quantity: "time" },
  discharge: { name: "disruptive discharge" },
  date: { name: "date" },
  time: { name: "time of day" },
  by: { name: "tested by" },
  instrument: { name: "instrument" },
  serial: { name: "instrument's serial number" },
  remarks: { name: "remarks" },
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
