import { Option } from "commander";
import type { CommandLineText } from "../../messages/commandLine";
import { safeJson, shown } from "../../quantities/shown";
import { screenOf } from "../screen/screen";

/** The texts of the command line. */
export type CommandText = CommandLineText;

/** Prints lines for people; what is in them of others steers no terminal. */
export const print = (text: string): void => {
  const { colours } = screenOf();
  const pieces = colours ? text.split(COLOURS) : [text];
  process.stdout.write(
    `${pieces.map((piece, at) => (at % 2 === 1 ? piece : shown(piece))).join("")}\n`,
  );
};

/** The colours of the screen, and nothing else that a terminal obeys. */
const COLOURS = /(\u001b\[(?:0|1|2|31|32|33)m)/;

/** Prints JSON for programs. */
export const printJson = (value: unknown): void => {
  process.stdout.write(`${safeJson(JSON.stringify(value, null, 1))}\n`);
};

/** Says what is wrong. */
export const complain = (text: string): void => {
  process.stderr.write(`${shown(text)}\n`);
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
