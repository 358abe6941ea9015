import { saveXlsx } from "hucre/xlsx";
import { openBook } from "./file";
import { inventoryOf, WHOLE_BOOK } from "./inventory";

/** Something of a workbook that does not outlast saving it: where, what, and how many of them. */
export interface Loss {
  /** The sheet's name; none for what belongs to the whole workbook. */
  readonly sheet?: string;
  readonly feature: string;
  readonly had: number;
  readonly left: number;
}

/**
 * What saving a workbook file would lose, whatever is changed in it. The file library makes worksheets
 * anew, and what it does not model is then gone; so the file is saved as it is and both are compared.
 *
 * @throws {BookError} where the file is no workbook
 */
export async function lossesOf(file: Uint8Array): Promise<Loss[]> {
  const saved = inventoryOf(await saveXlsx(await openBook(file)));
  return [...inventoryOf(file)].flatMap(([sheet, features]) =>
    [...features].flatMap(([feature, had]): Loss[] => {
      const left = saved.get(sheet)?.get(feature) ?? 0;
      const of = sheet === WHOLE_BOOK ? {} : { sheet };
      return left < had ? [{ ...of, feature, had, left }] : [];
    }),
  );
}

/** What people call the features that have a plain name; any other is told by the file's own. */
const NAMES: Readonly<Record<string, string>> = {
  "drawing pic": "pictures",
  "drawing graphicFrame": "charts",
  "drawing sp": "shapes and text boxes",
  "drawing cxnSp": "connecting lines",
  "drawing grpSp": "groups of shapes",
  "part chart": "charts",
  "part pivotTable": "pivot tables",
  "part slicer": "slicers",
  "part timeline": "timelines",
  "part vbaProject": "macros",
  "part externalLink": "links to other workbooks",
  "part oleObject": "embedded objects",
  "part ctrlProp": "properties of form controls",
  "part person": "people who commented",
  comments: "cell notes",
  threadedComment: "threaded comments",
  control: "form controls",
  controls: "controls",
  oleObjects: "embedded objects",
  conditionalFormattings: "newer conditional formats",
  conditionalFormatting: "conditional formats",
  dataValidations: "data validations",
  sparklineGroups: "sparklines",
  slicerList: "slicers",
  richText: "text with parts of it in another look",
  "array formula": "array formulas",
  "dataTable formula": "data tables (what-if)",
  protectedRanges: "ranges with a password of their own",
  ignoredErrors: "error warnings switched off",
  customSheetViews: "saved views",
  scenarios: "scenarios",
  tableStyles: "table styles of its own",
  definedNames: "defined names",
};

/** The losses by sheet, in a line each. */
export const lossWords = (losses: readonly Loss[]): string =>
  [
    ...new Set(
      losses.map(({ sheet, feature, had, left }) => {
        const name = NAMES[feature] ?? `"${feature}" of the file format`;
        const place = sheet === undefined ? "the workbook" : `sheet "${sheet}"`;
        return `  ${place}: ${name} (${left === 0 ? had : `${had - left} of ${had}`})`;
      }),
    ),
  ].join("\n");
