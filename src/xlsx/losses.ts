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
  return [...inventoryOf(file)].flatMap(([sheet, features]) => {
    const losses = [...features].flatMap(([feature, had]): Loss[] => {
      const left = saved.get(sheet)?.get(feature) ?? 0;
      const of = sheet === WHOLE_BOOK ? {} : { sheet };
      return left < had ? [{ ...of, feature, had, left }] : [];
    });
    // What is lost as a whole is told once, without all that it said.
    return losses.filter(
      ({ feature }) =>
        !feature.includes(": ") ||
        losses.every(
          (one) =>
            one.left > 0 || ![": ", " "].some((next) => feature.startsWith(one.feature + next)),
        ),
    );
  });
}

/** What people call the features that have a plain name; any other is told by the file's own. */
const NAMES: Readonly<Record<string, string>> = {
  "drawing pic": "pictures",
  "drawing graphicFrame": "framed objects",
  "drawing graphicFrame chart": "charts",
  "drawing graphicFrame chartex": "charts",
  "drawing graphicFrame slicer": "slicers",
  "drawing graphicFrame timeslicer": "timelines",
  "drawing graphicFrame diagram": "diagrams",
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
        const [whole = feature, detail] = feature.split(": ");
        const known = NAMES[whole] ?? `"${whole}" of the file format`;
        const name = detail === undefined ? known : `${known}, their "${detail}"`;
        const place = sheet === undefined ? "the workbook" : `sheet "${sheet}"`;
        return `  ${place}: ${name} (${left === 0 ? had : `${had - left} of ${had}`})`;
      }),
    ),
  ].join("\n");
