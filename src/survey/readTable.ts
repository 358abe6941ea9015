import type { Unit } from "../quantities/units";
import { a1 } from "../sheets/address";
import type { Block, Entry, Facts, Limit, SurveyColumn } from "./block";
import { type Cell, isValue, type SheetView } from "./cells";
import { factsIn, joinFacts, NO_FACTS } from "./findFacts";
import type { FoundTable } from "./findTables";
import { classOf, kindOf } from "./kindOf";
import { isSummary } from "./nameColumns";
import { unitIn } from "./unitIn";
import { conceptOf, kindsIn } from "./words/sheetWords";
import type { Concept } from "./words/words";

/** What stands around a table and counts for it. */
export interface Around {
  readonly facts: Facts;
  /** Lines of words over the table, the nearest first, then the sheet's name. */
  readonly words: readonly string[];
  /** The panel that form, heading or sheet name tell for all lines. */
  readonly panel: string;
}

/** Columns of which a blank cell means the same as above, where few of them are filled. */
const CARRIED: readonly Concept[] = [
  "panel",
  "date",
  "by",
  "instrument",
  "air",
  "temperature",
  "humidity",
  "name",
  "test",
  "part",
  "stage",
  "ratio",
];

/** Labels of lines that hold no readings but what counts for those above and below. */
const LIMIT_LINES: readonly Concept[] = ["minimum", "maximum", "limit", "required"];
const ASIDE_LINES: readonly Concept[] = [
  ...LIMIT_LINES,
  "temperature",
  "air",
  "humidity",
  "date",
  "by",
  "instrument",
  "result",
  "spread",
  "change",
  "remarks",
  "corrected",
  "factor",
  "due",
];

interface Line {
  readonly row: number;
  readonly cells: readonly Cell[];
  readonly facts: Facts;
  readonly banner: string | undefined;
}

/** A table on its way to be a block. */
interface Draft {
  readonly view: SheetView;
  readonly table: FoundTable;
  readonly columns: readonly SurveyColumn[];
  readonly around: Around;
}

const address = (view: SheetView, row: number, column: number) =>
  view.turned ? a1(column, row) : a1(row, column);

/** The lines of a table that hold records, with what banners between them say. */
function linesOf({ view, table, columns }: Draft): { lines: Line[]; aside: Line[] } {
  const { head, bottom, left, right } = table;
  const lines: Line[] = [];
  const aside: Line[] = [];
  let banner: { text: string; facts: Facts } | undefined;
  const label = columns.find(({ title, at }) => title === "" && at === left);
  for (let row = head + 1; row <= bottom; row++) {
    const cells: Cell[] = [];
    for (let at = left; at <= right; at++) {
      const cell = view.at(row, at);
      if (cell) cells.push(cell);
    }
    const [first] = cells;
    if (!first || isSummary(cells)) continue;
    if (cells.length === 1 && !isValue(first) && typeof first.value === "string") {
      banner = { text: first.text, facts: factsIn(first) };
      continue;
    }
    const line = { row, cells, facts: banner?.facts ?? NO_FACTS, banner: banner?.text };
    const named = label ? view.at(row, label.at) : undefined;
    const concept = named && conceptOf(named.text);
    if (concept !== undefined && ASIDE_LINES.includes(concept)) aside.push(line);
    else lines.push(line);
  }
  return { lines, aside };
}

/** The columns that hold readings, each with the kind of record that it belongs to. */
function readingsOf({ columns, around }: Draft): { column: SurveyColumn; kind: string }[] {
  const has = (concept: Concept) => columns.some((column) => column.concept === concept);
  const read = columns.filter(
    ({ concept, computed, unit }) =>
      concept === "reading" && (!computed || unit === undefined) && !computed,
  );
  const found = read.flatMap((column) => {
    const kind = kindOf(column.unit, [column.title, ...around.words]);
    return kind === undefined ? [] : [{ column, kind }];
  });
  const applied = columns.find(({ concept, computed }) => concept === "voltage" && !computed);
  const isWithstand =
    applied !== undefined &&
    (has("discharge") ||
      has("leakage") ||
      (found.length === 0 &&
        (has("duration") || around.words.some((text) => kindsIn(text).includes("withstand")))));
  if (isWithstand && applied) found.push({ column: applied, kind: "withstand" });
  const injected = columns.find(({ concept }) => concept === "secondary");
  if (injected && (has("primary") || has("ratio")) && !injected.computed)
    found.push({
      column: injected,
      kind: kindOf(injected.unit ?? "A", around.words) ?? "currentTransformer",
    });
  return found.length > 0 ? found : checksOf({ columns, around });
}

