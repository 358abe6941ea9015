import { Command, CommanderError, Option } from "commander";
import { type Finding, isOpen } from "../check/finding";
import { ENCODINGS } from "../intake/table/decode";
import { DATE_ORDERS } from "../quantities/dates";
import { howMany } from "../quantities/howMany";
import { booksIn } from "./booksIn";
import { type FileReport, perBook, today } from "./checkCommand";
import { UsageError } from "./files";
import {
  DELIMITER_WORDS,
  type IntakeOptions,
  intakeBook,
  takenWords,
  undoBook,
} from "./intakeCommand";
import { buildBook, buildWords } from "./lineupCommand";
import { guessBook, guessedWords, type MapOptions } from "./mapCommand";
import { progress } from "./progress";
import { refuseOverwriting } from "./refuseOverwriting";
import { runJobs } from "./runJobs";

const say = (text: string): void => {
  process.stdout.write(`${text}\n`);
};

/** Runs the command line; gives the exit code: 0 done, 1 findings of weight `stop`, 2 could not be done. */
export async function main(argv: readonly string[]): Promise<number> {
  let code = 0;
  const program = new Command("gearproof")
    .description("Test records of a medium-voltage switchgear lineup: build, take in, check.")
    .exitOverride()
    .showHelpAfterError();

  program
    .command("demo")
    .description("the whole job on an invented lineup")
    .option("-o, --out <folder>", "where the workbook and the page go", "out")
    .action(async ({ out }: { out: string }) => say(await (await import("./demo")).demo(out)));

  program
    .command("lineup")
    .description(
      "build the record workbook of a lineup; onto BOOK.xlsx where that is there already",
    )
    .argument("<lineup.json>")
    .requiredOption("-o, --out <book.xlsx>", "the workbook to write")
    .addOption(acceptLoss())
    .action(async (file: string, { out, acceptLoss }: { out: string; acceptLoss: boolean }) => {
      // Onto the workbook that is there it builds, and keeps what people put into it.
      refuseOverwriting([out], [file], true);
      say(buildWords(await buildBook(file, out, acceptLoss), out));
    });

  program
    .command("intake")
    .description("place the readings of instrument exports on the rows they belong to")
    .argument("<book.xlsx>")
    .argument("[export...]", "delimited text files")
    .requiredOption("-o, --out <out.xlsx>", "the workbook to write")
    .option(
      "--replace",
      "write over readings that differ; what was there goes to the history",
      false,
    )
    .option("--undo", "take the last intake back", false)
    .addOption(overwrite())
    .addOption(acceptLoss())
    .addOption(
      new Option("--decimal <mark>", "the exports' decimal mark, where it cannot be told").choices([
        "point",
        "comma",
      ]),
    )
    .addOption(
      new Option(
        "--date-order <order>",
        "what comes first in dates such as 03/11/2026, where it cannot be told",
      ).choices(DATE_ORDERS),
    )
    .addOption(new Option("--encoding <name>", "how the files' text is encoded").choices(ENCODINGS))
    .addOption(
      new Option("--delimiter <mark>", "what parts the cells of a line").choices(
        Object.keys(DELIMITER_WORDS),
      ),
    )
    .addOption(
      new Option("--shape <shape>", "long: a line for each reading; wide: phases across").choices([
        "long",
        "wide",
      ]),
    )
    .option(...COLUMNS)
    .option(...MEANS)
    .option(...SYNONYMS)
    .option("--remember <name>", "keep what is said here for files of this shape, in the workbook")
    .option("--map <map.json>", "how blocks in somebody's own layout are read as records")
    .option("--lineup <lineup.json>", "the lineup, where the workbook does not tell it")
    .action(
      async (
        book: string,
        exports: string[],
        { out, undo, ...options }: { out: string; undo: boolean } & IntakeOptions & Overwrite,
      ) => {
        refuseOverwriting([out], given([book, ...exports], options), options.overwrite);
        if (undo) say([await undoBook(book, out, options), `Wrote ${out}`].join("\n"));
        else if (exports.length === 0)
          throw new UsageError("give at least one export to take in, or --undo");
        else {
          const taken = await intakeBook(book, exports, out, options);
          say([...taken.map(takenWords), `Wrote ${out}`].join("\n"));
        }
      },
    );

  program
    .command("map")
    .description(
      "guess how a workbook in somebody's own layout is read as records; writes a map file",
    )
    .argument("<book.xlsx>")
    .requiredOption("-o, --out <map.json>", "the map file to write")
    .option("--lineup <lineup.json>", "the lineup, where the workbook does not tell it")
    .option(...COLUMNS)
    .option(...MEANS)
    .option(...SYNONYMS)
    .addOption(overwrite())
    .action(async (book: string, { out, ...said }: { out: string } & MapOptions & Overwrite) => {
      refuseOverwriting([out], given([book], said), said.overwrite);
      say(guessedWords(await guessBook(book, out, said), out));
    });

  program
    .command("check")
    .description("compute every record again and list the findings; never writes to the workbook")
    .argument("<book.xlsx...>", "workbooks, or folders of them")
    .option("--map <map.json>", "how blocks in somebody's own layout are read as records")
    .option("--lineup <lineup.json>", "the lineup, where the workbook does not tell it")
    .option("--json", "print one JSON object", false)
    .option("--html <file>", "write one self-contained page (one for each workbook)")
    .option("--marked <out.xlsx>", "write a copy with the findings marked (one for each workbook)")
    .option(
      "--sheet <out.xlsx>",
      "write a copy with the findings on a sheet (one for each workbook)",
    )
    .option("--against <old.xlsx>", "compare with an earlier revision of the workbook")
    .addOption(overwrite())
    .addOption(acceptLoss())
    .action(async (books: string[], options: CheckOptions) => {
      code = await checkAll(books, options);
    });

  try {
    await program.parseAsync(argv);
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    if (error instanceof UsageError) {
      process.stderr.write(`${error.message}\n`);
      return 2;
    }
    throw error;
  }
}

