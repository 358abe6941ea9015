import { readUnit } from "../../quantities/reading/readUnit";
import type { Unit } from "../../quantities/units";
import type { Around, Beside, CellOf, Draft, Line, Measure } from "../draft";
import type { Entry, SurveyColumn } from "../find/block";
import { besideOf } from "../find/findBeside";
import { joinFacts } from "../find/findFacts";
import { aimAside, limitsAside, limitsBeside, limitsInTitle } from "../find/findLimits";
import { labelOf } from "../find/findLines";
import { UNKNOWN } from "../find/findReadings";
import { kindOf } from "../find/kindOf";
import { operationIn, stageIn } from "../understand/stageIn";
import { unitIn } from "../understand/unitIn";
import { kindsIn } from "../words/sheetWords";
import type { Concept } from "../words/words";
import type { Cell } from "./cells";

/** Columns that belong to the withstand test where a table has one beside other tests. */
const OF_WITHSTAND: readonly Concept[] = ["voltage", "duration", "leakage", "discharge"];

const without = (beside: Beside, concepts: readonly Concept[]): Beside =>
  Object.fromEntries(
    Object.entries(beside).filter(([concept]) => !concepts.includes(concept as Concept)),
  );

/** Columns whose words tell what is measured of the panel. */
const NAMING: readonly Concept[] = ["part", "position"];

/** A place without the words that tell before or after: "R – earth, before". */
const withoutStage = (text: string | undefined): string | undefined =>
  text
    ?.split(/[,;(]/)
    .filter((part, index) => index === 0 || stageIn([part]) === undefined)
    .join(",");

/** What is measured of the panel, as it is written. */
const positionOf = (
  draft: Draft,
  { beside, label, column, cellOf, isOneOfMany }: Named,
): string => {
  const labelAt = label && labelOf(draft)?.at;
  const words = draft.columns
    .filter(
      ({ concept, at }) =>
        concept !== undefined && NAMING.includes(concept) && at !== column.at && at !== labelAt,
    )
    .map((named) => withoutStage(cellOf(named)?.text));
  const own = column.position ?? (isOneOfMany ? column.title : undefined);
  const isNamed = words.length > 0 || column.position !== undefined;
  return [...words, label?.text, own, isNamed ? undefined : beside.test?.text]
    .filter((text) => text !== undefined)
    .join(" ");
};

interface Named {
  readonly beside: Beside;
  readonly label: Cell | undefined;
  readonly column: SurveyColumn;
  readonly cellOf: CellOf;
  readonly isOneOfMany: boolean;
}

interface Reading {
  readonly measure: Measure;
  readonly line: Line;
  readonly panel: string;
  readonly cellOf: CellOf;
}

/** What stands beside a reading, with what a line of the table requires where its own does not. */
const withAim = (beside: Beside, aim: Cell | undefined): Beside =>
  aim && !beside.required ? { ...beside, required: aim } : beside;

/** One reading with what stands beside it; undefined where its cell is joined to another. */
export function entryOf(
  draft: Draft,
  { measure, line, panel, cellOf }: Reading,
  aside: readonly Line[],
  measures: readonly Measure[],
): Entry | undefined {
  const { view, around } = draft;
  const { column } = measure;
  const cell = view.at(line.row, column.at);
  if (!cell && view.shown(line.row, column.at)) return undefined;
  const all = { ...around.pointed, ...besideOf(draft, column, cellOf) };
  const label = labelOf(draft);
  const labelled = label && view.at(line.row, label.at);
  const unit = unitOf(cell, all, labelled, column, around);
  const kind = kindHere(measure, unit, all, labelled, around);
  const isLevel = column.concept === "voltage";
  const isMixed = !isLevel && measures.some((one) => one.column.concept === "voltage");
  const own = isMixed ? without(all, OF_WITHSTAND) : all;
  const beside = withAim(own, aimAside(view, aside, column, kind));
  const alike = measures.filter(
    (one) =>
      one.kind === measure.kind &&
      one.column.stage === column.stage &&
      one.column.operation === column.operation,
  );
  const limits = [
    ...limitsBeside(beside, unit, kind),
    ...limitsAside(view, aside, column, unit, kind),
    ...limitsInTitle(draft, column, unit),
  ];
  return {
    kind,
    panel,
    position: positionOf(draft, {
      beside,
      label: draft.table.bottom - draft.table.head > 1 ? labelled : undefined,
      column,
      cellOf,
      isOneOfMany: alike.length > 1,
    }),
    stage:
      column.stage ??
      (beside.stage && stageIn([beside.stage.text])) ??
      (beside.test && stageIn([beside.test.text])) ??
      (beside.position && stageIn([beside.position.text])) ??
      around.stage,
    operation:
      column.operation ??
      (beside.operation && operationIn([beside.operation.text])) ??
      (beside.test && operationIn([beside.test.text])),
    line: line.row,
    column,
    address: view.address(line.row, column.at),
    ...(cell ? { cell } : {}),
    unit,
    beside,
    limits,
    facts: joinFacts(line.facts, around.facts),
  };
}

/** The unit of a reading: its own, that of its line, of its title, of the heading. */
const unitOf = (
  cell: Cell | undefined,
  { unit }: Beside,
  label: Cell | undefined,
  column: SurveyColumn,
  around: Around,
): Unit | undefined => {
  const told = unit ? readUnit(unit.text) : undefined;
  return (
    cell?.unit ??
    (told?.ok ? told.value : undefined) ??
    (label && unitIn(label.text)) ??
    column.unit ??
    around.unit
  );
};

/** The kind of a reading: by the test that its line names, by its label, by its column. */
const kindHere = (
  { column, kind }: Measure,
  unit: Unit | undefined,
  { test }: Beside,
  label: Cell | undefined,
  { words }: Around,
): string => {
  if (column.kind !== undefined) return column.kind;
  if (test && kindsIn(test.text).length > 0)
    return kindOf(unit, { title: test.text, words: [] }) ?? kind;
  if (kind === "indexCurve") return kind;
  if (kind === UNKNOWN) return kindOf(unit, { title: "", words }) ?? UNKNOWN;
  if (label) return kindOf(unit, { title: label.text, words: [column.title, ...words] }) ?? kind;
  return unit === column.unit ? kind : (kindOf(unit, { title: column.title, words }) ?? kind);
};
