import type { Lineup } from "../lineup/lineup";
import type { OwnLimit } from "../lineup/ownCriterion";
import type { Unit } from "../quantities/units";
import type { Sense, Verdict } from "../standards/judge";
import type { Work } from "./repairs";

/** What a cell holds. Dates are serial day numbers, as spreadsheets keep them (1900 system). */
export type CellValue = string | number | boolean | null;

/** One row of a record table, by column id. */
export type Row = Readonly<Record<string, CellValue>>;

/**
 * What a column is for:
 * - `key`: says what the row is about; written when the table is built; together the keys name a row
 * - `given`: a rating or fact of the lineup that the row's calculation uses
 * - `entry`: typed or brought in by people; never written over unasked
 * - `limit`: an acceptance criterion, from the standard by formula or a value of the maker's or project's
 * - `computed`: follows from the row by formula
 * - `result`: the row's verdict, by formula
 * - `note`: free text beside the row
 */
export type Role = "key" | "given" | "entry" | "limit" | "computed" | "result" | "note";

/** Writes a reference to another column of the same row, to the whole column, or to the row's cells from one column to another. */
export interface Reference {
  (id: string): string;
  all(id: string): string;
  span(from: string, to: string): string;
}

/**
 * What an entry column accepts, or what a computed one answers. Of a list, `right` is the word that a
 * sound row holds and `also` others that are as good; by the word `exempt` the row does not apply and
 * is not required, unless the column `always` of its row says that it always does. Where the column
 * `asked` is blank, the word is not asked for.
 */
export type Accepts =
  | { readonly type: "number"; readonly least?: number; readonly most?: number }
  | { readonly type: "reading" }
  | { readonly type: "date" }
  | {
      readonly type: "list";
      readonly values: readonly string[];
      readonly right?: string;
      readonly also?: readonly string[];
      readonly exempt?: string;
      readonly always?: string;
      readonly asked?: string;
    }
  | { readonly type: "text" };

/** A quantity that a maker or project can set a limit of its own for, by the name that a lineup gives it. */
export interface OwnQuantity {
  /** Name with its unit: `joint resistance µΩ`. */
  readonly name: string;
  /** The rows that it is for; without it, all. */
  readonly of?: (row: Row) => boolean;
}

/** Finds the limit of the maker's or project's own for a row. */
export interface Own {
  (row: Row, lineup: Lineup): OwnLimit | undefined;
  /** What it looks for among the lineup's criteria. */
  readonly quantities?: readonly OwnQuantity[];
}

/** What a reading lies above, if it was read at all and in its unit; not in rows whose cell in a column is one of some words. */
interface Above {
  readonly value: number;
  readonly except?: { readonly column: string; readonly words: readonly string[] };
}

export interface Column {
  readonly id: string;
  readonly header: string;
  readonly role: Role;
  /** Width in characters. */
  readonly width: number;
  readonly unit?: Unit;
  /** For a column whose unit differs by row: id of the column that names it. */
  readonly unitIn?: string;
  /** What the voltage or current of the column is: one of these, that of the lineup's withstand test, or any. */
  readonly wave?: "AC" | "DC" | "of the lineup" | "any";
  /** Field of an export that the column takes before another of its quantity: of two temperatures that of the air. */
  readonly takesFirst?: string;
  /** For a limit that no comparison names: the side on which a reading is right. */
  readonly side?: "least" | "most";
  readonly format?: string;
  /** True of what only says another column in other words: a table that was built without it lacks nothing. */
  readonly aside?: true;
  readonly accepts?: Accepts;
  /** One sentence for the person who fills the cell. */
  readonly help?: string;
  /**
   * What a blank entry means for a row that has been started: the reading itself, a condition that
   * its judgement needs, or who, when and with what.
   */
  readonly need?: "reading" | "condition" | "trail";
  /** False where this row or lineup does without the entry. */
  readonly needed?: (row: Row, lineup: Lineup) => boolean;
  /** A number no greater than this proves nothing: no sound object measures it. */
  readonly above?: Above;
  /** Id of the limit that the entry is compared with: where that says `n/a`, the row does without the entry. */
  readonly unless?: string;
  /** For a limit: the maker's or project's own criterion, which then stands as a value in place of the formula. */
  readonly own?: Own;
  /** The worksheet formula in the file's form, without the equals sign. */
  readonly formula?: (ref: Reference, lineup: Lineup) => string;
  /** What a formula over the whole column works from, made once for the table. */
  readonly survey?: (rows: readonly Row[]) => ReadonlyMap<string, number>;
  /** The same as `formula`, computed here. Earlier columns of the row are already computed. */
  readonly value?: (row: Row, lineup: Lineup, survey: ReadonlyMap<string, number>) => CellValue;
  /**
   * How the computed row's value comes about, as one would write it on paper with this row's numbers
   * (`1200 MΩ × 2 = 2400 MΩ`); blank where there is nothing to work out.
   */
  readonly working?: (row: Row, lineup: Lineup) => string;
}

