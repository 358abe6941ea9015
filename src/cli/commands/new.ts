import { createInterface } from "node:readline";
import { Command } from "commander";
import { askLineup } from "../askLineup";
import { writeWhole } from "../files";
import { refuseOverwriting } from "../refuseOverwriting";
import { type CommandText, overwriteOption, print } from "./options";

export const newCommand = (text: CommandText): Command =>
  new Command("new")
    .description(text.commands.new)
    .requiredOption("-o, --out <lineup.json>", text.options.lineupOut)
    .addOption(overwriteOption(text))
    .action(async ({ out, overwrite }: { out: string; overwrite: boolean }) => {
      refuseOverwriting([out], [], overwrite);
      const lines = createInterface({ input: process.stdin });
      const next = lines[Symbol.asyncIterator]();
      try {
        const lineup = await askLineup(
          {
            answer: async (question) => {
              process.stderr.write(question);
              const { value, done } = await next.next();
              return done ? undefined : value;
            },
            say: (words) => process.stderr.write(`${words}\n`),
            isPatient: process.stdin.isTTY === true,
          },
          text.new,
        );
        writeWhole(out, `${JSON.stringify(lineup, null, 2)}\n`);
      } finally {
        lines.close();
      }
      print(text.wrote(out));
      print(text.new.next(out));
    });
