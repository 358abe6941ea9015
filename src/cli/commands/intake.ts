import { Command, InvalidArgumentError, Option } from "commander";
import type { SaidConstants } from "../../intake/constants";
import { ENCODINGS } from "../../intake/text/decode";
import { DATE_ORDERS } from "../../quantities/dates";
import { UsageError } from "../files/files";
import { refuseOverwriting } from "../files/refuseOverwriting";
import {
  DELIMITER_WORDS,
  type IntakeOptions,
  intakeBook,
  takenWords,
  undoBook,
} from "../intakeBook";
import {
  type CommandText,
  filesRead,
  lineupOption,
  mapOption,
  meaningOptions,
  overwriteOption,
  print,
} from "./options";

interface Options extends IntakeOptions {
  readonly out: string;
  readonly undo: boolean;
  readonly overwrite: boolean;
}

export const intakeCommand = (text: CommandText): Command => {
  const command = new Command("intake")
    .description(text.commands.intake)
    .argument("<book.xlsx>")
    .argument("[export...]", text.options.exports)
    .requiredOption("-o, --out <out.xlsx>", text.options.bookOut)
    .option("--replace", text.options.replace, false)
    .option("--undo", text.options.undo, false)
    .option("--set <field=value>", text.options.set, withConstant(text), {})
    .option("--remember <name>", text.options.remember);
  for (const option of [
    overwriteOption(text),
    ...readingOptions(text),
    ...meaningOptions(text),
    mapOption(text),
    lineupOption(text),
  ])
    command.addOption(option);
  return command.action((book: string, exports: string[], options: Options) =>
    run(text, book, exports, options),
  );
};

/** `stage=before`, once for each field that holds for all lines. */
const withConstant =
  ({ forms }: CommandText) =>
  (said: string, before: SaidConstants): SaidConstants => {
    const at = said.indexOf("=");
    if (at < 1) throw new InvalidArgumentError(forms.constant);
    return { ...before, [said.slice(0, at).trim()]: said.slice(at + 1).trim() };
  };

/** How the exports are read, where it cannot be told. */
const readingOptions = ({ options }: CommandText) => [
  new Option("--decimal <mark>", options.decimal).choices(["point", "comma"]),
  new Option("--date-order <order>", options.dateOrder).choices(DATE_ORDERS),
  new Option("--encoding <name>", options.encoding).choices(ENCODINGS),
  new Option("--delimiter <mark>", options.delimiter).choices(Object.keys(DELIMITER_WORDS)),
  new Option("--shape <shape>", options.shape).choices(["long", "wide"]),
];

async function run(
  text: CommandText,
  book: string,
  exports: readonly string[],
  { out, undo, overwrite, ...options }: Options,
): Promise<void> {
  refuseOverwriting([out], filesRead([book, ...exports], options), overwrite);
  if (undo) print(await undoBook(book, out, text, options));
  else if (exports.length === 0) throw new UsageError(({ noExport }) => noExport);
  else {
    const taken = await intakeBook(book, exports, out, options);
    for (const one of taken) print(takenWords(one, text));
  }
  print(text.wrote(out));
}
