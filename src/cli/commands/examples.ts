import { Command } from "commander";
import { guide } from "../../functions/guide";
import { sourceOf } from "../../functions/sourceOf";
import { messagesFor } from "../../messages/messages";
import { exampleSheet } from "../../sheets/ours/exampleSheet";
import { withExamples } from "../../xlsx/writeExamples";
import { named, readBytes } from "../files/files";
import { refuseOverwriting } from "../files/refuseOverwriting";
import { saveBook } from "../files/saveBook";
import { type CommandText, overwriteOption, print } from "./options";

interface Options {
  readonly out: string;
  readonly overwrite: boolean;
}

export const examplesCommand = (text: CommandText): Command =>
  new Command("examples")
    .description(text.commands.examples)
    .argument("[book.xlsx]", text.options.examplesInto)
    .requiredOption("-o, --out <out.xlsx>", text.options.bookOut)
    .addOption(overwriteOption(text))
    .action(async (book: string | undefined, { out, overwrite }: Options) => {
      refuseOverwriting([out], book === undefined ? [] : [book], overwrite);
      const sheet = exampleSheet(guide, sourceOf, messagesFor("en").functions.sheet);
      const existing = book === undefined ? undefined : readBytes(book);
      saveBook(out, await named(book ?? out, () => withExamples(sheet, existing)));
      print(text.wrote(out));
    });
