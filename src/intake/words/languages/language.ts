import type { Unit } from "../../../quantities/units";
import type { KindId } from "../../../records/kinds";

/**
 * Words and phrases in lower case, each the inside of a regular expression: `phases?` stands for both
 * "phase" and "phases".
 */
export type Phrases = readonly string[];

/** What a layout of somebody's own states itself, besides readings. */
export type StatedWord = "limit" | "corrected" | "spread" | "error" | "result";

/** The parts of a panel that the records name. */
export const PARTS = [
  "breaker",
  "busbar",
  "circuit",
  "enclosure",
  "door",
  "earth bar",
  "joint",
] as const;

/**
 * What words in titles, headings and names speak of. A word may speak of several things, as "conductor"
 * does of a phase and of what is warm; what it is in a title is told by the words, units and cells around it.
 */
export const SENSES = [
  "panel",
  "section",
  "circuit",
  "place",
  "part",
  "breaker",
  "cable",
  "joint",
  "lug",
  "core",
  "ct",
  "vt",
  "relay",
  "meter",
  "element",
  "phase",
  "stage",
  "before",
  "after",
  "test",
  "operation",
  "number",
  "retest",
  "date",
  "time",
  "by",
  "witness",
  "instrument",
  "serial",
  "remark",
  "unit",
  "resistance",
  "insulation",
  "contact",
  "earth",
  "continuity",
  "voltage",
  "drop",
  "current",
  "leakage",
  "temperature",
  "air",
  "conductor",
  "gas",
  "winding",
  "surface",
  "humidity",
  "pressure",
  "barometer",
  "held",
  "discharge",
  "torque",
  "applied",
  "measured",
  "reading",
  "marked",
  "again",
  "control",
  "closing",
  "opening",
  "tripping",
  "openpole",
  "polarity",
  "primary",
  "secondary",
  "ratio",
  "burden",
  "expected",
  "limit",
  "minimum",
  "maximum",
  "required",
  "corrected",
  "error",
  "deviation",
  "mean",
  "result",
  "alarm",
  "lockout",
  "search",
  "rate",
  "spring",
  "counter",
  "trip",
  "indication",
  "direction",
  "setting",
  "found",
  "left",
  "pickup",
  "dropout",
  "uv",
  "low",
  "high",
  "fuse",
  "sheath",
  "bolt",
  "grade",
  "nameplate",
  "ferrule",
  "reference",
  "shown",
  "state",
  "item",
  "withstand",
  "polarization",
  "absorption",
  "excitation",
  "curve",
  "elapsed",
  "heating",
  "lighting",
  "circuits",
  "wiring",
  "timing",
  "operatingtime",
  "mechanism",
  "installation",
  "function",
  "level",
  "enclosure",
  "door",
  "frame",
  "earthbar",
  "restraint",
  "multiple",
  "angle",
  "frequency",
  "pdf",
  "method",
  "interrupter",
  "maincircuit",
  "arrester",
  "battery",
  "charger",
  "arc",
  "sensor",
  "lit",
  "loop",
  "demagnetized",
  "links",
  "tev",
  "ultrasound",
  "background",
  "pd",
  "tandelta",
  "phasing",
  "rotation",
  "energization",
  "stability",
  "spill",
  "moisture",
  "purity",
  "products",
  "motion",
  "speed",
  "travel",
  "overtravel",
  "rebound",
  "wipe",
  "bounce",
  "coil",
  "motor",
  "thermostat",
  "like",
  "unlike",
  "firmware",
  "endvolts",
  "lead",
  "readback",
  "gasquality",
  "loopcheck",
  "vtwinding",
  "undervoltage",
] as const;
export type Sense = (typeof SENSES)[number];

/** All words of one language that exports and own layouts are read by. What a language leaves out, it has no words for. */
export interface Language {
  /** Titles of columns as they are written, by field or by the id of a record column. */
  readonly titles: Readonly<Record<string, readonly string[]>>;
  /** Titles that name a record column only together with its unit. */
  readonly titlesWithUnit?: readonly {
    readonly field: string;
    readonly unit: Unit;
    readonly titles: readonly string[];
  }[];
  /** How the names of the twelve months begin, without accents. */
  readonly months: Phrases;
  /** What may stand after the number of a day: 3rd. */
  readonly ordinals?: Phrases;
  readonly stages: { readonly before: Phrases; readonly after: Phrases };
  /** The withstand test, with its article, as what a stage is before or after. */
  readonly withstand: Phrases;
  /** Operations of a breaker. */
  readonly operations: { readonly closing: Phrases; readonly opening: Phrases };
  readonly positions: {
    readonly earth: Phrases;
    /** Across the open contacts of a pole. */
    readonly open: Phrases;
    /** Words beside the phases that say nothing more. */
    readonly fillers: Phrases;
    /** The colours of the three phases, L1 first: red, yellow or white, blue (practice). */
    readonly colours?: readonly [Phrases, Phrases, Phrases];
    /** Abbreviations that look like two phases and are none. */
    readonly others?: Phrases;
  };
  /** What stands before the name of the one who did something. */
  readonly by?: Phrases;
  /** What says of a voltage or current that it does not alternate. */
  readonly direct?: Phrases;
  /** What stands before the value that a test was made at. */
  readonly at?: Phrases;
  /** What says that there is none of something. */
  readonly none?: Phrases;
  /** Words that may stand before the name of a panel or section. */
  readonly places?: Phrases;
  readonly parts?: Readonly<Partial<Record<(typeof PARTS)[number], Phrases>>>;
  /** What a test is called, by the id of its record kind; a kind has its English names itself. */
  readonly tests?: Readonly<Partial<Record<KindId, Phrases>>>;
  readonly yes: readonly string[];
  readonly no: readonly string[];
  readonly pass: Phrases;
  readonly fail: Phrases;
  /** What says that something does not apply. */
  readonly notApplicable?: Phrases;
  /** What says that a polarity is as marked: that of instrument transformers is subtractive (IEEE C57.13, from memory). */
  readonly asMarked?: Phrases;
  /** What says that something is the wrong way round. */
  readonly reversed?: Phrases;
  readonly stated: Readonly<Record<StatedWord, Phrases>>;
  /** Sums, averages and limits under a table, alone in a cell. */
  readonly summaries?: Phrases;
  /** Sums and averages with what they are of: "total leakage". */
  readonly summariesOf?: Phrases;
  /** How lines at the foot of a page begin. */
  readonly footers?: Phrases;
  /** What a line of notes begins with. */
  readonly notes?: Phrases;
  /** What a heading between lines begins with that names the panel or section of those below. */
  readonly headings?: Phrases;
  /** Words and phrases as they are written, by what they speak of. */
  readonly senses?: Readonly<Partial<Record<Sense, readonly string[]>>>;
}
