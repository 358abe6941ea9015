import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, Entry } from "../find/block";
import { isWord, kindsIn, verdictIn } from "../words/sheetWords";
import { findingAt, findingOn, type SurveyContext, type SurveyRule } from "./rule";

/** A column that is filled in fewer lines than this is not filled in every line. */
const EXPECTED = 0.5;

const isNothing = (text: string) => isWord(text, "notApplicable");
const isOpen = (text: string) => isWord(text, "notDone") || /^[-–—?.…]+$/.test(text);

/** Whether a line has something that is only written when a test was done. */
const isDone = ({ beside }: Entry) =>
  [
    beside.result,
    beside.date,
    beside.by,
    beside.instrument,
    beside.voltage,
    beside.temperature,
  ].some((cell) => cell !== undefined && !isNothing(cell.text) && !isOpen(cell.text));

/** Whether a word answers a withstand test, of which nothing is read: "held". */
const isHeld = ({ kind, beside }: Entry, text: string): boolean =>
  verdictIn(text) === "Pass" &&
  (kind === "withstand" ||
    (beside.test !== undefined && kindsIn(beside.test.text).includes("withstand")));

const findIn = (block: Block, { text }: SurveyContext): Finding[] => {
  const expected = new Set(
    groupBy(block.entries, ({ column }) => String(column.at))
      .filter(
        (group) =>
          group.length < 3 ||
          group.filter(({ cell }) => cell !== undefined).length >= group.length * EXPECTED,
      )
      .flatMap(([first]) => (first ? [first.column.at] : [])),
  );
  let open = 0;
  const found = groupBy(block.entries, ({ line }) => String(line)).flatMap((line) => {
    const asked = line.filter(({ column }) => expected.has(column.at));
    const filled = line.filter(({ cell }) => cell !== undefined && !isOpen(cell.text));
    if (asked.some(({ beside }) => beside.result && isNothing(beside.result.text))) return [];
    const [first] = asked;
    if (filled.length === 0 && first && !isDone(first)) {
      open += 1;
      return [];
    }
    return asked.flatMap((entry): Finding[] => {
      const { cell, address, column, beside } = entry;
      if (cell?.says === "NotApplicable") return [];
      if (cell === undefined || isOpen(cell.text)) {
        const message = text.missingReading(beside.result?.text);
        return [
          findingAt("survey-missing", "stop", block, entry, address, message, {
            column: column.title,
          }),
        ];
      }
      if (cell.number !== undefined || isNothing(cell.text) || column.concept === "result")
        return [];
      if (isHeld(entry, cell.text)) return [];
      return [
        findingAt(
          "survey-unreadable",
          "query",
          block,
          entry,
          address,
          text.notAReading(cell.text),
          { column: column.title, found: cell.text },
        ),
      ];
    });
  });
  return open > 0
    ? [...found, findingOn("survey-open", "note", block, text.openLines(open))]
    : found;
};

/** A reading that is not there, in a line that is done, or words where a reading belongs. */
export const missingReading: SurveyRule = {
  id: "survey-missing",
  find: (context) => context.survey.blocks.flatMap((block) => findIn(block, context)),
};
