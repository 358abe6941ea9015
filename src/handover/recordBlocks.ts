import type { Content as Block, TableCell } from "pdfmake/interfaces";
import type { Messages } from "../messages/messages";
import { evenParts } from "../quantities/evenParts";
import { STANDING } from "../report/standing";
import type { HandedRow } from "./content";
import { inRuns, type RecordLayout, type RecordLine, recordLayout } from "./recordLayout";
import { LAYOUT, titleCells } from "./tableOf";

type Text = Messages["handover"];

/** Columns between item and result that a page's width holds; more of them stand below each other. */
const COLUMNS_WIDE = 8;
/** Rows side by side where their columns stand below each other. */
const ROWS_WIDE = 6;
const SIZE = 7;
/** No line over the title, which the columns that it stands over would draw each for itself. */
const UNDER_TITLE = { ...LAYOUT, hLineWidth: (line: number) => (line === 0 ? 0 : 0.5) };

/**
 * The records of one kind and panel: a table under its title, what holds for every row, and where limits
 * come from.
 *
 * @param numberOf the number of a source in the chapter of criteria
 */
export function recordBlocks(
  title: string,
  rows: readonly HandedRow[],
  numberOf: (source: string) => number,
  { handover: text, report }: Messages,
): Block[] {
  const told = rows.filter(({ state }) => state !== "open");
  const layout = recordLayout(told, text.time);
  const common = commonWords(layout, text);
  const resultOf = (line: RecordLine) => resultCell(line, report);
  const tables = told.length === 0 ? [] : tablesOf(layout, title, common, resultOf, text);
  const numbers = layout.sources.map(numberOf).sort((a, b) => a - b);
  const after = [
    ...(layout.sources.length > 0 ? [text.sources(inRuns(numbers, text.to))] : []),
    ...(told.length < rows.length ? [text.openRows(rows.length - told.length)] : []),
  ];
  return [
    ...tables,
    ...(told.length === 0 ? [{ text: title, bold: true, margin: [0, 4, 0, 0] } as Block] : []),
    ...after.map((line): Block => ({ text: line, fontSize: SIZE, margin: [0, 0, 0, 2] })),
    { text: "", margin: [0, 0, 0, 4] },
  ];
}

function tablesOf(
  layout: RecordLayout,
  title: string,
  common: string,
  resultOf: (line: RecordLine) => TableCell,
  text: Text,
): Block[] {
  const { titles, lines } = layout;
  if (titles.length === 0 && lines.length > 1) {
    const half = Math.ceil(lines.length / 2);
    const pair = (line: RecordLine | undefined) => (line ? [line.item, resultOf(line)] : ["", ""]);
    return [
      recordTable(
        title,
        common,
        [text.item, text.result, text.item, text.result],
        lines.slice(0, half).map((line, at) => [...pair(line), ...pair(lines[half + at])]),
      ),
    ];
  }
  if (titles.length <= COLUMNS_WIDE)
    return [
      recordTable(
        title,
        common,
        [text.item, ...titles, text.result],
        lines.map((line) => [line.item, ...line.values, resultOf(line)]),
      ),
    ];
  return evenParts(lines, ROWS_WIDE).map((some) =>
    recordTable(
      title,
      common,
      [text.item, ...some.map(({ item }) => item)],
      [
        ...titles.map((name, at) => [
          { text: name, bold: true },
          ...some.map(({ values }) => values[at] ?? ""),
        ]),
        [{ text: text.result, bold: true }, ...some.map(resultOf)],
      ],
    ),
  );
}

/** A table whose title, and what holds for all of it, stand on each page again. */
function recordTable(
  title: string,
  common: string,
  heads: readonly string[],
  rows: readonly (readonly TableCell[])[],
): Block {
  const across = (cell: TableCell): TableCell[] => [
    Object.assign({ colSpan: heads.length }, cell),
    ...heads.slice(1).map(() => ""),
  ];
  const above = [
    across({ text: title, bold: true, fontSize: 10, border: [false, false, false, false] }),
    ...(common === "" ? [] : [across({ text: common })]),
  ];
  return {
    layout: UNDER_TITLE,
    fontSize: SIZE,
    margin: [0, 2, 0, 2],
    table: {
      headerRows: above.length + 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      widths: heads.map((head, at) => (at === 0 || head === heads[0] ? "*" : "auto")),
      body: [...above, titleCells(heads), ...rows.map((row) => [...row])],
    },
  };
}

function resultCell({ result }: RecordLine, { standing }: Messages["report"]): TableCell {
  const key =
    result === "Not required"
      ? "none"
      : (result.toLowerCase() as "pass" | "fail" | "missing" | "inconclusive");
  const { fill, ink } = STANDING[key];
  return { text: key === "none" ? result : standing[key], bold: true, fillColor: fill, color: ink };
}

const commonWords = ({ common, exports }: RecordLayout, text: Text): string =>
  [
    ...common.map(([title, value]) => `${title}: ${value}`),
    ...exports.map(({ name, lines }) => text.fromLines(name, lines.length, inRuns(lines, text.to))),
  ].join(" · ");
