import { Command } from "commander";
import { guessBook, guessedWords, type MapOptions } from "../ask/guessBook";
import { refuseOverwriting } from "../files/refuseOverwriting";
import {
  type CommandText,
  filesRead,
  lineupOption,
  meaningOptions,
  overwriteOption,
  print,
} from "./options";

interface Options extends MapOptions {
  readonly out: string;
  readonly overwrite: boolean;
}

export const mapCommand = (text: CommandText): Command => {
  const command = new Command("map")
    .description(text.commands.map)
    .argument("<book.xlsx>")
    .requiredOption("-o, --out <map.json>", text.options.mapOut);
  for (const option of [lineupOption(text), ...meaningOptions(text), overwriteOption(text)])
    command.addOption(option);
  return command.action(async (book: string, { out, overwrite, ...options }: Options) => {
    refuseOverwriting([out], filesRead([book], options), overwrite);
    print(guessedWords(await guessBook(book, out, options), out, text));
  });
};
