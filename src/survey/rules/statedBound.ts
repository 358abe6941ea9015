import type { Finding } from "../../check/finding";
import type { Block } from "../block";
import { quantityIn } from "../cells";
import { hasWord, verdictIn } from "../words/sheetWords";
import { findingAt, type SurveyContext, type SurveyRule, written } from "./rule";

const NUMBER = /(?<![\d.,/])(\d+(?:[.,]\d+)?)(?![\d/])/;

/** The bound that a question such as "PI 1.5 or more?" asks after. */
const boundIn = (
  label: string,
): { readonly side: "least" | "most"; readonly number: number } | undefined => {
  const number = quantityIn(NUMBER.exec(label)?.[1] ?? "")?.number;
  const side =
    hasWord(label, "atLeast") || /[≥>]/.test(label)
      ? "least"
      : hasWord(label, "atMost") || /[≤<]/.test(label)
        ? "most"
        : undefined;
  return number === undefined || side === undefined ? undefined : { side, number };
};

/** Answers to a question about the values of the line above it. */
const inBlock = (block: Block, { text }: SurveyContext): Finding[] => {
  const [first, last] = block.span;
  const lines = Array.from({ length: last - first }, (_, index) => first + 1 + index);
  return lines.flatMap((line) => {
    const [label, ...columns] = block.columns;
    const asked = label && block.at(line, label.at);
    const bound = asked && typeof asked.value === "string" ? boundIn(asked.text) : undefined;
    if (!asked || !bound) return [];
    return columns.flatMap(({ at, title }): Finding[] => {
      const [value, answer] = [block.at(line - 1, at), block.at(line, at)];
      if (value?.number === undefined || !answer || verdictIn(answer.text) !== "Pass") return [];
      const within =
        bound.side === "least" ? value.number >= bound.number : value.number <= bound.number;
      if (within) return [];
      const message = text.markedPass(
        written(value.number),
        bound.side,
        written(bound.number),
        text.statedAt(asked.address),
        answer.text,
      );
      return [
        findingAt(
          "survey-bound",
          "stop",
          block,
          { kind: block.kinds[0] ?? "", panel: block.panels[0] ?? "", position: title },
          value.address,
          message,
          {
            found: value.text,
            expected: written(bound.number),
          },
        ),
      ];
    });
  });
};

/** A value beside a question that was answered with yes, and does not meet it. */
export const statedBound: SurveyRule = {
  id: "survey-bound",
  find: (context) => context.survey.blocks.flatMap((block) => inBlock(block, context)),
};
