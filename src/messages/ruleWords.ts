/** What the reference says of a rule of the check. */
export interface RuleWords {
  readonly title: string;
  readonly finds: string;
  /** Why it matters. */
  readonly why: string;
  /** What satisfies it. */
  readonly satisfies: string;
  /** When it keeps quiet. */
  readonly quiet: string;
}

/** The texts of some rules by their ids: what the reference says of each, and what its findings say. */
export type RuleTexts = Readonly<Record<string, RuleWords & Readonly<Record<string, unknown>>>>;
