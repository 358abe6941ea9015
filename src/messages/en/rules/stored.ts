import { countIn } from "../../plurals";
import type { RuleTexts } from "../../ruleWords";
import { quotedList } from "../words";

const count = countIn("en");

/** The same of further cells of a column, some by their addresses. */
const alsoAt = (addresses: readonly string[], more: number): string =>
  addresses.length === 0
    ? ""
    : ` The same applies to ${addresses.join(", ")}${more > 0 ? ` and ${count(more, { one: "more cell", other: "more cells" })}` : ""}.`;

/** Rules of what a workbook says beside the entries: limits, formulas, results. */
export const stored = {
  "result-disagrees": {
    title: "A stored value that differs",
    finds:
      "a stored result or computed value that differs from the one computed from the row’s own entries",
    why: "Somebody typed over it, or its formula is not ours, or it was not calculated after a change: what the sheet says is not what the readings say.",
    satisfies: "the formula put back and the sheet calculated",
    quiet:
      "for formulas of a table that was not calculated at all, and for errors: other rules report both",
    message: (row: string, header: string, found: string, expected: string) =>
      `${row}: "${header}" shows ${found}; calculated from the row's entries it is ${expected}.`,
  },
  "limit-differs": {
    title: "A limit that is not its criterion's",
    finds:
      "a limit on the sheet that differs from the one that the maker, the project or the standard gives",
    why: "A limit moved a little makes a defect pass, and nobody looks at limits twice.",
    satisfies:
      "the criterion's limit; a limit of the project's own belongs in the lineup, with its document",
    quiet:
      "for formulas that were never calculated, and where the lineup leaves the limit to be typed",
    message: (row: string, header: string, found: string, expected: string) =>
      `${row}: "${header}" is ${found}; its criterion gives ${expected}.`,
  },
  "given-differs": {
    title: "A rating that is not the lineup's",
    finds: "a rating or plate value on a record sheet that differs from the lineup's",
    why: "Limits follow from ratings: with another rating the row is judged by another limit.",
    satisfies: "the lineup's value; a change of the equipment belongs in the lineup",
    quiet: "for rows that the lineup does not need",
    message: (row: string, header: string, found: string, expected: string) =>
      `${row}: "${header}" is ${found}; the lineup gives ${expected}.`,
  },
  "sources-differ": {
    title: "Sources of limits worded otherwise",
    finds:
      "sources of limits that are worded otherwise than now, as in a workbook that was built earlier: once for the workbook, at the first such row",
    why: "The limits are the same or are reported by themselves; only what stands beside them has changed.",
    satisfies: "the lineup built onto the workbook again, which writes the sources as they are now",
    quiet: "for rows that the lineup does not need",
    message: (row: string, further: number) =>
      `${row}: the sources of its limits are worded otherwise than now${further > 0 ? `, and so are those of ${further} further ${further === 1 ? "row" : "rows"}` : ""}. Limits are compared by themselves. Build the lineup onto the workbook again to renew them.`,
  },
  "stated-differs": {
    title: "What a sheet says itself",
    finds:
      "in a user's own layout, a result, limit, corrected value, error or spread of poles that differs from what the record comes to, and a formula unlike the others of its column",
    why: "People read the sheet: a “pass” beside a failing reading, a softer limit or a wrong factor goes on from there.",
    satisfies:
      "the sheet's own formula or word corrected; where the sheet is right, the lineup's criterion or correction",
    quiet:
      "for columns that the map does not name, for corrected values within 2 % (factors of two figures, common practice), for an error as far as it is rounded, for a spread that is rounded or calculated in another usual way (over the mean, over the greatest, from the mean: common practice), and where the record cannot be judged",
    result: (
      row: string,
      passes: boolean,
      wanted: string,
      others: readonly string[],
      more: number,
    ) =>
      `${row}: the sheet says that it ${passes ? "passes" : "fails"}; by its reading and its criterion it is ${wanted}.${alsoAt(others, more)} Correct the sheet's result, or the cells it is calculated from.`,
    limit: (
      row: string,
      header: string,
      found: string,
      expected: string,
      isSofter: boolean,
      others: readonly string[],
      more: number,
    ) =>
      `${row}: "${header}" is ${found} on the sheet; its criterion gives ${expected}, ${isSofter ? "which is stricter" : "and that is what it is judged by"}.${alsoAt(others, more)} Put the criterion's limit there; a limit of the project's own belongs in the lineup, with its document.`,
    value: (
      row: string,
      header: string,
      found: string,
      expected: string,
      times: string,
      others: readonly string[],
      more: number,
    ) =>
      `${row}: "${header}" is ${found} on the sheet; from the row's own reading it is ${expected}, and the sheet's value is ${times} times that.${alsoAt(others, more)} Correct the factor or the cells it takes; another correction belongs in the lineup.`,
    spread: (row: string, found: string, expected: string, unit: string) =>
      `${row}: the sheet says that the poles are ${found} ${unit} apart; by their readings the greatest is ${expected} ${unit} above the lowest${unit === "%" ? ", and no other usual way to calculate a spread gives that figure either" : ""}. Correct the sheet's formula, or the cells it takes.`,
    error: (row: string, header: string, found: string, expected: string) =>
      `${row}: "${header}" is ${found} on the sheet; by the row's own readings it is ${expected}. Correct the sheet's formula, or the cells it takes.`,
    unlike: (row: string, header: string, formula: string | undefined, most: string) =>
      `${row}: the sheet's own "${header}" ${
        formula ? `is calculated unlike the others in its column, by =${formula}` : "is typed"
      }, where others have a formula such as =${most}. Fill the column's formula down over it.`,
  },
  "own-formula": {
    title: "A formula that is not ours",
    finds:
      "a computed cell, limit or result with another formula than the record's: what it takes from the wrong row or column, a cell fixed on every row, a limit written into it, a factor or direction changed, a row unlike its neighbours",
    why: "A sheet is trusted because its formulas are alike. One that takes its neighbour's reading looks like all the others.",
    satisfies: "the record's formula put back; a calculation of your own in a separate column",
    quiet:
      "for formulas that come to the same when references are written another way, as other programs do on saving; a whole column of one's own that agrees is a note",
    message: (
      row: string,
      header: string,
      {
        causes,
        isAlone,
        more,
        differs,
        computed,
      }: {
        readonly causes: readonly string[];
        readonly isAlone: boolean;
        /** Further rows with this formula. */
        readonly more: number;
        readonly differs: boolean;
        readonly computed: string;
      },
    ) =>
      [
        `${row}: "${header}" has a formula of its own${causes.length > 0 ? `, which ${causes.join(", and ")}` : ""}.`,
        ...(isAlone ? ["It is unlike its neighbours in the column."] : []),
        ...(more > 0
          ? [
              `The same applies to ${count(more, { one: "more row", other: "more rows" })} of the column.`,
            ]
          : []),
        `Its result ${differs ? "differs from" : "agrees with"} what the record computes (${computed}).`,
      ].join(" "),
    beyondTable: "beyond the table",
    outsideRow: (reference: string) =>
      `takes ${reference} from outside the row, which shifts on every row that the formula is filled down to, because no dollar sign fixes it`,
    fixedCell: (header: string, reference: string) =>
      `takes "${header}" from the one cell ${reference} on every row, fixed by a dollar sign`,
    otherRow: (header: string, row: string) => `takes "${header}" of another row (${row})`,
    otherColumns: (extra: readonly string[], lost: readonly string[]) =>
      `takes ${quotedList(extra)} in place of ${quotedList(lost)}`,
    numberForColumn: (numbers: readonly string[], lost: readonly string[]) =>
      `holds the fixed number ${numbers.join(", ")} in place of ${quotedList(lost)}`,
    columnsNotTaken: (lost: readonly string[]) => `does not take ${quotedList(lost)}`,
    nothingTaken: (numbers: readonly string[]) =>
      `takes nothing from its row${numbers.length > 0 ? `: ${numbers.join(", ")} is fixed` : ""}`,
    otherConstant: (own: string, ours: string) => `holds ${own} fixed, in place of ${ours}`,
    otherNumbers: (own: readonly string[], ours: readonly string[]) =>
      `holds ${own.join(", ")} where ours holds ${ours.join(", ")}`,
    addition: (parts: readonly string[]) => `works with ${parts.join(", ")}, which ours does not`,
    otherWords: (own: readonly string[], ours: readonly string[]) =>
      `says ${quotedList(own)} where ours says ${quotedList(ours)}`,
    otherDirection: "compares in another direction than ours",
  },
  "reading-formula": {
    title: "A reading by formula",
    finds:
      "a reading that a formula takes from other cells; any entry that chance or the clock gives, as by RAND or TODAY",
    why: "A reading is what an instrument showed. One that follows from another row's was not measured.",
    satisfies:
      "the reading as it was taken; a conversion within the cell, such as =5.2*1000, is one",
    quiet: "for formulas that take nothing from other cells",
    message: (row: string, header: string, formula: string) =>
      `${row}: "${header}" is calculated by =${formula}; a reading is what the instrument showed.`,
    changing: (row: string, header: string, formula: string) =>
      `${row}: "${header}" is calculated by =${formula}, which comes to something else each time the workbook is calculated. Type what was read.`,
  },
  "error-value": {
    title: "An error value",
    finds: "an error such as #REF! or #N/A in a cell of a record",
    why: "Whatever is calculated from it is an error too, or is silently left out of a total.",
    satisfies: "the formula or value corrected; #NAME? goes away where the add-in is loaded",
    quiet: "for text that only begins with #",
    message: (row: string, header: string, error: string) =>
      `${row}: "${header}" holds the error ${error}; correct the cells it is calculated from.`,
  },
  "not-calculated": {
    title: "Formulas without values",
    finds:
      "tables whose formulas stand without their values, once for the workbook, at the first of them",
    why: "What was stored cannot be compared with what is computed here.",
    satisfies: "the workbook opened in a spreadsheet with the add-in and saved",
    quiet: "for a table in which at least one result has its value",
    message: (tables: readonly string[], more: number) =>
      `The formulas of ${quotedList(tables)}${more > 0 ? ` and ${count(more, { one: "more table", other: "more tables" })}` : ""} have no stored values: the program that saved this workbook did not calculate them. Open it in a spreadsheet with the add-in and save it, so that stored results can be compared.`,
  },
  "typed-over": {
    title: "A formula typed over",
    finds: "a computed cell that holds the very value it would compute, typed",
    why: "It agrees today and will not follow a change.",
    satisfies: "the formula put back",
    quiet: "where the value differs: another rule reports that",
    message: (row: string, header: string) =>
      `${row}: "${header}" holds a typed value in place of its formula; it agrees today and will not follow a change.`,
  },
  "built-earlier": {
    title: "Built by an earlier version",
    finds:
      "formulas of limits and computed columns that a build wrote and would write otherwise now: one finding for the workbook, a query where cells hold other values than are computed now",
    why: "Limits and computed values are those of the version, or of the lineup, that the workbook was built with; this check computes with those of now.",
    satisfies:
      "the workbook built again, which renews its formulas and leaves every reading as it is",
    quiet:
      "where a workbook does not remember its formulas, as of a build before they were remembered; results that differ, and formulas that somebody wrote himself, are told of by rules of their own",
    message: (columns: readonly string[], all: number, apart: number) =>
      `Built by an earlier version, or for the lineup as it was then: ${all === 1 ? "the formulas of 1 column have" : `the formulas of ${all} columns have`} changed since (${columns.join("; ")}${all > columns.length ? "; …" : ""})${apart > 0 ? `, and ${apart} of their cells hold${apart === 1 ? "s" : ""} another value than is computed now` : ""}. Build the workbook again to renew them; readings stay.`,
  },
} satisfies RuleTexts;