/** A number of a row against its limit, both by column id. */
export interface Comparison {
  readonly value: string;
  readonly limit: string;
  /** None for a pure number. */
  readonly unit?: Unit;
  /** True where the value's unit stands in its row: the decision rule can be asked of it although no unit is named. */
  readonly measured?: true;
  readonly sense: Sense;
  /** Fraction of the limit granted in the value's favour. */
  readonly tolerance?: number;
  /**
   * Id of a second limit, on the lenient side, that the value must miss as well to fail: between the two
   * it is inconclusive. Where its cell is blank, the one limit decides.
   */
  readonly lenient?: string;
  /** True where missing it fails the row even if the test was not made with enough, as a wrong ratio does at any current. */
  readonly outright?: true;
  /**
   * True where the row's limit may say `n/a`: the class, plate or project gives none, and the row is
   * judged by the rest. A blank limit excuses nothing.
   */
  readonly excusable?: true;
  /**
   * Id of a column without which there is nothing to compare: where its cell is blank, the comparison
   * falls away. A row of which nothing is left to accept it by is inconclusive.
   */
  readonly when?: string;
  /** Id of a limit in whose place it stands: where that cell is not blank, the comparison falls away. */
  readonly insteadOf?: string;
  /** True where missing it asks for an explanation and is no failure by itself, as of a value that stands out from its like. */
  readonly asks?: true;
}

/** What must have passed before: a kind, or its rows of one stage; for rows of one stage, or for all. */
export interface Before {
  readonly kind: string;
  readonly of?: string;
  readonly stage?: string;
  /** True where a remark may say why it is in order the other way, as of a relay tested on the bench. */
  readonly orRemark?: true;
  /** What a row is of, and one of the kind before, where that is not its panel or section; undefined of one that is compared with none. */
  readonly own?: (row: Row) => string | undefined;
  readonly other?: (row: Row) => string | undefined;
}

/** What a limit says that its row has no need of. */
export const NOT_APPLICABLE = "n/a";

/** Whether a cell holds a word; a spreadsheet compares text without regard to case. */
export const sameWord = (cell: CellValue | undefined, word: string): boolean =>
  typeof cell === "string" && cell.toLowerCase() === word.toLowerCase();

/** Whether a row has need of an entry. */
export const isNeeded = ({ needed, unless }: Column, row: Row, lineup: Lineup): boolean =>
  !(unless !== undefined && isNotApplicable(row[unless])) && (needed?.(row, lineup) ?? true);

/** Whether a limit says that its row has no need of it; a spreadsheet compares text without regard to case. */
export const isNotApplicable = (cell: CellValue | undefined): boolean =>
  typeof cell === "string" && cell.toLowerCase() === NOT_APPLICABLE;

/**
 * What a kind is to the others, by which rules of the check find it:
 * - `insulation`: of the main circuit, `corrected` against `minimum`, by `object`, `part`, `combination` and `stage`
 * - `withstand`: of the main circuit, `applied` against `required`, by `object` and `part`
 * - `inspection`: the points that other records wait for, by `object` and activity (`part`)
 * - `permit`: what the work was done under, by what it is for (`object`) and its sort (`part`), `from` and `to` a day
 * - `document`: what the work is done from, each (`part`) in the revision `found` on site on a day
 */
