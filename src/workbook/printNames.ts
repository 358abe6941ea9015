import type { NamedRange, PageSetup } from "hucre";

/** The library's reader parts a sheet's name at its commas, and leaves its pieces among the areas. */
const isArea = (text: string): boolean => /^[$A-Z\d]+(:[$A-Z\d]+)?$/i.test(text);

/**
 * The names by which a workbook knows what of a sheet is printed and what is repeated on each page, as
 * the file library would make them of a page set-up, but with the sheet's name in quotes: without them
 * `Current transformers!$4:$4` is no reference, and Excel would repair the workbook.
 *
 * @example printNames({ name: "Panel's", pageSetup: { printTitlesRow: "$4:$4" } }) // [{ name: "_xlnm.Print_Titles", range: "'Panel''s'!$4:$4", scope: "Panel's" }]
 */
export function printNames({
  name: scope,
  pageSetup: { printArea = "", printTitlesColumn = "", printTitlesRow = "" } = {},
}: {
  readonly name: string;
  readonly pageSetup?: PageSetup;
}): NamedRange[] {
  const sheet = `'${scope.replaceAll("'", "''")}'`;
  return (
    [
      ["_xlnm.Print_Area", printArea.split(",")],
      ["_xlnm.Print_Titles", [printTitlesColumn, printTitlesRow]],
    ] as const
  ).flatMap(([name, areas]) => {
    const range = areas
      .filter(isArea)
      .map((area) => `${sheet}!${area}`)
      .join(",");
    return range === "" ? [] : [{ name, range, scope }];
  });
}

interface Printed {
  sheets: { readonly name: string; pageSetup?: PageSetup }[];
  namedRanges?: NamedRange[];
}

/** Takes what is printed out of the page set-ups of a workbook that is about to be written, into its names. */
export function namePrints<T extends Printed>(workbook: T): T {
  const names = workbook.sheets.flatMap(printNames);
  for (const sheet of workbook.sheets)
    if (sheet.pageSetup) {
      const { printArea, printTitlesRow, printTitlesColumn, ...rest } = sheet.pageSetup;
      sheet.pageSetup = rest;
    }
  workbook.namedRanges = [...(workbook.namedRanges ?? []), ...names];
  return workbook;
}