/** A list of checks has words to check and a column of answers. */
function checksOf({
  columns,
  around,
}: Pick<Draft, "columns" | "around">): { column: SurveyColumn; kind: string }[] {
  const answers = columns.filter(({ concept }) => concept === "result");
  const items = columns.some(
    ({ concept }) => concept === "part" || concept === "test" || concept === "name",
  );
  const named = around.words.flatMap(kindsIn);
  const kind = ["inspection", "function", "dimensions"].find((one) => named.includes(one));
  return items && kind !== undefined ? answers.map((column) => ({ column, kind })) : [];
}

/** How well a column beside a reading fits it: its own stage, phase and operation count, then nearness. */
const fit = (column: SurveyColumn, reading: SurveyColumn): number | undefined => {
  for (const key of ["stage", "position", "operation"] as const)
    if (column[key] !== undefined && reading[key] !== undefined && column[key] !== reading[key])
      return undefined;
  const same = (["stage", "position", "operation"] as const).filter(
    (key) => column[key] !== undefined && column[key] === reading[key],
  ).length;
  return same * 1000 - Math.abs(column.at - reading.at) + (column.at > reading.at ? 0.5 : 0);
};

const besideOf = (
  draft: Draft,
  reading: SurveyColumn,
  cellOf: (column: SurveyColumn) => Cell | undefined,
): Partial<Record<Concept, Cell>> => {
  const best = new Map<Concept, { column: SurveyColumn; fit: number }>();
  for (const column of draft.columns) {
    if (column.concept === undefined || column.at === reading.at) continue;
    const fits = fit(column, reading);
    const known = best.get(column.concept);
    if (fits !== undefined && (!known || fits > known.fit))
      best.set(column.concept, { column, fit: fits });
  }
  const beside: Partial<Record<Concept, Cell>> = {};
  for (const [concept, { column }] of best) {
    const cell = cellOf(column);
    if (cell)
      beside[concept] =
        cell.unit || column.unit === undefined ? cell : { ...cell, unit: column.unit };
  }
  return beside;
};

/** Cells of a line by column, with what a blank cell of a column that is written once stands for. */
const carrier = ({ view, columns }: Draft, lines: readonly Line[]) => {
  const sparse = new Set(
    columns
      .filter(({ concept, at }) => {
        if (concept === undefined || !CARRIED.includes(concept)) return false;
        const filled = lines.filter(({ row }) => view.shown(row, at)).length;
        return filled > 0 && filled < lines.length * 0.6;
      })
      .map(({ at }) => at),
  );
  const last = new Map<number, Cell>();
  let banner: string | undefined;
  return (line: Line) => {
    if (line.banner !== banner) {
      last.clear();
      banner = line.banner;
    }
    for (const at of sparse) {
      const cell = view.shown(line.row, at);
      if (cell) last.set(at, cell);
    }
    const held = new Map(last);
    return (column: SurveyColumn) => view.shown(line.row, column.at) ?? held.get(column.at);
  };
};

/** Limits that a line's own cells state. */
const limitsBeside = (
  beside: Partial<Record<Concept, Cell>>,
  unit: Unit | undefined,
  kind: string,
): Limit[] =>
  (["minimum", "maximum", "limit"] as const).flatMap((concept): Limit[] => {
    const cell = beside[concept];
    if (cell?.number === undefined) return [];
    const side = concept === "minimum" ? "least" : concept === "maximum" ? "most" : sideBy(kind);
    return [{ side, number: cell.number, unit: cell.unit ?? unit, address: cell.address }];
  });

/** On which side the limit of a kind lies where its title does not say. */
const LEAST: readonly string[] = ["insulation", "control", "cable", "indexCurve"];
const sideBy = (kind: string): Limit["side"] => (LEAST.includes(kind) ? "least" : "most");

const positionOf = (
  beside: Partial<Record<Concept, Cell>>,
  label: Cell | undefined,
  column: SurveyColumn,
): string =>
  [
    beside.part?.text,
    beside.position?.text,
    label?.text,
    column.position,
    beside.test && !beside.position && !column.position ? beside.test.text : undefined,
  ]
    .filter((text) => text !== undefined)
    .join(" ");

/** Columns that belong to the withstand test where a table has one beside other tests. */
const OF_WITHSTAND: readonly Concept[] = ["voltage", "duration", "leakage", "discharge"];

