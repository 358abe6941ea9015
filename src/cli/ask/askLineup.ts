import { type ListedPanel, readPanelList } from "../../intake/readPanelList";
import { breakerName } from "../../lineup/breakerName";
import type { CommandLineText } from "../../messages/commandLine";
import { readPlain } from "../../quantities/reading/readPlain";
import { checkLineup } from "../../records/readLineup";
import { BASES, type Basis } from "../../standards/criterion";
import { UsageError } from "../files/files";

type NewText = CommandLineText["new"];

/** Where questions are put and answers come from. */
export interface Asked {
  /** The next answer; none where the answers have come to their end. */
  readonly answer: (question: string) => Promise<string | undefined>;
  readonly say: (words: string) => void;
  /** Whether somebody is there to answer again. */
  readonly isPatient: boolean;
}

/** An answer read: what the lineup takes, or what is wrong with it. */
type Read = { readonly value: unknown } | { readonly wrong: string };

interface Question {
  readonly id: keyof NewText["questions"];
  /** Where in the lineup the answer goes. */
  readonly at: readonly [string] | readonly [string, string];
  readonly read: (answer: string, text: NewText) => Read;
  /** Whether a blank answer leaves it out. */
  readonly optional?: true;
}

const words = (answer: string, text: NewText): Read =>
  answer === "" ? { wrong: text.blank } : { value: answer };

const number = (answer: string, text: NewText): Read => {
  const read = readPlain(answer);
  return read.ok && read.value > 0 ? { value: read.value } : { wrong: text.noNumber(answer) };
};

const oneOf =
  <T extends string | number>(choices: readonly T[]) =>
  (answer: string, text: NewText): Read => {
    const value = choices.find((one) => String(one).toLowerCase() === answer.toLowerCase());
    return value === undefined ? { wrong: text.choose(answer, choices.map(String)) } : { value };
  };

const three = (answer: string, text: NewText): Read => {
  const value = answer.split(/[\s,;]+/).filter((name) => name !== "");
  return value.length === 3 && new Set(value).size === 3 ? { value } : { wrong: text.threePhases };
};

const QUESTIONS: readonly Question[] = [
  { id: "name", at: ["project", "name"], read: words },
  { id: "site", at: ["project", "site"], read: words },
  { id: "basis", at: ["basis"], read: oneOf(BASES) },
  { id: "voltage", at: ["ratings", "voltagekV"], read: number },
  { id: "frequency", at: ["ratings", "frequencyHz"], read: oneOf([50, 60]) },
  { id: "busbar", at: ["ratings", "busbarA"], read: number },
  { id: "control", at: ["ratings", "controlV"], read: number, optional: true },
  { id: "powerFrequency", at: ["ratings", "powerFrequencykV"], read: number, optional: true },
  { id: "impulse", at: ["ratings", "impulsekV"], read: number, optional: true },
  { id: "phases", at: ["phases"], read: three, optional: true },
];

/**
 * Asks for a lineup, question by question, and gives it as the JSON of a lineup file.
 *
 * @param listed its panels, where they are not to be asked for
 * @throws {UsageError} where the answers end too early, or one cannot be taken and nobody is there to ask again
 */
export async function askLineup(
  asked: Asked,
  text: CommandLineText,
  listed?: readonly ListedPanel[],
): Promise<object> {
  const lineup: Record<string, unknown> = {};
  for (const question of QUESTIONS) {
    const value = await ask(question, asked, text.new);
    if (value !== undefined) put(lineup, question.at, value);
  }
  const panels = listed ?? (await askPanels(asked, text));
  const designation = breakerName(lineup.basis as Basis);
  lineup.panels = panels.map((panel) =>
    panel.breaker ? { ...panel, breaker: { designation, ...panel.breaker } } : panel,
  );
  const checked = checkLineup(lineup);
  if (!checked.ok)
    throw new UsageError(({ told }) =>
      checked.errors.map(({ path, message }) => `${path}: ${message(told)}`).join("\n"),
    );
  return lineup;
}

function put(lineup: Record<string, unknown>, [first, second]: Question["at"], value: unknown) {
  lineup[first] =
    second === undefined ? value : { ...(lineup[first] as object | undefined), [second]: value };
}

async function ask(question: Question, asked: Asked, text: NewText): Promise<unknown> {
  const words = text.questions[question.id];
  for (;;) {
    const answer = (await asked.answer(`${words} `))?.trim();
    if (answer === undefined) throw new UsageError(() => text.ended(words));
    if (answer === "" && question.optional) return undefined;
    const read = question.read(answer, text);
    if ("value" in read) return read.value;
    refuse(`${words} ${read.wrong}`, asked);
  }
}

/** Panels, a line each, until a blank one. */
async function askPanels(
  asked: Asked,
  { new: text, told }: CommandLineText,
): Promise<readonly ListedPanel[]> {
  asked.say(text.panels);
  for (;;) {
    const lines: string[] = [];
    for (;;) {
      const line = (await asked.answer("  "))?.trim();
      if (line === undefined || line === "") break;
      lines.push(line);
    }
    if (lines.length === 0) throw new UsageError(() => text.noPanels);
    const { panels, problems } = readPanelList(lines.join("\n"));
    if (problems.length === 0) return panels;
    refuse(
      problems.map(({ line, message }) => text.panelLine(line, message(told))).join("\n"),
      asked,
    );
  }
}

/** Says what is wrong with an answer, and leaves it at that where nobody can give another. */
function refuse(wrong: string, { isPatient, say }: Asked): void {
  if (!isPatient) throw new UsageError(() => wrong);
  say(wrong);
}
