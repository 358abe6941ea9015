import { Command, InvalidArgumentError, Option } from "commander";
import { type Finding, isOpen } from "../../check/findings/finding";
import { today } from "../../quantities/today";
import { BASES } from "../../standards/criterion";
import { RATED_RANGE } from "../../survey/checkSurvey";
import { booksIn } from "../files/booksIn";
import { UsageError } from "../files/files";
import { refuseOverwriting } from "../files/refuseOverwriting";
import { type FileReport, perBook } from "../jobs/checkFile";
import type { Job } from "../jobs/job";
import { runJobs } from "../runJobs";
import { progress } from "../screen/progress";
import { screenOf } from "../screen/screen";
import {
  type CommandText,
  complain,
  filesRead,
  lineupOption,
  mapOption,
  overwriteOption,
  print,
  printJson,
} from "./options";

/** What is said of a job by the options of the same names, and how its outcome is told. */
interface Options extends Omit<Job, "book" | "quiet" | "spare" | "day" | "whole" | "screen"> {
  readonly json: boolean;
  readonly final: boolean;
  readonly all: boolean;
  readonly overwrite: boolean;
}

const [LEAST_RATED, MOST_RATED] = RATED_RANGE;

const readRated =
  ({ forms }: CommandText) =>
  (written: string): number => {
    const rated = Number(written);
    if (!(rated >= LEAST_RATED && rated <= MOST_RATED))
      throw new InvalidArgumentError(forms.rated(LEAST_RATED, MOST_RATED));
    return rated;
  };

/** @param done told of the exit code */
export const checkCommand = (text: CommandText, done: (code: number) => void): Command => {
  const { options } = text;
  const command = new Command("check")
    .description(text.commands.check)
    .argument("<book.xlsx...>", options.books)
    .option("--json", options.json, false)
    .option("--final", options.final, false)
    .option("--all", options.all, false)
    .option("--html <file>", options.html)
    .option("--marked <out.xlsx>", options.marked)
    .option("--sheet <out.xlsx>", options.sheet)
    .option("--punch <out.xlsx>", options.punch)
    .option("--against <old.xlsx>", options.against)
    .option("--add-columns <out.xlsx>", options.addColumns)
    .option("--remove-columns <out.xlsx>", options.removeColumns);
  for (const option of [
    new Option("--rated <kV>", options.rated).argParser(readRated(text)),
    new Option("--basis <basis>", options.basis).choices(BASES),
    mapOption(text),
    lineupOption(text),
    overwriteOption(text),
  ])
    command.addOption(option);
  return command.action(async (names: string[], given: Options) =>
    done(await checkAll(text, names, given)),
  );
};

/** Options that name a file to write for each workbook. */
const OUTPUTS = ["html", "marked", "sheet", "punch", "addColumns", "removeColumns"] as const;

/** Workbooks up to which each is told in full in the terminal. */
const MAX_WHOLE = 3;

async function checkAll(
  text: CommandText,
  names: readonly string[],
  { json, overwrite, ...options }: Options,
): Promise<number> {
  const books = booksIn(names);
  const several = books.length > 1;
  const whole = options.all || books.length <= MAX_WHOLE;
  if (options.against !== undefined && several)
    throw new UsageError(({ againstOne }) => againstOne);
  const out = (file: string | undefined, book: string) => file && perBook(file, book, several);
  const day = today();
  const screen = screenOf();
  const jobs = books.map((book) => ({
    ...options,
    book,
    ...Object.fromEntries(OUTPUTS.map((output) => [output, out(options[output], book)])),
    day,
    quiet: json,
    whole,
    screen,
  }));
  refuseOverwriting(
    jobs.flatMap((job: Job) => OUTPUTS.flatMap((output) => job[output] ?? [])),
    filesRead(books, options),
    overwrite,
  );
  const bar = progress(books.length);
  const checked = await runJobs(jobs, ({ report }) => bar.step(report.file));
  bar.end();
  const files = checked.map(({ report }) => report);
  if (json) printJson({ files });
  else {
    tellErrors(files);
    const told = checked.flatMap(({ told }) => (told ? [told] : []));
    if (several) told.push(folderWords(files, text));
    print(told.join(whole ? "\n\n" : "\n"));
  }
  if (files.some(({ error }) => error !== undefined)) return 2;
  return files.some(hasStop) ? 1 : 0;
}

function tellErrors(files: readonly FileReport[]): void {
  for (const { file, error } of files) if (error !== undefined) complain(`${file}: ${error}`);
}

/** One line over many workbooks. */
function folderWords(files: readonly FileReport[], text: CommandText): string {
  const read = files.filter(({ error }) => error === undefined);
  const rows = read
    .flatMap(({ counts }) => Object.values(counts ?? {}))
    .reduce((sum, count) => sum + count, 0);
  const stopped = read.filter(hasStop).length;
  return text.folder(
    files.length,
    rows,
    stopped,
    read.length - stopped,
    files.length - read.length,
  );
}

const isStop = (finding: Finding) => finding.weight === "stop" && isOpen(finding);
const hasStop = ({ findings }: FileReport) => findings?.some(isStop) ?? false;