const without = (
  beside: Partial<Record<Concept, Cell>>,
  concepts: readonly Concept[],
): Partial<Record<Concept, Cell>> =>
  Object.fromEntries(
    Object.entries(beside).filter(([concept]) => !concepts.includes(concept as Concept)),
  );

/** Reads a table as records; undefined where it holds none that are known. */
export function readTable(draft: Draft): Block | undefined {
  const { view, table, columns, around } = draft;
  const readings = readingsOf(draft);
  if (readings.length === 0) return undefined;
  const { lines, aside } = linesOf(draft);
  const carried = carrier(draft, lines);
  const label = columns.find(({ title, at }) => title === "" && at === table.left);
  const entries: Entry[] = [];
  const isMixed = readings.some(({ kind }) => kind === "withstand");
  let panel = "";
  for (const line of lines) {
    const cellOf = carried(line);
    const panelColumn =
      columns.find(({ concept }) => concept === "panel") ??
      columns.find(({ concept }) => concept === "name");
    const named = panelColumn && cellOf(panelColumn)?.text;
    panel = named ?? (panelColumn ? panel : (line.banner ?? around.panel));
    for (const { column, kind } of readings) {
      const shown = view.shown(line.row, column.at);
      const cell = view.at(line.row, column.at);
      if (shown && !cell) continue;
      const all = besideOf(draft, column, cellOf);
      const beside = kind !== "withstand" && isMixed ? without(all, OF_WITHSTAND) : all;
      const labelled = label ? view.at(line.row, label.at) : undefined;
      const unit = cell?.unit ?? (labelled && unitIn(labelled.text)) ?? column.unit;
      const own = labelled
        ? kindOf(unit, [labelled.text, column.title, ...around.words])
        : undefined;
      const test = beside.test && kindOf(unit, [beside.test.text]);
      const ownKind = own ?? test ?? kind;
      entries.push({
        kind: ownKind,
        panel,
        position: positionOf(beside, lines.length > 1 ? labelled : undefined, column),
        stage: column.stage,
        operation: column.operation,
        line: line.row,
        column,
        address: address(view, line.row, column.at),
        ...(cell ? { cell } : {}),
        unit,
        beside,
        limits: [
          ...limitsBeside(beside, unit, ownKind),
          ...limitsAside(view, aside, column, unit, ownKind, label),
        ],
        facts: joinFacts(line.facts, around.facts),
      });
    }
  }
  if (!entries.some(({ cell }) => cell !== undefined)) return undefined;
  return blockOf(draft, entries, lines);
}

/** Limits in lines of their own, for the readings of their columns. */
const limitsAside = (
  view: SheetView,
  aside: readonly Line[],
  column: SurveyColumn,
  unit: Unit | undefined,
  kind: string,
  label: SurveyColumn | undefined,
): Limit[] =>
  aside.flatMap((line): Limit[] => {
    const named = label && view.at(line.row, label.at);
    const concept = named && conceptOf(named.text);
    const cell = view.shown(line.row, column.at);
    if (
      !named ||
      concept === undefined ||
      !LIMIT_LINES.includes(concept) ||
      cell?.number === undefined
    )
      return [];
    const side = concept === "minimum" ? "least" : concept === "maximum" ? "most" : sideBy(kind);
    return [
      {
        side,
        number: cell.number,
        unit: cell.unit ?? unitIn(named.text) ?? unit,
        address: cell.address,
      },
    ];
  });

function blockOf(
  { view, table, columns, around }: Draft,
  entries: readonly Entry[],
  lines: readonly Line[],
): Block {
  const kinds = [...new Set(entries.map(({ kind }) => kind))];
  const panels = [...new Set(entries.map(({ panel }) => panel).filter((panel) => panel !== ""))];
  const units = [...new Set(entries.flatMap(({ unit }) => unit ?? []))];
  const from = address(view, table.top, table.left);
  const to = address(view, table.bottom, table.right);
  return {
    sheet: view.name,
    range: `${from}:${to}`,
    kinds,
    panels,
    columns,
    entries,
    lines: lines.map(({ row }) => row),
    at: (line, column) => view.at(line, column),
    address: (line, column) => address(view, line, column),
    facts: around.facts,
    evidence: [
      `readings under ${[...new Set(entries.map(({ column }) => `"${column.title}"`))].slice(0, 4).join(", ")}`,
      ...(units.length > 0
        ? [`in ${units.map((unit) => `${unit} (${classOf(unit)})`).join(", ")}`]
        : []),
      ...(around.words[0] ? [`under "${around.words[0]}"`] : []),
    ].join("; "),
  };
}
