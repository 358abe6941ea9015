import type { UnitSize } from "../../quantities/units";
import { KINDS } from "../../records/kinds";

/** What a column of an export can hold, and the titles in trade words that say so. */
export interface FieldWords {
  readonly name: string;
  readonly titles: readonly string[];
  readonly quantity?: UnitSize["quantity"];
}

/** Titles are compared in lower case, without punctuation and without their unit. */
export const FIELDS: Readonly<Record<string, FieldWords>> = {
  object: {
    name: "panel or section",
    titles: [
      "panel",
      "panel id",
      "panel no",
      "panel number",
      "panel name",
      "panel or section",
      "cubicle",
    ],
  },
  circuit: {
    name: "circuit, where no panel is named",
    titles: ["circuit", "feeder", "bay", "object", "test object", "location", "designation"],
  },
  section: {
    name: "bus section, where no panel is named",
    titles: ["section", "bus section", "busbar section", "busbar"],
  },
  part: {
    name: "part",
    titles: ["part", "device", "component", "item", "joint", "breaker", "equipment"],
  },
  position: {
    name: "combination, phase or pole",
    titles: [
      "combination",
      "phase",
      "phases",
      "pole",
      "connection",
      "between",
      "measured between",
      "test between",
      "tested between",
      "test points",
      "position",
      "test connection",
      "conductor",
    ],
  },
  operation: {
    name: "operation of a breaker, which its part is named with",
    titles: ["operation", "kind of operation", "close open", "open close"],
  },
  stage: { name: "stage", titles: ["stage", "before after", "when", "before or after"] },
  test: {
    name: "test",
    titles: ["test", "kind of test", "test type", "type of test", "measurement"],
  },
  reading: { name: "reading", titles: ["reading", "value", "measured", "measured value"] },
  resistance: {
    name: "resistance",
    quantity: "resistance",
    titles: [
      "resistance",
      "r",
      "ir",
      "insulation resistance",
      "contact resistance",
      "joint resistance",
      "measured resistance",
      "r 1 min",
      "r 60 s",
      "r1min",
      "r60s",
      "r60",
      "1 min",
      "60 s",
      "ir 1 min",
      "ir 60 s",
    ],
  },
  r30s: {
    name: "resistance at 30 s",
    quantity: "resistance",
    titles: ["r 30 s", "r30s", "r30", "30 s", "ir 30 s", "resistance 30 s"],
  },
  r10min: {
    name: "resistance at 10 min",
    quantity: "resistance",
    titles: ["r 10 min", "r10min", "r600s", "10 min", "600 s", "ir 10 min", "resistance 10 min"],
  },
  voltage: {
    name: "test voltage",
    quantity: "voltage",
    titles: [
      "voltage",
      "test voltage",
      "test v",
      "test kv",
      "applied voltage",
      "applied",
      "voltage drop",
      "u",
      "u test",
    ],
  },
  controlV: {
    name: "control voltage",
    quantity: "voltage",
    titles: ["control voltage", "coil voltage", "auxiliary voltage"],
  },
  current: {
    name: "test current",
    quantity: "current",
    titles: [
      "current",
      "test current",
      "i",
      "i test",
      "i leak",
      "leakage",
      "leakage current",
      "charging current",
    ],
  },
  temperature: {
    name: "temperature of what is tested",
    quantity: "temperature",
    titles: [
      "temperature",
      "temp",
      "t",
      "conductor temperature",
      "insulation temperature",
      "object temperature",
    ],
  },
  air: {
    name: "air temperature, which stands in where no other is given",
    quantity: "temperature",
    titles: [
      "ambient",
      "ambient temperature",
      "ambient temp",
      "air temperature",
      "air temp",
      "air",
    ],
  },
  surface: {
    name: "surface temperature",
    quantity: "temperature",
    titles: ["surface", "surface temperature", "surface temp"],
  },
  humidity: {
    name: "humidity",
    quantity: "share",
    titles: ["humidity", "relative humidity", "rh", "r h", "rel humidity"],
  },
  pressure: {
    name: "air pressure",
    quantity: "pressure",
    titles: ["pressure", "air pressure", "barometer", "barometric pressure"],
  },
  unit: {
    name: "unit of the readings beside it",
    titles: ["unit", "units", "unit of measurement", "uom"],
  },
  duration: {
    name: "duration",
    quantity: "time",
    titles: ["duration", "test duration", "test time", "time applied"],
  },
  discharge: {
    name: "disruptive discharge",
    titles: ["discharge", "disruptive discharge", "breakdown", "flashover"],
  },
  date: { name: "date", titles: ["date", "test date", "date of test", "day", "date time"] },
  time: { name: "time of day", titles: ["time", "time of day", "clock", "start time"] },
  by: {
    name: "tested by",
    titles: ["tested by", "by", "operator", "engineer", "tester", "technician"],
  },
  instrument: {
    name: "instrument",
    titles: ["instrument", "instrument id", "test instrument", "test set", "tester id"],
  },
  serial: {
    name: "instrument's serial number",
    titles: ["serial", "serial no", "serial number", "s n", "sn", "instrument serial"],
  },
  remarks: {
    name: "remarks",
    titles: ["remarks", "remark", "comment", "comments", "note", "notes"],
  },
};

/** Lower case, full-width signs made plain, and everything but letters, digits and the units' signs a space. */
export const plainWords = (text: string): string =>
  text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}%°]+/gu, " ")
    .trim();

const BY_TITLE: ReadonlyMap<string, string> = new Map([
  ...KINDS.flatMap((kind) =>
    kind.columns
      .filter(({ role }) => role === "key" || role === "entry")
      .map(({ header, unit, id, role }): [string, string] => [
        plainWords(unit ? header.replace(` ${unit}`, "") : header),
        role === "key" && !(id in FIELDS) ? "position" : id,
      ]),
  ),
  ...Object.entries(FIELDS).flatMap(([field, { titles }]) =>
    titles.map((title): [string, string] => [title, field]),
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
