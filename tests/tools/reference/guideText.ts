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
    ...parted(name, description, words.length > 0),
    optional,
    words: words.map(({ word, meaning }) => [word, meaning] as const),
  })),
  examples: examples.map(({ formula }) => ({
    formula,
    arguments: callArguments(formula),
    result: callFormula(formula) as string | number,
  })),
});

/** Where what a parameter is, with its unit, ends in its description, and what helps to fill it in begins. */
const END =
  /[:;]|\.(?=\s)|, (?=such as|or |by |one |for )| (?=as the plate|as written)|, (?=in (?:English|the))/;

/** A parameter's label, in words and with its unit; one that takes words goes by its own. */
const parted = (name: string, description: string, hasWords: boolean) => {
  if (hasWords) return { label: name.charAt(0).toUpperCase() + name.slice(1), text: description };
  const [label = ""] = description.split(END);
  const rest = description.slice(label.length).replace(/^[\s,:;.]+/, "");
  return { label, text: rest.charAt(0).toUpperCase() + rest.slice(1) };
};
