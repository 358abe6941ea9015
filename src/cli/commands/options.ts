import { Option } from "commander";
import type { CommandLineText } from "../../messages/commandLine";

/** The texts of the command line. */
export type CommandText = CommandLineText;

/** Prints lines for people. */
export const print = (text: string): void => {
  process.stdout.write(`${text}\n`);
};

/** For every command that writes files. */
export const overwriteOption = ({ options }: CommandText) =>
  new Option("--overwrite", options.overwrite).default(false);

/** For every command that reads columns under titles. */
export const meaningOptions = ({ options }: CommandText) => [
  new Option("--columns <columns>", options.columns),
  new Option("--means <names>", options.means),
  new Option("--synonyms <words.json>", options.synonyms),
];

export const lineupOption = ({ options }: CommandText) =>
  new Option("--lineup <lineup.json>", options.lineup);

export const mapOption = ({ options }: CommandText) => new Option("--map <map.json>", options.map);

/** Options that may name files which a command reads. */
const FILES = ["map", "lineup", "columns", "means", "synonyms", "against"] as const;

/** The files that a command is given to read, those of its options among them. */
export const filesRead = (
  files: readonly string[],
  options: { readonly [K in (typeof FILES)[number]]?: string },
): readonly string[] => [...files, ...FILES.flatMap((name) => options[name] ?? [])];