interface Overwrite {
  readonly overwrite: boolean;
}

interface CheckOptions extends Overwrite {
  readonly json: boolean;
  readonly html?: string;
  readonly marked?: string;
  readonly map?: string;
  readonly lineup?: string;
  readonly sheet?: string;
  readonly against?: string;
  readonly acceptLoss: boolean;
}

const COLUMNS = [
  "--columns <columns>",
  'what columns mean: "Title=field, …", or a JSON file with an object of title and field',
] as const;
const SYNONYMS = [
  "--synonyms <words.json>",
  "titles in your words: an object of field and words",
] as const;
const MEANS = [
  "--means <names>",
  'what names mean: "field: text=name, …; field: …", or a JSON file with, by field, an object of text and name',
] as const;

/** For every command that writes files. */
const overwrite = () =>
  new Option("--overwrite", "write over files that are there already").default(false);

/** The files that a command is given to read, those of its options among them. */
const given = (
  files: readonly string[],
  {
    map,
    lineup,
    columns,
    means,
    synonyms,
    against,
  }: { readonly [K in "map" | "lineup" | "columns" | "means" | "synonyms" | "against"]?: string },
): readonly string[] =>
  [...files, map, lineup, columns, means, synonyms, against].filter((file) => file !== undefined);

/** For every command that saves a workbook. */
const acceptLoss = () =>
  new Option(
    "--accept-loss",
    "write the workbook though saving loses something of it, such as charts; without it that is refused",
  ).default(false);

async function checkAll(names: readonly string[], options: CheckOptions): Promise<number> {
  const { json, html, marked, sheet, against, map, lineup, acceptLoss } = options;
  const books = booksIn(names);
  const several = books.length > 1;
  if (against !== undefined && several)
    throw new UsageError("--against compares one workbook with its earlier revision; give one");
  const out = (file: string | undefined, book: string) => file && perBook(file, book, several);
  refuseOverwriting(
    books.flatMap((book) => [html, marked, sheet].flatMap((file) => out(file, book) ?? [])),
    given(books, options),
    options.overwrite,
  );
  const bar = progress(books.length);
  const checked = await runJobs(
    books.map((book) => ({
      book,
      html: out(html, book),
      marked: out(marked, book),
      sheet: out(sheet, book),
      against,
      map,
      lineup,
      acceptLoss,
      day: today(),
      whole: books.length <= WHOLE,
    })),
    ({ report }) => bar.step(report.file),
  );
  bar.end();
  const files = checked.map(({ report }) => report);
  for (const { file, error } of files)
    if (error !== undefined && !json) process.stderr.write(`${file}: ${error}\n`);
  const told = checked.flatMap(({ told }) => (told ? [told] : []));
  if (several) told.push(totalLine(files));
  say(json ? JSON.stringify({ files }, null, 1) : told.join(books.length <= WHOLE ? "\n\n" : "\n"));
  if (files.some(({ error }) => error !== undefined)) return 2;
  return files.some(({ findings }) => findings?.some(isStop)) ? 1 : 0;
}

/** Workbooks up to which each is told in full in the terminal. */
const WHOLE = 3;

/** One line over many workbooks. */
function totalLine(files: readonly FileReport[]): string {
  const read = files.filter(({ error }) => error === undefined);
  const stopped = read.filter(({ findings }) => findings?.some(isStop)).length;
  const rows = read.reduce(
    (sum, { counts }) => sum + Object.values(counts ?? {}).reduce((one, count) => one + count, 0),
    0,
  );
  const unread = files.length - read.length;
  return `${howMany(files.length, "workbook")}, ${howMany(rows, "row")}: ${stopped} with findings of weight stop, ${read.length - stopped} without${unread > 0 ? `, ${unread} that could not be checked` : ""}.`;
}

const isStop = (finding: Finding) => finding.weight === "stop" && isOpen(finding);
