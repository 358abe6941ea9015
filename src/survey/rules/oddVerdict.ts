import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, SurveyColumn } from "../find/block";
import { isValue, statedVerdict } from "../read/cells";
import { conceptOf } from "../words/sheetWords";
import { findingAt, mostOf, type SurveyContext, type SurveyRule } from "./rule";

/** Lines from which on a column shows by which words it tells its results. */
const ENOUGH = 5;

const inColumn = (block: Block, column: SurveyColumn, { text }: SurveyContext): Finding[] => {
  const lines = groupBy(block.entries, ({ line }) => String(line)).flatMap(([entry]) => {
    const cell = entry && block.at(entry.line, column.at);
    return entry && cell ? [{ entry, cell }] : [];
  });
  const most = mostOf(
    lines.map(({ cell }) => cell.text),
    0.7,
  );
  const usual = lines.find(({ cell }) => cell.text === most?.value)?.cell;
  if (!most || lines.length < ENOUGH || !usual || statedVerdict(usual) !== "Pass") return [];
  const odd = lines.filter(({ cell }) => !isValue(cell));
  // Where several lines have words of their own, the column tells more than results.
  if (odd.length > Math.max(1, lines.length * 0.15)) return [];
  return odd.map(({ entry, cell }) =>
    findingAt(
      "survey-odd-result",
      "query",
      block,
      entry,
      cell.address,
      text.oddResult(cell.text, most.value, most.times),
      { column: column.title, found: cell.text },
    ),
  );
};

/** A word in a column of results that says neither passed nor failed. */
export const oddVerdict: SurveyRule = {
  id: "survey-odd-result",
  find: (context) =>
    context.survey.blocks.flatMap((block) =>
      block.columns
        .filter(({ concept, title }) => concept === "result" && conceptOf(title) === "result")
        .flatMap((column) => inColumn(block, column, context)),
    ),
};
