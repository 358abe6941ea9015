import { Command, CommanderError } from "commander";
import { commandLineFor } from "../messages/commandLine";
import { checkCommand } from "./commands/check";
import { demoCommand } from "./commands/demo";
import { examplesCommand } from "./commands/examples";
import { handoverCommand } from "./commands/handover";
import { intakeCommand } from "./commands/intake";
import { lineupCommand } from "./commands/lineup";
import { mapCommand } from "./commands/map";
import { newCommand } from "./commands/new";
import { complain } from "./commands/options";
import { repairCommand } from "./commands/repair";
import { verifyCommand } from "./commands/verify";
import { usageError } from "./files/files";
import { outliveReaders } from "./screen/outliveReaders";

/** Runs the command line; gives the exit code: 0 done, 1 findings of weight `stop`, 2 could not be done. */
export async function main(argv: readonly string[]): Promise<number> {
  outliveReaders();
  const text = commandLineFor("en");
  let code = 0;
  const program = new Command("gearproof").description(text.about);
  const commands = [
    demoCommand(text),
    newCommand(text),
    lineupCommand(text),
    intakeCommand(text),
    mapCommand(text),
    checkCommand(text, (found) => {
      code = found;
    }),
    repairCommand(text),
    examplesCommand(text),
    handoverCommand(text),
    verifyCommand(text, (found) => {
      code = found;
    }),
  ];
  for (const command of [program, ...commands]) command.exitOverride().showHelpAfterError();
  for (const command of commands) program.addCommand(command);
  try {
    await program.parseAsync(argv);
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    complain(usageError(error).say(text));
    return 2;
  }
}
