import type { Unit } from "../../quantities/units";
import type { Cell } from "../read/cells";
import type { Concept } from "../words/words";

export type Stage = "before" | "after";

/** One column of a table of somebody's own, or one line of labels where the table stands on its side. */
export interface SurveyColumn {
  /** Column of the view. */
  readonly at: number;
  readonly title: string;
  /** The lines of its title from the top. */
  readonly lines: readonly string[];
  readonly concept?: Concept;
  readonly unit?: Unit;
  /** The phase or combination that the title names. */
  readonly position?: string;
  /** The panel that its title names, where the panels stand across with several quantities each. */
  readonly panel?: string;
  readonly stage?: Stage;
  readonly operation?: "closing" | "opening";
  /** Id of the record kind that somebody has said it is of. */
  readonly kind?: string;
  /** The title of the group that it stands in. */
  readonly group?: string;
  /** Whether most of its cells are formulas. */
  readonly computed: boolean;
  /** Whether most of its cells are numbers. */
  readonly numbers: boolean;
  /** The columns that a bound is for, where it is not for all of them. */
  readonly bounds?: readonly number[];
}

/** A bound that the workbook itself states, in its unit. */
export interface Limit {
  readonly side: "least" | "most";
  readonly number: number;
  readonly unit?: Unit;
  /** The words before it, which may say what it is about. */
  readonly about?: string;
  /** The operation that it is about, where it says one. */
  readonly operation?: "closing" | "opening";
  /** Where it is stated, as an address of the sheet. */
  readonly address: string;
}

/** What headings, labels and notes say of all that stands under them. */
export interface Facts {
  readonly day?: number;
  /** Where the day is told. */
  readonly dayAddress?: string;
  readonly by?: string;
  readonly instrument?: string;
  readonly testV?: number;
  readonly kV?: number;
  readonly seconds?: number;
  readonly limits: readonly Limit[];
}

/** One reading that the workbook has a place for, with what stands beside it in its line. */
export interface Entry {
  /** Id of the record kind. */
  readonly kind: string;
  readonly panel: string;
  /** What is measured of the panel: phase, combination, part, as it is written. */
  readonly position: string;
  readonly stage?: Stage;
  readonly operation?: "closing" | "opening";
  /** Line of the view, for what is compared line by line. */
  readonly line: number;
  /** The column of the reading. */
  readonly column: SurveyColumn;
  readonly address: string;
  /** Undefined where nothing is written. */
  readonly cell?: Cell;
  readonly unit?: Unit;
  /** The cells beside it by what they are about. */
  readonly beside: Readonly<Partial<Record<Concept, Cell>>>;
  readonly limits: readonly Limit[];
  readonly facts: Facts;
}

/** One table of records as somebody keeps it. */
export interface Block {
  readonly sheet: string;
  /** Address of its cells, its titles among them. */
  readonly range: string;
  readonly kinds: readonly string[];
  readonly panels: readonly string[];
  readonly columns: readonly SurveyColumn[];
  readonly entries: readonly Entry[];
  /** Whether its lines are columns of the sheet. */
  readonly turned: boolean;
  /** Lines of records, of the view. */
  readonly lines: readonly number[];
  /** All lines under the titles, those that are worked out from others among them. */
  readonly span: readonly [first: number, last: number];
  /** Cells by line and column of the view. */
  readonly at: (line: number, column: number) => Cell | undefined;
  readonly address: (line: number, column: number) => string;
  readonly facts: Facts;
  /** Lines of words over it. */
  readonly heading: readonly Cell[];
  /** By what it was recognised: titles and units of its readings, the words over it. */
  readonly recognisedBy: {
    readonly titles: readonly string[];
    readonly units: readonly string[];
    readonly heading?: string;
  };
}

/** An instrument of a list with its calibration. */
export interface SurveyInstrument {
  readonly id: string;
  /** Last day of its calibration, as a serial number. */
  readonly due: number;
  readonly sheet: string;
  readonly address: string;
}

/** A label of a form with what is written beside it; undefined where that is blank. */
export interface Label {
  readonly sheet: string;
  readonly concept: Concept;
  readonly text: string;
  readonly address: string;
  /** Where the value stands or would stand. */
  readonly valueAddress: string;
  readonly value?: Cell;
}

/** What a workbook without a lineup was found to hold. */
export interface Survey {
  readonly blocks: readonly Block[];
  readonly instruments: readonly SurveyInstrument[];
  readonly labels: readonly Label[];
}