export type KindRole = "insulation" | "withstand" | "inspection" | "permit" | "document";

/** Steps of the work on site, in their order (common practice). Tests of single devices have no place among the others (`devices`), and those of cables only after their panel stands (`cables`). */
export const STEPS = [
  "receipt",
  "installation",
  "joints",
  "earthing",
  "devices",
  "cables",
  "insulation",
  "withstand",
  "functions",
  "energization",
] as const;
export type Step = (typeof STEPS)[number];

/** How far the rows of one device lie apart, as sheets state it. */
export interface SpreadRule {
  /** Id of the column that holds it. */
  readonly column: string;
  readonly unit: "%" | "ms";
  /** The step that people round such a figure to (common practice). */
  readonly step: number;
  /** Ids of the readings that it is worked out from, where a sheet may work it out in another way. */
  readonly from?: readonly string[];
}

/**
 * How a work makes tests of a kind void that were made before it (common practice, no source): those of the
 * panel that was worked on, or of its bus section.
 */
export interface VoidBy {
  readonly reach: "panel" | "section";
  /** The rows that it can reach; without it, all. */
  readonly of?: (row: Row) => boolean;
  /** True where it depends on what was touched, so that it is asked and not said. */
  readonly asks?: true;
}

/** How a row contradicts one of another kind that is of the same thing. */
export interface Contradiction {
  /** Id of the column of the row that is told of. */
  readonly column: string;
  /** What it comes to: a part that resists more than its whole, a burden that is not its loop's, another setting than was tested, another reading of one test, settings confirmed that are not the order's. */
  readonly why: "whole" | "burden" | "setting" | "reading" | "confirmed";
  readonly found: string;
  /** What the other row has. */
  readonly other: string;
}

/** Rows of another kind that are of the same thing as rows of this one, and cannot say anything at all beside them. */
export interface Against {
  /** Id of the other kind. */
  readonly kind: string;
  /** What a row of this kind is of, and one of the other; undefined of one that is compared with none. */
  readonly own: (row: Row) => string | undefined;
  readonly other: (row: Row) => string | undefined;
  /** How the two contradict each other; undefined where they do not. */
  readonly contradiction: (row: Row, other: Row, lineup: Lineup) => Contradiction | undefined;
}

/** What records of the same panel, or the lineup itself, show of a thing that an item is about. */
export interface ShownBy {
  readonly kind: string;
  /** The rows that show it; without it, all. */
  readonly of?: (row: Row) => boolean;
}

