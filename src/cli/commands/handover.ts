import { Command, Option } from "commander";
import { STEPS } from "../../handover/manifest";
import { progress } from "../screen/progress";
import { type CommandText, print } from "./options";

interface Options {
  readonly out: string;
  readonly paper?: "a4" | "letter";
  readonly sign?: string;
}

export const handoverCommand = (text: CommandText): Command =>
  new Command("handover")
    .description(text.commands.handover)
    .argument("<book.xlsx>")
    .requiredOption("-o, --out <folder>", text.options.handoverOut)
    .addOption(new Option("--paper <size>", text.options.paper).choices(["a4", "letter"]))
    .option("--sign <key.pem>", text.options.sign)
    .action(async (book: string, { out, paper, sign }: Options) => {
      const { handOver, handoverWords } = await import("../handover");
      const bar = progress(STEPS.length);
      try {
        const made = await handOver(book, out, { paper, sign, step: bar.step });
        bar.end();
        print(handoverWords(out, made));
      } finally {
        bar.end();
      }
    });
