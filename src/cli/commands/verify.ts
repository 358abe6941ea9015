import { Command } from "commander";
import { type CommandText, print } from "./options";

/** @param done told of the exit code */
export const verifyCommand = (text: CommandText, done: (code: number) => void): Command =>
  new Command("verify")
    .description(text.commands.verify)
    .argument("<folder>", text.options.handoverFolder)
    .option("--key <key.pem>", text.options.key)
    .action(async (folder: string, { key }: { readonly key?: string }) => {
      const { verify, verifyWords } = await import("../verify");
      const found = await verify(folder, key);
      print(verifyWords(found));
      done(found.changes.length > 0 ? 1 : 0);
    });
