import { sources } from "../../../src/functions/sources";
import { BASES, type Source, sourceText } from "../../../src/standards/criterion";
import { callFormula } from "./callFormula";
import { type CriteriaTable, criteriaTables, listedCriteria } from "./criteriaTables";
import { type Calculation, type Declaration, declarations, type Parameter } from "./declarations";
import type { ListedCriterion } from "./standardsTables";

const OPENING = `# Worksheet functions and criteria

Written by \`npm run docs\` from the functions' declarations and the criteria tables; do not edit it.

The functions compute and look up; they never say that equipment is safe to energize. The manufacturer's and the project's documents, the local code, the site's permit system and licensed practice come first.

## What holds for every function

- A parameter takes a cell or a range. Ranges of one shape spill; a single cell, row or column stands for every cell beside a range.
- A blank cell gives a blank, never 0. A blank optional parameter is one left out.
- An error in a cell is passed on.
- A quantity is a number in the parameter's unit, or text as written on site: \`5.2 GΩ\`, \`> 2 TΩ\`, \`0.045 mΩ\`. Only a bound's text is carried on as a bound: \`> 3160000\` is text, never a number. It has six figures at most, rounded to the safe side.
- \`#VALUE!\`: not the sort of thing asked for. \`#NUM!\`: outside what the calculation holds for. \`#N/A\`: no figure to answer with. Each has a sentence that says what would be right. Below, a calculation's own words for them are \`wrong\`, \`range\` and \`none\`.
- Functions are pure: the same cells give the same answer, and nothing but the arguments is looked at.
- Basis: \`IEC\` or \`NETA\`; each figure's edition stands with its table below. The order is maker, project, standard. A maker's or project's own criterion stands on the workbook's sheet Criteria, and as a value in the record's limit with its source beside it. A function sees only its arguments, so \`PROJECT\` as basis gives \`#N/A\` and names that sheet: refer to the cell there.
- Certainty: _read_ in a published copy; _quoted_ in another document, which is named; _signed_ from memory, and engineers of the trade have signed verdicts on it; _memory_ to be confirmed against the standard: in the records such a figure decides nothing until the lineup says who confirmed it; _practice_ common practice without a source.
- A stress, such as a test voltage, is exact: it is never taken from another row. A least value takes the next higher row, which asks for more.
`;

/** The reference page: every worksheet function, then every table of criteria. */
export async function referenceText(): Promise<string> {
  const declared = await declarations();
  const contents = declared.map(({ name }) => `[${name}](#${name.toLowerCase()})`).join(" · ");
  return `${[
    OPENING,
    `## Functions\n\n${contents}\n`,
    ...declared.map(functionText),
    "## Tables of criteria\n",
    ...(await criteriaTables()).map(tableText),
    criteriaText(await listedCriteria()),
  ].join("\n")}`;
}

const functionText = (declared: Declaration): string => {
  const { name, description, returns, parameters, examples, refusals, behind } = declared;
  const usage = parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(", ");
  return [
    `### ${name}`,
    "",
    `\`GEAR.${name}(${usage})\``,
    "",
    description,
    "",
    `Gives: ${returns}`,
    "",
    table(["parameter", "what", "words"], parameters.map(parameterRow)),
    "",
    ...examples.map(({ formula, outcome }) => `- \`${formula}\` gives \`${outcome}\``),
    ...refusals.map((formula) => `- \`${formula}\` gives ${refusal(formula)}`),
    "",
    ...behind.flatMap(calculationText),
    ...sourceLines(name),
    "",
  ].join("\n");
};

const parameterRow = ({ name, description, optional, words }: Parameter): string[] => [
  optional ? `${name}, optional` : name,
  description,
  words.map(({ word, meaning }) => `\`${word}\`: ${meaning}`).join("<br>"),
];

/** The error that a call gives, with its sentence. */
function refusal(formula: string): string {
  const outcome = callFormula(formula);
  if (typeof outcome !== "object" || outcome === null || !("code" in outcome))
    throw new Error(`${formula} is not refused`);
  const { code, message } = outcome as { code: string; message?: string };
  return `\`${code}\`: ${message}`;
}

const calculationText = ({ name, text, parameters, returns }: Calculation): string[] => [
  `Behind it, \`${name}\`: ${text}`,
  "",
  ...parameters.map(({ name, text }) => `- ${name}: ${oneLine(text)}`),
  `- gives ${oneLine(returns)}`,
  "",
];

function sourceLines(name: string): string[] {
  const found = sources[name] ?? [];
  const lines = (list: readonly Source[], before = "") =>
    list.map((source) => `- Source${before}: ${sourceText(source)}`);
  return "IEC" in found
    ? BASES.flatMap((basis) => lines(found[basis], `, ${basis}`))
    : lines(found);
}

const tableText = ({ title, sources, columns, rows }: CriteriaTable): string =>
  [
    `### ${title}`,
    "",
    table(
      ["document", "edition", "place", "certainty"],
      sources.map(({ document, edition, place = "", certainty, by, note }) => [
        document,
        edition || "none",
        place,
        [by ? `${certainty}: ${by}` : certainty, note].filter(Boolean).join("; "),
      ]),
    ),
    "",
    table(
      columns,
      rows.map((row) => row.map(String)),
    ),
    "",
  ].join("\n");

/** Every criterion in one list, and how many there are of each certainty. */
function criteriaText(criteria: readonly ListedCriterion[]): string {
  const counts = new Map<string, number>();
  for (const { source } of criteria)
    counts.set(source.certainty, (counts.get(source.certainty) ?? 0) + 1);
  return [
    "## Every criterion",
    "",
    table(
      ["certainty", "criteria"],
      [...[...counts].sort(), ["all", criteria.length] as const].map((row) => row.map(String)),
    ),
    "",
    table(
      ["criterion", "value", "standard", "edition", "place", "certainty"],
      criteria.map(({ what, value, source }) => [
        what,
        value,
        source.document,
        source.edition || "none",
        source.place ?? "",
        [source.certainty, source.by].filter(Boolean).join(": "),
      ]),
    ),
    "",
  ].join("\n");
}

/** A table with its columns padded, as the project's formatter writes it. */
function table(columns: readonly string[], rows: readonly (readonly string[])[]): string {
  const cells = [columns, ...rows].map((row) =>
    row.map((cell) => oneLine(cell).replaceAll("|", "\\|")),
  );
  const widths = columns.map((_, at) => Math.max(3, ...cells.map((row) => row[at]?.length ?? 0)));
  const line = (row: readonly string[]) =>
    `| ${row.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join(" | ")} |`;
  const [head = [], ...body] = cells;
  return [line(head), line(widths.map((width) => "-".repeat(width))), ...body.map(line)].join("\n");
}

const oneLine = (text: string): string => text.replace(/\s*\n\s*/g, " ");
