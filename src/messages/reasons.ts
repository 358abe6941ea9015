import { reasons as en } from "./en/reasons";

/** Why readings, calculations and standards refuse. The worksheet functions load nothing else of the texts. */
export interface Reasons extends Readonly<typeof en> {}

/** Something that is told, put into words where the language of its reader is known. */
export type Said<Text = Reasons> = (text: Text) => string;

const LANGUAGES: Readonly<Record<string, Reasons>> = { en };

/**
 * The reasons in a language, English where there are none.
 *
 * @param tag a language as BCP 47 has it
 */
export const reasonsFor = (tag: string): Reasons => LANGUAGES[tag.slice(0, 2).toLowerCase()] ?? en;

/**
 * The reasons as a workbook stores them in its cells: in the language of its headers, whoever reads it,
 * since what is stored is compared with what is worked out.
 */
export const storedReasons = (): Reasons => en;
