import { Command, Option } from "commander";
import { progress } from "../progress";
import { type CommandText, print } from "./options";

/** Files that take their time. */
const STEPS = 3;

export const handoverCommand = (text: CommandText): Command =>
  new Command("handover")
    .description(text.commands.handover)
    .argument("<book.xlsx>")
    .requiredOption("-o, --out <folder>", text.options.handoverOut)
    .addOption(new Option("--paper <size>", text.options.paper).choices(["a4", "letter"]))
    .action(async (book: string, { out, paper }: { out: string; paper?: "a4" | "letter" }) => {
      const { handOver, handoverWords } = await import("../handover");
      const bar = progress(STEPS);
      try {
        const made = await handOver(book, out, { paper, step: bar.step });
        bar.end();
        print(handoverWords(out, made));
      } finally {
        bar.end();
      }
    });
