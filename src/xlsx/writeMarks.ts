import type { Finding, Weight } from "../check/findings/finding";
import type { CellStyle, ConditionalRule } from "../look/cellStyle";
import { type Mark, marksOn, type Rectangle } from "../look/markAreas";
import { isMarkRule, MARK_LOOK, markRule } from "../look/markLook";
import { groupedBy } from "../quantities/groupedBy";
import { readArea } from "../sheets/cells/area";
import { EXCEL_LIMITS } from "../sheets/plan/excelLimits";
import { openFile } from "./book";
import type { Package } from "./package/package";
import { partXml, relationsOf } from "./package/relations";
import { BookEdit } from "./patch/bookEdit";
import { dropStyles } from "./patch/dropStyles";
import { placeChild } from "./patch/placeChild";
import type { SheetEdit } from "./patch/sheetEdit";
import { dropPlainStyles, dxfXml, type Styles } from "./patch/styles";
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
    let count = 0;
    for (const { name } of book.worksheets) {
      const sheet = book.sheet(name);
      const marks = marksOn(bySheet.get(name) ?? [], rectangles(book.pack, sheet?.part ?? ""));
      if (sheet) markSheet(sheet, marks.reverse().flatMap(parted), book.styles);
      count += marks.length;
    }
    if (count === 0) dropLooks(book);
    return book.save();
  });

/** A mark, in as many parts as the areas of one conditional format ask for. */
const parted = (mark: Mark): Mark[] => {
  const { most } = EXCEL_LIMITS.conditionalFormatAreas;
  return Array.from({ length: Math.ceil(mark.areas.length / most) }, (_, at) => ({
    ...mark,
    areas: mark.areas.slice(at * most, (at + 1) * most),
  }));
};

/** Once all marks are taken off, their looks go too, where nothing else has taken to them. */
function dropLooks(book: BookEdit): void {
  const { pack } = book;
  const part = book.stylesPart;
  if (!pack.has(part)) return;
  const prefix = partXml(pack, part).prefix;
  const looks = Object.values(MARK_LOOK).map((look) => dxfXml(prefix, styleOf(look)));
  const sheets = new Set(book.worksheets.map(({ part }) => part));
  const inSheets = [...sheets].flatMap((one) => usedOnSheet(book.sheetAt(one)));
  const others = pack.names.filter(
    (name) => /\.xml$/i.test(name) && !sheets.has(name) && !/sharedStrings/i.test(name),
  );
  const elsewhere = others.flatMap((name) =>
    Array.from(pack.text(name).matchAll(/dxfId\s*=\s*["'](\d+)/gi), ([, id]) => Number(id)),
  );
  const used = [...inSheets, ...elsewhere].reduce((most, id) => Math.max(most, id), -1);
  dropStyles(pack, part, new Set(looks), used);
  dropPlainStyles(pack, book.bookPart, part);
}

/** Numbers of styles that conditional formats, filters and tables of a sheet use, besides marks. */
const usedOnSheet = (sheet: SheetEdit | undefined): number[] =>
  sheet === undefined
    ? []
    : [...within(sheet.root)]
        .filter((element) => !isMark(element))
        .flatMap(({ attributes }) => Number(attributes.get("dxfId") ?? -1));

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

const ruleOf = ({ weight, areas }: Mark, priority: number): ConditionalRule => ({
  type: "expression",
  formula: markRule(weight),
  priority,
  range: areas.join(" "),
  style: styleOf(MARK_LOOK[weight]),
});

const styleOf = ({ fill, ink }: (typeof MARK_LOOK)[Weight]): CellStyle => {
  const colour = { rgb: fill.slice(1) };
  return {
    font: { color: { rgb: ink.slice(1) } },
    fill: { type: "pattern", pattern: "solid", fgColor: colour, bgColor: colour },
  };
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
