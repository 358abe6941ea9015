import { Command } from "commander";
import { type CommandText, print } from "./options";

export const demoCommand = (text: CommandText): Command =>
  new Command("demo")
    .description(text.commands.demo)
    .option("-o, --out <folder>", text.options.demoOut, "out")
    .action(async ({ out }: { out: string }) => print(await (await import("../demo")).demo(out)));
