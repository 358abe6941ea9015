import type { Finding } from "../check/finding";
import { type Mark, marksOn, type Rectangle } from "../look/markAreas";
import { isMarkRule, MARK_LOOK, markRule } from "../look/markLook";
import { readArea } from "../sheets/area";
import { openFile } from "./book";
import { groupedBy } from "./groupedBy";
import type { Package } from "./package/package";
import { partXml, relationsOf } from "./package/relations";
import { BookEdit } from "./patch/bookEdit";
import { placeChild } from "./patch/placeChild";
import type { SheetEdit } from "./patch/sheetEdit";
import type { Styles } from "./patch/styles";
import { understood } from "./readBook";
import { ruleXml } from "./write/sheetXml";
import { removed, setAttribute } from "./xml/editText";
import { childOf, childrenOf, within, type XmlElement } from "./xml/readXml";

/**
 * A workbook file with the cell of each finding, and the row of its table, marked by conditional formats
 * of ours; marks from before are taken off, so that no findings take off all. Everything else stays.
 *
 * @throws {BookError} where the file is no workbook
 */
export const markFile = (file: Uint8Array, findings: readonly Finding[]): Promise<Uint8Array> =>
  understood(async () => {
    const book = new BookEdit(openFile(file));
    const bySheet = groupedBy(findings, ({ sheet }) => sheet);
    for (const { name } of book.worksheets) {
      const sheet = book.sheet(name);
      const marks = marksOn(bySheet.get(name) ?? [], rectangles(book.pack, sheet?.part ?? ""));
      if (sheet) markSheet(sheet, marks.reverse(), book.styles);
    }
    return book.save();
  });

/** Whether a rule of a conditional format, as a file writes it, is a mark. */
export const isMark = (rule: XmlElement): boolean =>
  rule.attributes.get("type") === "expression" && isMarkRule(childOf(rule, "formula")?.text ?? "");

/** Takes the marks of before off a sheet and puts on others, over all formats that are not ours. */
function markSheet(sheet: SheetEdit, marks: readonly Mark[], styles: Styles): void {
  const { root, text } = sheet;
  const before = takeOff(sheet);
  const theirs = [...within(root)].filter(
    (element) =>
      element.name === "cfRule" && !isMark(element) && element.attributes.has("priority"),
  );
  const priorities = theirs.map(({ attributes }) => Number(attributes.get("priority")));
  // Those of before had moved the others on by as many as they were.
  const back = priorities.every((priority) => priority > before) ? before : 0;
  const on = marks.length - back;
  if (on !== 0)
    for (const [at, rule] of theirs.entries())
      sheet.edit(setAttribute(text, rule, "priority", String((priorities[at] ?? 0) + on)));
  const xml = marks.map((mark, at) => ruleXml(root.prefix, ruleOf(mark, at + 1), styles)).join("");
  if (xml !== "") sheet.edit(placeChild(text, root, "conditionalFormatting", xml));
}

/** Takes off the marks of before; how many they were. */
function takeOff(sheet: SheetEdit): number {
  let count = 0;
  for (const formats of childrenOf(sheet.root, "conditionalFormatting")) {
    const rules = childrenOf(formats, "cfRule");
    const ours = rules.filter(isMark);
    count += ours.length;
    if (ours.length === 0) continue;
    if (ours.length === rules.length) sheet.edit(removed(formats));
    else sheet.edit(...ours.map(removed));
  }
  return count;
}

const ruleOf = ({ weight, areas }: Mark, priority: number) => {
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
  } as const;
};

/** The tables of a sheet. */
const rectangles = (pack: Package, sheet: string): Rectangle[] =>
  relationsOf(pack, sheet).flatMap(({ type, part }) => {
    const area =
      type === "table" ? readArea(partXml(pack, part).attributes.get("ref") ?? "") : undefined;
    if (!area) return [];
    const { top, left, bottom, right } = area;
    return [{ top, left, rows: bottom - top + 1, columns: right - left + 1 }];
  });
