import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, Entry, SurveyColumn } from "../find/block";
import { statedVerdict } from "../read/cells";
import { conceptOf, isWord, verdictIn } from "../words/sheetWords";
import { compare, resultOf } from "./judge";
import { findingAt, mostOf, type SurveyContext, type SurveyRule } from "./rule";

const isYes = (text: string): boolean =>
  !isWord(text, "no") &&
  !isWord(text, "notApplicable") &&
  !/^[-–—0]*$/.test(text) &&
  !/^\d+([.,]\d+)?$/.test(text);

const brokeDown = (block: Block, entry: Entry, { text }: SurveyContext): Finding[] => {
  const { discharge, result } = entry.beside;
  if (
    !discharge ||
    (entry.column.concept !== "voltage" && entry.kind !== "withstand") ||
    !isYes(discharge.text) ||
    resultOf(entry) === "Fail"
  )
    return [];
  return [
    findingAt(
      "survey-discharge",
      "stop",
      block,
      entry,
      discharge.address,
      text.brokeDown(discharge.text, result?.text),
      { found: discharge.text },
    ),
  ];
};

/** A line that is said to fail although nothing in it does. */
const failsForNothing = (
  block: Block,
  line: readonly Entry[],
  context: SurveyContext,
): Finding[] => {
  const [first] = line;
  const { result } = first?.beside ?? {};
  if (!first || !result || resultOf(first) !== "Fail") return [];
  const compared = line.flatMap((entry) => compare(entry, context));
  const isStress = line.every(({ column }) => column.concept === "voltage");
  const isWhole =
    line.every(({ cell }) => cell?.number !== undefined) && (compared.length > 0 || isStress);
  const isWithin = compared.every(({ verdict }) => verdict === "Pass");
  const discharged = line.some(({ beside }) => beside.discharge && isYes(beside.discharge.text));
  const remarked = line.some(({ beside }) => beside.remarks !== undefined);
  if (!isWhole || !isWithin || discharged || remarked) return [];
  return [
    findingAt(
      "survey-verdict",
      "query",
      block,
      first,
      result.address,
      context.text.failWithoutReason(result.text),
      { found: result.text },
    ),
  ];
};

const DOUBTS =
  /\bb\/?d\b|leak(?:s|ing|age)? (?:at|from|on)|flash(?:ed|over| over|\b)|tripped|arc(?:ed|ing)|break ?down|broke down|track(?:ing|ed)|puncture|defect|to be (?:re|investigated)|re-?test (?:required|needed|to)|not (?:measured|taken|tested)|estimated|borrowed|durchschlag|überschlag|zu wiederholen|geschätzt|descarga|repetir|descargó|\bfall[oa]\b|perfor|falló|rompi[oó]|no oper|not working|did not|faulty|damaged|no se repitió|saltó|estimado|claquage|à refaire|amorçage|estimé|a repetir/iu;
/** Words that deny the doubt that follows them, or that tell it is over. */
const DENIAL =
  /(?:^|[^\p{L}])(?:no|not|none|nil|never|without|kein\p{L}*|nicht|ohne|sin|sans|aucune?|ni|sem|pas de|nenhuma?|لا|دون|بدون)(?: \p{L}+){0,2}[\s:,-]*$/iu;
const OVER = /after (?:repair|cleaning|drying)|repeated after/iu;

/** Whether a remark tells of something wrong, and does not deny it: "no flashover", but "flashed over, not repeated". */
const isDoubtful = (text: string): boolean => {
  const found = DOUBTS.exec(text);
  return found !== null && !OVER.test(text) && !DENIAL.test(text.slice(0, found.index));
};

const remarks = (block: Block, entry: Entry, { text }: SurveyContext): Finding[] => {
  const { remarks: remark, result } = entry.beside;
  if (!remark || !result || resultOf(entry) !== "Pass" || !isDoubtful(remark.text)) return [];
  return [
    findingAt(
      "survey-remark",
      "query",
      block,
      entry,
      remark.address,
      text.remark(remark.text, result.text),
      { found: remark.text },
    ),
  ];
};

/** A word in the place of a reading that tells of a failure, in a line that passes: "held | flashed | held". */
const failedReading = (block: Block, entry: Entry, { text }: SurveyContext): Finding[] => {
  const { cell, beside, column } = entry;
  const isWord = cell !== undefined && cell.number === undefined && column.concept !== "result";
  const isWrong = isWord && (isDoubtful(cell.text) || verdictIn(cell.text) === "Fail");
  return isWrong && beside.result && resultOf(entry) === "Pass"
    ? [
        findingAt(
          "survey-word",
          "stop",
          block,
          entry,
          cell.address,
          text.remark(cell.text, beside.result.text),
          { found: cell.text },
        ),
      ]
    : [];
};

/** A word that says there is nothing: "none", "no B/D", "sin descarga". */
const NOTHING =
  /^(?:no|none|nil|non|not|nothing|without|kein\p{L}*|nein|nicht|ohne|sin|ningun\p{L}*|sans|aucune?|rien|sem|nenhuma?|não|لا|بدون)(?![\p{L}])/iu;

/** What columns are called in which something is looked for, so that nothing is the good answer. */
const SOUGHT =
  /leak|obs|flash|break ?down|b ?\/ ?d|dischar|arc|defect|damage|fault|abnormal|leck|undicht|überschlag|durchschlag|mangel|mängel|schaden|fuga|descarga|defecto|anomal|fuite|claquage|amorçage|défaut|defeito|تسرب|انهيار|خلل/iu;

