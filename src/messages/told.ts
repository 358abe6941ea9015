import { told as en } from "./en/told";

/**
 * What the rooms below the hosts tell people. They know no language: what they tell is `Said`, and a host
 * puts it into words where it shows it.
 */
export interface Told extends Readonly<typeof en> {}

const LANGUAGES: Readonly<Record<string, Told>> = { en };

/**
 * What is told in a language, in English where there is none.
 *
 * @param tag a language as BCP 47 has it
 */
export const toldIn = (tag: string): Told => LANGUAGES[tag.slice(0, 2).toLowerCase()] ?? en;

/**
 * What is told as a workbook stores it in its cells: in the language of its headers, whoever reads it, since
 * what is stored is compared with what is worked out.
 */
export const storedWords = (): Told => en;
