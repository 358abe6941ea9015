import type { Unit } from "../../quantities/units";
import type { Beside, CellOf, Draft, Line } from "../draft";
import { type Cell, quantityIn } from "../read/cells";
import { conceptOf } from "../words/sheetWords";
import type { Concept } from "../words/words";
import type { SurveyColumn } from "./block";
import { quantitiesIn } from "./findFacts";
import { LIMIT_LINES } from "./findLines";
import { sharesName } from "./shareNames";

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

/** What tells columns apart; "A" beside "A-Gnd" is the same place. */
const keyOf = (
  column: SurveyColumn,
  key: "panel" | "stage" | "position" | "operation",
): string | undefined => (key === "position" ? column.position?.replace(/-E$/, "") : column[key]);

/** How well a column beside a reading fits it: its own stage, phase and operation count, then nearness. */
const fitOf = (column: SurveyColumn, reading: SurveyColumn): number | undefined => {
  const keys = ["panel", "stage", "position", "operation"] as const;
  if (
    keys.some(
      (key) =>
        column[key] !== undefined &&
        reading[key] !== undefined &&
        keyOf(column, key) !== keyOf(reading, key),
    )
  )
    return undefined;
  const same = keys.filter(
    (key) => column[key] !== undefined && keyOf(column, key) === keyOf(reading, key),
  ).length;
  const group = column.group !== undefined && column.group === reading.group ? 100 : 0;
  // The result of the line goes before an answer that stands nearer.
  const titled = column.concept === "result" && conceptOf(column.title) === "result" ? 50 : 0;
  return (
    same * 1000 +
    group +
    titled -
    Math.abs(column.at - reading.at) +
    (column.at > reading.at ? 0.5 : 0)
  );
};

/** Whether a limit is that of another column by its name, "PI least" beside "PI", or by where it stands. */
const isOfAnother = (
  columns: readonly SurveyColumn[],
  limit: SurveyColumn,
  reading: SurveyColumn,
): boolean =>
  (limit.bounds !== undefined && !limit.bounds.includes(reading.at)) ||
  (limit.concept !== undefined &&
    LIMIT_LINES.includes(limit.concept) &&
    !sharesName(limit.title, reading.title) &&
    columns.some(
      ({ at, title, numbers, concept }) =>
        numbers &&
        at !== limit.at &&
        (concept === undefined || concept === "index") &&
        sharesName(limit.title, title),
    ));

/** Whether corrected values are those of another reading: of the one before them, where there is one before and one after the withstand test. */
const isCorrectedOfAnother = (
  columns: readonly SurveyColumn[],
  { concept, stage, at, position }: SurveyColumn,
  reading: SurveyColumn,
): boolean => {
  if (concept !== "corrected" || stage !== undefined || reading.stage === undefined) return false;
  const owner = columns.findLast(
    (one) =>
      one.at < at &&
      one.numbers &&
      (one.concept === undefined || one.concept === "reading") &&
      one.position === position,
  );
  return owner?.stage !== undefined && owner.stage !== reading.stage;
};

export const besideOf = ({ columns }: Draft, reading: SurveyColumn, cellOf: CellOf): Beside => {
  const best = new Map<Concept, { column: SurveyColumn; fit: number }>();
  for (const column of columns) {
    if (column.concept === undefined || column.at === reading.at) continue;
    if (isOfAnother(columns, column, reading) || isCorrectedOfAnother(columns, column, reading))
      continue;
    const fits = fitOf(column, reading);
    const known = best.get(column.concept);
    if (fits !== undefined && (!known || fits > known.fit))
      best.set(column.concept, { column, fit: fits });
  }
  const beside: Beside = {};
  for (const [concept, { column }] of best) {
    const cell = cellOf(column);
    if (cell) beside[concept] = withNumber(cell, concept, column.unit);
  }
  return beside;
};

/** Concepts whose cells may hold their number among words: "5 kV DC", "≥ 2 GΩ". */
const IN_WORDS: readonly Concept[] = [
  "voltage",
  "current",
  "duration",
  "limit",
  "minimum",
  "maximum",
  "required",
];

/** A bound with a word beside it: "60 max", "min. 20", "±5 %"; "20 min" is no time here. */
const BOUND =
  /^(?:max|min|maximum|minimum|m[aá]x|m[ií]n|mind|höchstens|mindestens)?\.?\s*[<>≤≥±]?\s*(\d[\d.,]*)\s*(\S*?)\s*(?:max|min|maximum|minimum|m[aá]x|m[ií]n|mind)?\.?$/iu;

const withoutBound = (cell: Cell): Cell => {
  if (typeof cell.value !== "string" || (cell.number !== undefined && cell.unit !== "min"))
    return cell;
  const [, digits = "", after = ""] = BOUND.exec(cell.text) ?? [];
  const read = quantityIn(`${digits} ${after}`.trim());
  return read ? { ...cell, number: read.number, unit: read.unit } : cell;
};

/** A cell with its number and unit, taken out of its words where it has to be. */
export const withNumber = (written: Cell, concept: Concept, unit: Unit | undefined): Cell => {
  const cell = LIMIT_LINES.includes(concept) ? withoutBound(written) : written;
  // "1.5 min" is a least value here, and no time.
  const isOwn =
    cell.unit !== undefined || unit === undefined || (cell !== written && unit === "min");
  if (cell.number !== undefined) return isOwn ? cell : { ...cell, unit };
  if (!IN_WORDS.includes(concept)) return cell;
  const [quantity] = quantitiesIn(cell.text);
  return quantity ? { ...cell, number: quantity.number, unit: quantity.unit } : cell;
};

/** Cells of a line by column, with what a blank cell of a column that is written once stands for. */
export const carrier = ({ view, columns }: Draft, lines: readonly Line[]) => {
  const sparse = columns
    .filter(({ concept, at }) => {
      if (concept === undefined || !CARRIED.includes(concept)) return false;
      const filled = lines.filter(({ row }) => view.shown(row, at)).length;
      return filled > 0 && filled < lines.length * 0.6;
    })
    .map(({ at }) => at);
  const last = new Map<number, Cell>();
  let banner: string | undefined;
  return (line: Line): CellOf => {
    if (line.banner !== banner) last.clear();
    banner = line.banner;
    for (const at of sparse) {
      const cell = view.shown(line.row, at);
      if (cell) last.set(at, cell);
    }
    const held = new Map(last);
    return (column) => view.shown(line.row, column.at) ?? held.get(column.at);
  };
};
