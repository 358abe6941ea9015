import { existsSync } from "node:fs";
import { rememberedOf } from "../../sheets/kept/remembered";
import { type SurveyAnswersKept, surveyAnswers } from "../../sheets/kept/surveyAnswers";
import type { Snapshot } from "../../sheets/snapshot";
import type { SurveyAnswers } from "../../survey/checkSurvey";
import { openFile } from "../../xlsx/book";
import { BookEdit } from "../../xlsx/patch/bookEdit";
import { understood } from "../../xlsx/readBook";
import { remember } from "../../xlsx/remembered";
import { readText, writeWhole } from "../files/files";

/** The small file beside a workbook that keeps what was answered for its check. */
export const answersFile = (book: string): string =>
  `${book.replace(/\.xls[xm]$/i, "")}.answers.json`;

/** Answers for the check of a workbook, and where they were found; undefined where they were given now. */
export interface FoundAnswers {
  readonly answers: SurveyAnswers;
  readonly kept?: { readonly from: string; readonly answers: SurveyAnswersKept };
}

function inFile(book: string): SurveyAnswersKept | undefined {
  const file = answersFile(book);
  if (!existsSync(file)) return undefined;
  try {
    return surveyAnswers.parse(JSON.parse(readText(file)));
  } catch {
    // A file that is spoilt answers nothing; the question is asked again.
    return undefined;
  }
}

/**
 * What is answered for a workbook: what is said now comes first, then what was answered last, in the file
 * beside it or in the workbook itself.
 */
export function answersFor(book: string, { survey }: Snapshot, said: SurveyAnswers): FoundAnswers {
  const beside = inFile(book);
  const isFile = beside !== undefined && (survey === undefined || beside.on > survey.on);
  const kept = isFile ? beside : survey;
  if (kept === undefined) return { answers: said };
  const { on: _, ...before } = kept;
  const answers: SurveyAnswers = {
    ...before,
    ...(said.ratedkV === undefined ? {} : { ratedkV: said.ratedkV }),
    ...(said.basis === undefined ? {} : { basis: said.basis }),
  };
  const isUsed =
    (said.ratedkV === undefined && kept.ratedkV !== undefined) ||
    (said.basis === undefined && kept.basis !== undefined) ||
    kept.corrections !== undefined;
  return isUsed
    ? { answers, kept: { from: isFile ? answersFile(book) : book, answers: kept } }
    : { answers };
}

const isSame = (one: SurveyAnswers, other: SurveyAnswers): boolean =>
  JSON.stringify([one.ratedkV, one.basis, one.corrections]) ===
  JSON.stringify([other.ratedkV, other.basis, other.corrections]);

/**
 * Keeps answers in the small file beside a workbook, where they are other than those that are kept.
 *
 * @returns the file, where it was written; undefined also where its folder takes none
 */
export function keepBeside(
  book: string,
  { survey }: Snapshot,
  answers: SurveyAnswers,
  day: number,
): string | undefined {
  const known = inFile(book) ?? survey;
  if (answers.ratedkV === undefined && answers.basis === undefined) return undefined;
  if (known && isSame(known, answers)) return undefined;
  const file = answersFile(book);
  try {
    writeWhole(file, `${JSON.stringify({ on: day, ...answers }, null, 1)}\n`);
    return file;
  } catch {
    return undefined;
  }
}

/** A workbook file that keeps answers for its next check in itself. */
export const withAnswers = (
  file: Uint8Array,
  snapshot: Snapshot,
  answers: SurveyAnswers,
  day: number,
): Promise<Uint8Array> =>
  understood(async () => {
    if (answers.ratedkV === undefined && answers.basis === undefined) return file;
    const book = new BookEdit(openFile(file));
    const remembered = { ...rememberedOf(snapshot), survey: { on: day, ...answers } };
    remember(book.pack, book.bookPart, { remembered });
    return book.save();
  });
