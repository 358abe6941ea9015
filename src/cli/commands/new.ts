import { createInterface } from "node:readline";
import { Command } from "commander";
import { askLineup } from "../ask/askLineup";
import { type PanelFileOptions, readPanelFile } from "../ask/readPanelFile";
import { writeWhole } from "../files/files";
import { refuseOverwriting } from "../files/refuseOverwriting";
import { type CommandText, overwriteOption, print } from "./options";

interface NewOptions extends PanelFileOptions {
  readonly out: string;
  readonly overwrite: boolean;
  readonly table?: string;
}

export const newCommand = (text: CommandText): Command =>
  new Command("new")
    .description(text.commands.new)
    .requiredOption("-o, --out <lineup.json>", text.options.lineupOut)
    .option("--table <panels.csv>", text.options.table)
    .option("--columns <columns>", text.options.tableColumns)
    .option("--medium <medium>", text.options.medium)
    .addOption(overwriteOption(text))
    .action(async ({ out, overwrite, table, ...said }: NewOptions) => {
      refuseOverwriting([out], table === undefined ? [] : [table], overwrite);
      const say = (words: string) => void process.stderr.write(`${words}\n`);
      const listed = table === undefined ? undefined : readPanelFile(table, said, say, text.new);
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
            say,
            isPatient: process.stdin.isTTY === true,
          },
          text,
          listed,
        );
        writeWhole(out, `${JSON.stringify(lineup, null, 2)}\n`);
      } finally {
        lines.close();
      }
      print(text.wrote(out));
      print(text.new.next(out));
    });
