import type { Finding } from "../../check/findings/finding";
import type { Block } from "../find/block";
import { type Cell, quantityIn, statedVerdict } from "../read/cells";
import { unitIn } from "../understand/unitIn";
import { hasWord } from "../words/sheetWords";
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

/** A question, what was answered, and the value that it asks after. */
interface Asked {
  readonly question: string;
  readonly address: string;
  readonly position: string;
  readonly value: Cell | undefined;
  readonly answer: Cell | undefined;
}

/** Questions in a line of their own, about the values of the line above. */
const askedInLines = (block: Block): Asked[] => {
  const [first, last] = block.span;
  const [label, ...columns] = block.columns;
  return Array.from({ length: last - first }, (_, index) => first + 1 + index).flatMap((line) => {
    const asked = label && block.at(line, label.at);
    if (!asked || typeof asked.value !== "string") return [];
    return columns.map(({ at, title }) => ({
      question: asked.text,
      address: asked.address,
      position: title,
      value: block.at(line - 1, at),
      answer: block.at(line, at),
    }));
  });
};

/** Questions as titles, about the values of the column before. */
const askedInTitles = (block: Block): Asked[] =>
  block.columns
    .filter(({ title }) => title.includes("?") && unitIn(title) === undefined)
    .flatMap(({ at, title }) =>
      block.lines.map((line) => ({
        question: title,
        address: block.address(block.span[0] - 1, at),
        position: title,
        value: block.at(line, at - 1),
        answer: block.at(line, at),
      })),
    );

const inBlock = (block: Block, { text }: SurveyContext): Finding[] =>
  [...askedInLines(block), ...askedInTitles(block)].flatMap(
    ({ question, address, position, value, answer }): Finding[] => {
      const bound = boundIn(question);
      if (!bound || value?.number === undefined || !answer || statedVerdict(answer) !== "Pass")
        return [];
      const { side, number } = bound;
      if (side === "least" ? value.number >= number : value.number <= number) return [];
      return [
        findingAt(
          "survey-bound",
          "stop",
          block,
          { kind: block.kinds[0] ?? "", panel: block.panels[0] ?? "", position },
          value.address,
          text.markedPass(
            written(value.number),
            side,
            written(number),
            text.statedAt(address),
            answer.text,
          ),
          { found: value.text, expected: written(number) },
        ),
      ];
    },
  );

/** A value beside a question that was answered with yes, and does not meet it. */
export const statedBound: SurveyRule = {
  id: "survey-bound",
  find: (context) => context.survey.blocks.flatMap((block) => inBlock(block, context)),
};
