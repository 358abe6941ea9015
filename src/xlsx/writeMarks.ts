import type { Sheet } from "hucre";
import { type ConditionalRule, saveXlsx } from "hucre/xlsx";
import type { Finding } from "../check/finding";
import { type Mark, marksOn } from "../look/markAreas";
import { isMarkRule, MARK_LOOK, markRule } from "../look/markLook";
import { columnFormulas } from "../sheets/columnFormulas";
import { planFor } from "../sheets/plan";
import { corners } from "./corners";
import { finish } from "./correctPackage";
import { openBook } from "./file";
import { readMemory } from "./remembered";

/**
 * A workbook file with the cell of each finding, and the row of its table, marked by conditional formats
 * of ours; marks from before are taken off, so that no findings take off all. Everything else stays.
 *
 * @throws {BookError} where the file is no workbook
 */
export async function markFile(
  file: Uint8Array,
  findings: readonly Finding[],
): Promise<Uint8Array> {
  const workbook = await openBook(file);
  for (const sheet of workbook.sheets) {
    const theirs = (sheet.conditionalRules ?? []).filter((rule) => !isMark(rule));
    const ours = marksOn(
      findings.filter((finding) => finding.sheet === sheet.name),
      rectangles(sheet),
    ).reverse();
    const rules = [
      ...ours.map((mark, at) => ruleOf(mark, at + 1)),
      ...theirs.map((rule) => ({ ...rule, priority: rule.priority + ours.length })),
    ];
    if (rules.length > 0 || sheet.conditionalRules) sheet.conditionalRules = rules;
  }
  const memory = readMemory(file);
  const formulas = memory ? columnFormulas(planFor(memory.lineup)) : new Map();
  return finish(await saveXlsx(workbook), workbook.sheets, memory, formulas);
}

export const isMark = ({ type, formula }: ConditionalRule): boolean =>
  type === "expression" && [formula].flat().some((text) => text !== undefined && isMarkRule(text));

const ruleOf = ({ weight, areas }: Mark, priority: number): ConditionalRule => {
  const { fill, ink } = MARK_LOOK[weight];
  const colour = { rgb: fill.slice(1) };
  return {
    type: "expression",
    formula: markRule(weight),
    priority,
    range: areas.join(" "),
    style: {
      font: { color: { rgb: ink.slice(1) } },
      fill: { type: "pattern", pattern: "solid", fgColor: colour, bgColor: colour },
    },
  };
};

const rectangles = ({ tables }: Sheet) =>
  (tables ?? []).flatMap(({ range }) => {
    if (!range) return [];
    const { top, left, bottom, right } = corners(range);
    return [{ top, left, rows: bottom - top + 1, columns: right - left + 1 }];
  });
