import { commandLine as en } from "./en/commandLine";

/** Texts of the command line, apart from those of the screens: the pane does not load them. */
export type CommandLineText = typeof en;

const LANGUAGES: Readonly<Record<string, CommandLineText>> = { en };

/**
 * The texts of the command line in a language, English where there are none.
 *
 * @param tag a language as BCP 47 has it
 */
export const commandLineFor = (tag: string): CommandLineText =>
  LANGUAGES[tag.slice(0, 2).toLowerCase()] ?? en;
