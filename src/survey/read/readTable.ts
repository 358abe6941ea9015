import type { Draft, Line, Measure } from "../draft";
import type { Block, Entry } from "../find/block";
import { carrier } from "../find/findBeside";
import { holdsReadings, linesOf } from "../find/findLines";
import { isOverTime, isTime, readingsOf } from "../find/findReadings";
import { classOf } from "../find/kindOf";
import { positionsAmong } from "../understand/phases";
import type { Concept } from "../words/words";
import { isValue } from "./cells";
import { entryOf } from "./readEntry";

/** What the first column of a table can be titled with that names panels where nothing else does: a circuit, a splice. */
const FIRST: readonly (Concept | undefined)[] = [undefined, "part"];

/** A table of which nothing tells the panels, with its first column as their names: words with a number in each line. */
const withPanels = (draft: Draft): Draft => {
  const { view, table, columns, around } = draft;
  const [first] = columns;
  const isNamed = columns.some(({ concept }) => concept === "panel" || concept === "name");
  if (!first || isNamed || around.isPanelTold || first.numbers || !FIRST.includes(first.concept))
    return draft;
  const texts = Array.from({ length: table.bottom - table.head }, (_, index) =>
    view.at(table.head + 1 + index, first.at),
  ).flatMap((cell) => (cell && !isValue(cell) ? [cell.text] : []));
  const isPlace = positionsAmong(texts);
  const names = texts.filter((text) => /\d/.test(text) && isPlace(text) === undefined);
  return names.length >= 2 && names.length > texts.length * 0.7 && new Set(names).size >= 2
    ? { ...draft, columns: [{ ...first, concept: "panel" }, ...columns.slice(1)] }
    : draft;
};

/** Whether each line and each column is a phase, in a unit of no resistance: the phasing of two sides, which measures none of them. */
const isPhasing = ({ view, table }: Draft, measures: readonly Measure[]): boolean => {
  const labels = Array.from({ length: table.bottom - table.head }, (_, index) =>
    view.at(table.head + 1 + index, table.left),
  ).flatMap((cell) => (cell ? [cell.text.split(/[([]/)[0]?.trim() ?? ""] : []));
  const place = positionsAmong(labels);
  const down = new Set(labels.flatMap((text) => place(text) ?? []));
  const across = measures.flatMap(({ column: { position } }) => position ?? []);
  const isResistance = measures.some(
    ({ column: { unit } }) => unit !== undefined && classOf(unit).endsWith("resistance"),
  );
  return down.size === 3 && across.length === 3 && !isResistance && labels.length <= 4;
};

/** Reads a table as records; undefined where it holds none that are known. */
export function readTable(given: Draft): Block | undefined {
  const draft = withPanels(given);
  const { columns, around } = draft;
  const measures = readingsOf(draft);
  if (measures.length === 0 || isPhasing(draft, measures)) return undefined;
  const { lines: all, aside } = linesOf(draft);
  const timed = measures.some(({ kind }) => kind === "indexCurve") && isOverTime(draft);
  const own = all.filter(({ row }) => holdsReadings(draft, measures, row));
  const lines = timed ? own.filter(({ cells: [first] }) => first && isTime(first)) : own;
  const carried = carrier(draft, lines);
  const panelColumn =
    columns.find(({ concept }) => concept === "panel") ??
    columns.find(({ concept }) => concept === "name");
  let panel = "";
  const entries = lines.flatMap((line) => {
    const cellOf = carried(line);
    panel =
      (panelColumn && cellOf(panelColumn)?.text) ??
      line.banner ??
      (panelColumn ? panel : around.panel);
    return measures.flatMap(
      (measure) =>
        entryOf(
          draft,
          { measure, line, panel: measure.column.panel ?? panel, cellOf },
          aside,
          measures,
        ) ?? [],
    );
  });
  const filled = entries.filter(({ cell }) => cell !== undefined).length;
  // A form of labels, each with its value, is one line on its side: it holds records where it holds several.
  const least = draft.view.turned && lines.length === 1 ? 2 : 1;
  return filled >= least ? blockOf(draft, entries, lines) : undefined;
}

function blockOf(
  { view, table, columns, around }: Draft,
  entries: readonly Entry[],
  lines: readonly Line[],
): Block {
  const kinds = [...new Set(entries.map(({ kind }) => kind))];
  const panels = [...new Set(entries.map(({ panel }) => panel).filter((panel) => panel !== ""))];
  const units = [...new Set(entries.flatMap(({ unit }) => unit ?? []))];
  const titles = [...new Set(entries.map(({ column }) => column.title))];
  return {
    sheet: view.name,
    range: rangeOf([view.address(table.top, table.left), view.address(table.bottom, table.right)]),
    kinds,
    panels,
    columns,
    entries,
    turned: view.turned,
    lines: lines.map(({ row }) => row),
    span: [table.head + 1, table.bottom],
    at: (line, column) => view.shown(line, column),
    address: (line, column) => view.address(line, column),
    facts: around.facts,
    heading: around.heading,
    recognisedBy: {
      titles: titles.slice(0, 4),
      units,
      ...(around.words[0] ? { heading: around.words[0] } : {}),
    },
  };
}

/** The range that two corners span, whichever way they are given. */
const rangeOf = (corners: readonly [string, string]): string => corners.join(":");
