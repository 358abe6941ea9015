import type { FunctionGuide } from "../../../src/functions/guide";
import { callArguments, callFormula } from "./callFormula";
import { type Declaration, declarations } from "./declarations";

/** The functions' own documentation as data: what the pane and the examples sheet show of them. */
export const guideText = async (): Promise<string> =>
  `${JSON.stringify((await declarations()).map(guideOf), null, 1)}\n`;

const guideOf = ({
  name,
  description,
  returns,
  parameters,
  examples,
}: Declaration): FunctionGuide => ({
  name,
  text: description,
  gives: returns,
  parameters: parameters.map(({ name, description, optional, words }) => ({
    name,
    text: description,
    optional,
    words: words.map(({ word, meaning }) => [word, meaning] as const),
  })),
  examples: examples.map(({ formula }) => ({
    formula,
    arguments: callArguments(formula),
    result: callFormula(formula) as string | number,
  })),
});
