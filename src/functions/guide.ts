import written from "./guide.json";

/** A worksheet function as its own docstring describes it: `npm run docs` writes `guide.json` from them. */
export interface FunctionGuide {
  readonly name: string;
  readonly text: string;
  /** What it gives, with its unit. */
  readonly gives: string;
  readonly parameters: readonly {
    readonly name: string;
    /** What it is, with its unit: `Resistance after 30 s, MΩ`. */
    readonly label: string;
    /** What helps to fill it in; blank where nothing more is to be said. */
    readonly text: string;
    readonly optional: boolean;
    /** The words that it takes, each with what it means; none where it takes others. */
    readonly words: readonly (readonly [word: string, meaning: string])[];
  }[];
  readonly examples: readonly FunctionExample[];
}

export interface FunctionExample {
  /** As it is typed: `=GEAR.WITHSTAND(12)`. */
  readonly formula: string;
  /** Its arguments, each a value or the rows of an array. */
  readonly arguments: readonly (Written | readonly (readonly Written[])[])[];
  readonly result: string | number;
}

type Written = string | number | boolean | null;

/** Every worksheet function, by name. */
export const guide = written as unknown as readonly FunctionGuide[];