/** One sort of test or check: its columns, the rows that a lineup needs, and how it is judged. */
export interface RecordKind<Id extends string = string> {
  readonly id: Id;
  /** What its tests are called besides its title, in English: each the inside of a regular expression, in lower case. */
  readonly alsoCalled?: readonly string[];
  readonly role?: KindRole;
  /** The step of the work on the gear that its rows belong to; none for what is done on paper. */
  readonly step?: Step;
  readonly spread?: SpreadRule;
  /** True where not every project keeps it: it has rows where the lineup asks for it (`furtherRecords`). */
  readonly onRequest?: true;
  /** What a project's own check items among its rows are: seen to or tried, or measured in mm. */
  readonly ownItems?: "seen to" | "measured";
  /** True where a phase named alone is one against earth, so that an export's "L1-E" is the row L1. */
  readonly phasesToEarth?: true;
  /** Ids of the entries by which rows of one name are told apart, in a kind that people add further rows to. */
  readonly furtherBy?: readonly string[];
  /** Name of the sheet. */
  readonly sheet: string;
  /** Name of the table on it. */
  readonly table: string;
  readonly columns: readonly Column[];
  /** The rows that this lineup needs: values of `key` and `given` columns, and limits of its own. */
  readonly rows: (lineup: Lineup) => Row[];
  /** What a row is accepted by: where one of these is not met, it fails. */
  readonly accepted: readonly Comparison[];
  /** What the test must have been made with or held for: where one of these is not met, it proves nothing. */
  readonly enough: readonly Comparison[];
  /** Kinds whose records of the same panel or section must have passed before these are made. */
  readonly after?: readonly Before[];
  /**
   * Where its rows follow one another: what each waits for, as a number from 0, none where it waits for
   * nothing; rows of a greater number wait for those of a smaller one of their panel and of the lineup. Before
   * rows of the last, records of the kinds `first` of the panel are there. By rows that are `alive` the panel,
   * or the lineup, stood under voltage.
   */
  readonly stages?: {
    readonly of: (row: Row) => number | undefined;
    readonly alive: (row: Row) => boolean;
    readonly last: number;
    readonly first: readonly string[];
  };
  /** The rows whose readings are taken with the gear under voltage. */
  readonly live?: (row: Row) => boolean;
  /** The rows without which gear may stand under voltage, as its labels and heaters: asked for, and no stop. */
  readonly minor?: (row: Row) => boolean;
  /** Repairs after which its tests have to be made again. */
  readonly voidBy?: Readonly<Partial<Record<Work, VoidBy>>>;
  /** So many minutes at least that a row takes its tester and instrument, by what it records; 0 where it does not tell. */
  readonly minutes?: (row: Row) => number;
  /** So many minutes of these a test voltage was on that has to be watched at every end. */
  readonly watched?: (row: Row) => number;
  /** Where a row may be struck out as not applicable: which records, or the lineup, show that what it asks for is there. */
  readonly shownBy?: (row: Row) => readonly (ShownBy | "lineup")[];
  /** Readings of a row that do not fall from one to the next by more than `by`, or its share of the earlier one. */
  readonly rising?: {
    readonly columns: readonly string[];
    readonly by: number;
    readonly share: number;
  };
  /** An angle that is about the same in all of its rows of which nothing turns it round: a half turn is a reversed polarity. */
  readonly angle?: { readonly column: string; readonly turned: (row: Row) => boolean };
  /** What is put onto the object and is not to be far above what is asked for: by so great a share. */
  readonly stress?: readonly {
    readonly value: string;
    readonly limit: string;
    readonly share: number;
    /** Only where the project or the maker gives it: the standard's is a minimum. */
    readonly givenOnly?: true;
  }[];
  /** What its rows are held against on other sheets. */
  readonly against?: readonly Against[];
  /** A curve that a row holds, for kinds whose rows are measured curves. */
  readonly curve?: {
    /** Points: along, a number or the id of its column; upward, the id of its column. */
    readonly points: readonly (readonly [along: string | number, upward: string])[];
    readonly along: string;
    readonly upward: string;
    /** Unit of what stands upward. */
    readonly unit: Unit;
    /** Id of a computed column that is a height on the curve, such as a knee. */
    readonly mark?: string;
  };
  /** Readings of one row that are drawn side by side within their limits, such as the times of three poles. */
  readonly parts?: {
    /** What the picture of a row is called. */
    readonly title: (row: Row) => string;
    /** Ids of the readings, and of the limits that hold for each of them. */
    readonly values: readonly string[];
    readonly limits: readonly string[];
    readonly upward: string;
    readonly unit: Unit;
  };
  /** Ids of the columns whose numbers are compared in plots, a reading and its limit; none where a picture says nothing. */
  readonly plot?: {
    readonly value: string;
    readonly limit: string;
    readonly unit: Unit;
    readonly log: boolean;
  };
}

/** The verdict that a computed row carries. */
export const verdictOf = (row: Row): Verdict => (row.result ?? "Missing") as Verdict;

/** Ids of the key columns. */
export const keyIds = (kind: RecordKind): string[] =>
  kind.columns.filter((column) => column.role === "key").map((column) => column.id);

/** What names a row: its key cells in order. */
export const rowKey = (row: Row, ids: readonly string[]): string =>
  ids.map((id) => String(row[id] ?? "").trim()).join(" · ");

export const isBlank = (value: CellValue | undefined): boolean =>
  value === null || value === undefined || (typeof value === "string" && value.trim() === "");
