import { basename } from "node:path";
import { Command, CommanderError, Option } from "commander";
import { type Finding, isOpen } from "../check/finding";
import { ENCODINGS } from "../intake/decode";
import { DATE_ORDERS } from "../quantities/dates";
import { markFile } from "../workbook/fileMarks";
import { checkFile, type FileReport, fileReport, perBook, today } from "./checkCommand";
import { readBytes, UsageError, writeWhole } from "./files";
import { DELIMITER_WORDS, type IntakeOptions, takeBack, takeIn, takenWords } from "./intakeCommand";
import { buildBook, buildWords } from "./lineupCommand";
import { guessBook, guessedWords } from "./mapCommand";
import { progress } from "./progress";
import { findingTable, matrixTable, summaryLine } from "./terminal";

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
    .action(async (file: string, { out }: { out: string }) =>
      say(buildWords(await buildBook(file, out), out)),
    );

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
    .option("--columns <map.json>", "what columns mean: an object of title and field")
    .option("--means <names.json>", "what names mean: by field, an object of text and name")
    .option("--synonyms <words.json>", "titles in your words: an object of field and words")
    .option("--remember <name>", "keep what is said here for files of this shape, in the workbook")
    .option("--map <map.json>", "how blocks in somebody's own layout are read as records")
    .option("--lineup <lineup.json>", "the lineup, where the workbook does not tell it")
    .action(
      async (
        book: string,
        exports: string[],
        { out, undo, ...options }: { out: string; undo: boolean } & IntakeOptions,
      ) => {
        if (undo) say([await takeBack(book, out, options), `Wrote ${out}`].join("\n"));
        else if (exports.length === 0)
          throw new UsageError("give at least one export to take in, or --undo");
        else {
          const taken = await takeIn(book, exports, out, options);
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
    .action(async (book: string, { out, lineup }: { out: string; lineup?: string }) =>
      say(guessedWords(await guessBook(book, out, lineup), out)),
    );

  program
    .command("check")
    .description("compute every record again and list the findings; never writes to the workbook")
    .argument("<book.xlsx...>")
    .option("--map <map.json>", "how blocks in somebody's own layout are read as records")
    .option("--lineup <lineup.json>", "the lineup, where the workbook does not tell it")
    .option("--json", "print one JSON object", false)
    .option("--html <file>", "write one self-contained page (one for each workbook)")
    .option("--marked <out.xlsx>", "write a copy with the findings marked (one for each workbook)")
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

interface CheckOptions {
  readonly json: boolean;
  readonly html?: string;
  readonly marked?: string;
  readonly map?: string;
  readonly lineup?: string;
}

async function checkAll(
  books: readonly string[],
  { json, html, marked, map, lineup }: CheckOptions,
): Promise<number> {
  const bar = progress(2 * books.length);
  const files: FileReport[] = [];
  const told: string[] = [];
  for (const book of books) {
    bar.step(`reading ${book}`);
    try {
      const report = await checkFile(book, () => bar.step(`judging ${book}`), today(), {
        map,
        lineup,
      });
      files.push(fileReport(book, report));
      told.push(
        [book, matrixTable(report), findingTable(report.findings, 12), summaryLine(report)].join(
          "\n",
        ),
      );
      if (html) {
        // The chart library and React load only when a page is asked for.
        const { reportHtml } = await import("./report/html");
        const page = perBook(html, book, books.length > 1);
        writeWhole(page, reportHtml(basename(book), new Date().toISOString().slice(0, 10), report));
        told.push(`Page: ${page}`);
      }
      if (marked) {
        const copy = perBook(marked, book, books.length > 1);
        writeWhole(copy, await markFile(readBytes(book), report.findings));
        told.push(`Marked copy: ${copy}`);
      }
    } catch (error) {
      if (!(error instanceof UsageError)) throw error;
      files.push({ file: book, error: error.message.replace(`${book}: `, "") });
      if (!json) process.stderr.write(`${error.message}\n`);
    }
  }
  bar.end();
  say(json ? JSON.stringify({ files }, null, 1) : told.join("\n\n"));
  if (files.some(({ error }) => error !== undefined)) return 2;
  return files.some(({ findings }) => findings?.some(isStop)) ? 1 : 0;
}

const isStop = (finding: Finding) => finding.weight === "stop" && isOpen(finding);
