/**
 * Words that people write in remarks, each the inside of a regular expression, in lower case and without
 * accents; one that ends in a hyphen takes any ending. Trade use, no source.
 */
export type Words = readonly string[];

/** What a remark says that does not go with a pass. */
export const DOUBTS = [
  "discharge",
  "repeat",
  "estimated",
  "not measured",
  "cut short",
  "attempts",
  "defective",
  "borrowed",
] as const;
export type Doubt = (typeof DOUBTS)[number];

/** Words of doubt of one language, and what turns their meaning. */
export interface DoubtWords {
  readonly doubts: Readonly<Record<Doubt, Words>>;
  /** Before a word, or right after it, these say that it is not so. */
  readonly negations: Words;
  /** After one of these a negation holds no longer: `no flashover, but crackling`. */
  readonly contrasts: Words;
  /** These say that it has been seen to since. */
  readonly settled: Words;
  /** Beside a word of `settled`, these say that it is still to come: `to be replaced`. */
  readonly ahead: Words;
}

/** Words of one language for what a crew did around its tests. */
export interface WorkWords {
  /** Of what is put in, lifted or taken out for a test. */
  readonly left: {
    readonly things: Words;
    /** That it stands so still. */
    readonly still: Words;
    /** That it is as it has to be, or was seen to since. */
    readonly settled: Words;
  };
  readonly repeated: {
    /** That a reading is not the first one. */
    readonly again: Words;
    /** What is repeated without a bad reading before it, or is still to be. */
    readonly plain: Words;
    /** That it says after what it was repeated. */
    readonly explained: Words;
    /** The reading before it. */
    readonly first: Words;
  };
  /** Of work on the gear itself that makes earlier tests void. */
  readonly remade: {
    readonly done: Words;
    /** What is replaced without touching the gear, and what is to come. */
    readonly idle: Words;
  };
  /** That another instrument was only held beside the one that measured. */
  readonly compared: Words;
  /** By which a remark points to the lists of the workbook. */
  readonly lists: {
    /** The punch list, which a number may follow. */
    readonly punch: Words;
    /** See the repairs. */
    readonly repairs: Words;
    /** See the reading history. */
    readonly history: Words;
  };
}
