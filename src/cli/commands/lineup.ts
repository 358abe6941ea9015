import { Command } from "commander";
import { buildBook, buildWords } from "../buildBook";
import { refuseOverwriting } from "../files/refuseOverwriting";
import { type CommandText, print } from "./options";

export const lineupCommand = (text: CommandText): Command =>
  new Command("lineup")
    .description(text.commands.lineup)
    .argument("<lineup.json>")
    .requiredOption("-o, --out <book.xlsx>", text.options.bookOut)
    .action(async (file: string, { out }: { out: string }) => {
      // It builds onto the workbook that is there, and keeps what people put into it.
      refuseOverwriting([out], [file], true);
      print(buildWords(await buildBook(file, out), text.build));
      print(text.wrote(out));
    });
