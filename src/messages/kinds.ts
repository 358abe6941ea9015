import { kinds as en } from "./en/kinds";

/** What a record kind is called, what it is for, and what to beware of. */
export interface KindWords {
  readonly title: string;
  readonly purpose: string;
  readonly cautions: readonly string[];
}

/** Words of the record kinds, apart from those of the screens: the pane loads them with the kinds. */
export type KindsText = Readonly<Record<keyof typeof en, KindWords>>;

const LANGUAGES: Readonly<Record<string, KindsText>> = { en };

/**
 * The words of the record kinds in a language, English where there are none.
 *
 * @param tag a language as BCP 47 has it
 */
export const kindsIn = (tag: string): KindsText => LANGUAGES[tag.slice(0, 2).toLowerCase()] ?? en;

/** The same as a workbook stores them on its sheets. */
export const storedKinds = (): KindsText => en;