/** Words that tell of a failure in a column that says nothing else of it. */
const WRONG =
  /fail|\brev\b|revers|invert|wrong|incorrect|flash|broke|puncture|not |tripped|verpolt|verkehrt|falsch|vertauscht|durchschlag|invertid|inversée|défaut|mauvais|معكوس|مقلوب/iu;

/** Whether one word denies the other: a no among yeses, a cross among ticks. */
const isOpposite = (text: string, usual: string): boolean =>
  (isWord(usual, "yes") && isWord(text, "no")) ||
  // "C" for conforms and "NC" for does not.
  (/^\p{Lu}{1,2}$/u.test(usual) && text === `N${usual}`) ||
  ((/^[✓✔☑√]$/u.test(usual) || verdictIn(usual) === "Pass") && /^[✗✘☒×xX]$/u.test(text));

/** Whether a cell tells of something where the others found nothing: "none, none, leak at flange". */
const isSomething = (text: string, usual: string, title: string): boolean =>
  NOTHING.test(usual) &&
  !NOTHING.test(text) &&
  /\p{L}{2}/u.test(text) &&
  (SOUGHT.test(title) || SOUGHT.test(text) || isDoubtful(text));

/** Columns of one answer for all: a winding that is marked otherwise than its like is asked about. */
const POLARITY = /polarit|polarität|polaridad|قطبية/iu;

/** Whether two words begin alike: "Sub" and "subtractive". */
const isShort = (one: string, other: string): boolean =>
  one.slice(0, 3).toLowerCase() === other.slice(0, 3).toLowerCase();

/** Whether a column is known by its words at most: "Polarity: correct, correct, reversed". */
const isUntitledWord = (concept: SurveyColumn["concept"], title: string): boolean =>
  concept === undefined || (concept === "result" && conceptOf(title) !== "result");

/** One cell that tells of a failure in a column where all others say the same harmless word. */
const oddWords = (block: Block, { text }: SurveyContext): Finding[] =>
  block.columns
    .filter(
      ({ concept, numbers, title }) =>
        !numbers &&
        (isUntitledWord(concept, title) || concept === "remarks" || concept === "leakage"),
    )
    .flatMap((column) => {
      const lines = groupBy(block.entries, ({ line }) => String(line)).flatMap(
        ([first]) => first ?? [],
      );
      const cells = lines.flatMap((entry) => {
        const cell = block.at(entry.line, column.at);
        return cell ? [{ entry, cell }] : [];
      });
      const most = mostOf(
        cells.map(({ cell }) => cell.text),
        0.7,
      );
      if (!most || WRONG.test(most.value)) return [];
      return cells
        .filter(
          ({ entry, cell }) =>
            cell.text !== most.value &&
            (cell.says === "Fail" ||
              WRONG.test(cell.text) ||
              isOpposite(cell.text, most.value) ||
              (POLARITY.test(column.title) && !isShort(cell.text, most.value)) ||
              isSomething(cell.text, most.value, column.title)) &&
            !isWord(cell.text, "notApplicable") &&
            !isWord(cell.text, "notDone") &&
            (resultOf(entry) !== "Fail" || entry.beside.result?.address === cell.address),
        )
        .map(({ entry, cell }) =>
          findingAt(
            "survey-word",
            "stop",
            block,
            entry,
            cell.address,
            text.oddWord(cell.text, most.value, most.times),
            {
              column: column.title,
              found: cell.text,
            },
          ),
        );
    });

/** A line of checks that is found wrong in one column and passed in another. */
const contradicts = (block: Block, line: readonly Entry[], { text }: SurveyContext): Finding[] => {
  const said = line.flatMap((entry) => {
    const verdict =
      entry.column.concept === "result" && entry.cell ? statedVerdict(entry.cell) : undefined;
    return entry.cell && verdict ? [{ entry, cell: entry.cell, verdict }] : [];
  });
  const wrong = said.find(({ verdict }) => verdict === "Fail");
  // Of many checks only the result of them all contradicts one that is wrong.
  const isOfAll = ({ entry }: (typeof said)[number]) => conceptOf(entry.column.title) === "result";
  const right = said.findLast(
    (one) => one.verdict === "Pass" && (said.length <= 3 || isOfAll(one)),
  );
  if (!wrong || !right || wrong.entry.beside.remarks) return [];
  return [
    findingAt(
      "survey-verdict",
      "query",
      block,
      wrong.entry,
      wrong.cell.address,
      text.remark(wrong.cell.text, right.cell.text),
      { found: wrong.cell.text },
    ),
  ];
};

const onceACell = (findings: readonly Finding[]): Finding[] =>
  groupBy(findings, ({ rule, address }) => `${rule} ${address}`).flatMap(([first]) => first ?? []);

/** What the line says of itself against what stands in it. */
export const verdicts: SurveyRule = {
  id: "survey-verdict",
  find: (context) =>
    context.survey.blocks.flatMap((block) => {
      const odd = oddWords(block, context);
      const isOdd = ({ address }: Finding) => odd.some((one) => one.address === address);
      return onceACell([
        ...block.entries.flatMap((entry) => [
          ...brokeDown(block, entry, context),
          ...remarks(block, entry, context),
          ...failedReading(block, entry, context),
        ]),
        ...odd,
        ...groupBy(block.entries, ({ line }) => String(line)).flatMap((line) => [
          ...failsForNothing(block, line, context),
          ...contradicts(block, line, context).filter((finding) => !isOdd(finding)),
        ]),
      ]);
    }),
};
