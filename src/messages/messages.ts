import { messages as en } from "./en/messages";

/** Every text that people read: of the pane, the check, the drawing, the report and the command line. */
export type Messages = typeof en;

/** What the check says. */
export type FindingsText = Messages["findings"];

/** By which a finding, a concession and the project's settings name a rule. */
export type RuleId = keyof FindingsText["rules"];

/** The languages that there are; another one is a folder like `en` and a line here. */
const LANGUAGES: Readonly<Record<string, Messages>> = { en };

/**
 * The texts of a language, English where there are none.
 *
 * @param tag a language as BCP 47 has it, e.g. `de-AT`
 */
export const messagesFor = (tag: string): Messages =>
  LANGUAGES[tag.slice(0, 2).toLowerCase()] ?? en;
