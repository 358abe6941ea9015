import { Command, Option } from "commander";
import { WORKS } from "../../records/repairs";
import { refuseOverwriting } from "../files/refuseOverwriting";
import { type RepairOptions, repairBook } from "../repairBook";
import { type CommandText, overwriteOption, print } from "./options";

interface Options extends RepairOptions {
  readonly out: string;
  readonly overwrite: boolean;
}

export const repairCommand = (text: CommandText): Command =>
  new Command("repair")
    .description(text.commands.repair)
    .argument("<book.xlsx>")
    .argument("<cell>", text.options.failed)
    .requiredOption("-o, --out <out.xlsx>", text.options.bookOut)
    .requiredOption("--cause <words>", text.options.cause)
    .addOption(new Option("--work <work>", text.options.work).choices(WORKS).makeOptionMandatory())
    .requiredOption("--done <words>", text.options.done)
    .requiredOption("--by <name>", text.options.by)
    .option("--date <day>", text.options.repaired)
    .option("--panel <panel>", text.options.panel)
    .addOption(overwriteOption(text))
    .action(async (book: string, cell: string, { out, overwrite, ...said }: Options) => {
      refuseOverwriting([out], [book], overwrite);
      print(await repairBook(book, cell, out, said));
      print(text.wrote(out));
    });
