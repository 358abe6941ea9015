import { RULE_IDS } from "../../../src/check/rules";
import { messagesFor, type RuleId } from "../../../src/messages/messages";
import { KINDS } from "../../../src/records/kinds";
import { storedKindWords } from "../../../src/records/kindWords";
import { WORKS, type Work } from "../../../src/records/repairs";

const OPENING = `# Rules of the check

Written by \`npm run docs\` from the rules and their texts; do not edit it. The table at the end is written by \`npm run bench:faults\`.

The check evaluates records. It never says that equipment is safe to energize: that is decided by licensed people under the local code, the site's permit system and the maker's instructions.

A finding weighs \`stop\` (the record does not prove what it must), \`query\` (somebody has to answer before it does) or \`note\` (worth knowing). A project may weigh a rule otherwise in its lineup, never take it away:

\`\`\`json
{ "ruleWeights": { "off-group": "query" } }
\`\`\`

A finding that somebody accepts goes onto the sheet Concessions, with the reason, a name and a date; it stays listed and is no longer open.
`;

const REPAIRS = `## What a repair makes void

By what was worked on, as the sheet Repairs has it: the records of the same panel that have to be made again (common practice, no source: the manufacturer's instructions and the project's own rules come first). The repaired record itself is always tested again.

| work on | made void | asked about, where the repair touched it |
| --- | --- | --- |`;

const workLine = (work: Work): string => {
  const titles = (asks: boolean) =>
    KINDS.flatMap(({ id, voidBy }) => {
      const by = voidBy?.[work];
      if (!by || (by.asks ?? false) !== asks) return [];
      return `${storedKindWords(id).title}${by.reach === "section" ? " (of the bus section)" : by.of ? " (some rows)" : ""}`;
    }).join("; ");
  return `| ${work} | ${titles(false) || "none"} | ${titles(true) || "none"} |`;
};

const FAULTS = "## Faults put in and found";

/** The reference of the rules, with the table of faults that stood in it. */
export const rulesText = (faults: string): string =>
  [
    OPENING,
    ...[...RULE_IDS].map(ruleText),
    REPAIRS,
    ...WORKS.map(workLine),
    "",
    FAULTS,
    "",
    faults.trim() || "Not measured yet.",
    "",
  ].join("\n");

const { rules } = messagesFor("en").findings;

const ruleText = (id: RuleId): string => {
  const { title, finds, why, satisfies, quiet } = rules[id];
  return [
    `## ${title}`,
    "",
    `\`${id}\``,
    "",
    `- Finds ${finds}.`,
    `- Why: ${why}`,
    `- Satisfied by ${satisfies}.`,
    `- Quiet ${quiet}.`,
    "",
  ].join("\n");
};

/** What stands under the heading of the faults in a reference that is there. */
export const faultsOf = (text: string): string => text.split(`${FAULTS}\n`)[1]?.trim() ?? "";
