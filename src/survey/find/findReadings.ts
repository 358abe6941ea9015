import type { Unit } from "../../quantities/units";
import type { Around, Draft, Measure } from "../draft";
import type { Cell } from "../read/cells";
import { isPointOfTime } from "../understand/pointOfTime";
import { operationIn } from "../understand/stageIn";
import { isUnitText, unitIn } from "../understand/unitIn";
import { conceptOf, isWord, kindsIn } from "../words/sheetWords";
import type { Concept } from "../words/words";
import type { SurveyColumn } from "./block";
import { checkKindOf, classOf, kindOf } from "./kindOf";

/** Whether a column holds readings, by its title, or by its unit where its title says nothing. */
const isReading = ({ concept, unit, computed, numbers, title }: SurveyColumn): boolean =>
  !computed &&
  !isWord(title.slice(0, 300).replace(/[([].*$/, ""), "summary") &&
  !EXTENT.test(title) &&
  numbers &&
  (concept === "reading" || isOfTest(concept, unit));

/** Whether a column without a known title has a unit in which nothing but readings come. */
const isOfTest = (concept: Concept | undefined, unit: Unit | undefined): boolean =>
  concept === undefined &&
  unit !== undefined &&
  (unit === "ms" || MEASURED.includes(classOf(unit)));

/** How long or thick something is, and how often it has operated: nothing is tested for that. */
const EXTENT =
  /count|zähl|contador|compteur|عداد|^(?:(?:cable|route|run) )?(?:length|longueur|länge|kabellänge|longitud|largo|comprimento|size|section|sección|secção|querschnitt|طول)(?![\p{L}])/iu;

/** The kind of a reading in a log of mixed tests, until its line tells it. */
export const UNKNOWN = "";

/** Whether a table has a test or a unit of its own in every line; "Measured: L1 to earth" names no test. */
const isLog = ({ view, table, columns }: Draft): boolean =>
  columns.some(
    ({ concept, at }) =>
      concept === "unit" ||
      (concept === "test" &&
        Array.from({ length: table.bottom - table.head }, (_, index) =>
          view.at(table.head + 1 + index, at),
        ).some((cell) => cell && kindsIn(cell.text).length > 0)),
  );

/** Quantities whose columns are readings, whatever they are called. */
const MEASURED: readonly string[] = [
  "high resistance",
  "low resistance",
  "torque",
  "pressure",
  "length",
];

/** The columns that hold readings, each with the kind of record that it belongs to. */
export function readingsOf(draft: Draft): Measure[] {
  const { columns, around } = draft;
  // What is held against a ratio has no unit of a heading.
  const isRatio = (["ratio", "error"] as const).every((concept) =>
    columns.some((column) => column.concept === concept),
  );
  // Times that are expected in seconds are those of relays.
  const isOfRelays = columns.some(({ concept, unit }) => concept === "required" && unit === "s");
  const named = (column: SurveyColumn): Measure[] => {
    const unit = column.unit ?? (isRatio ? undefined : around.unit);
    const kind =
      column.kind ??
      kindOf(unit, {
        title: column.title,
        words: around.words,
        keys: columns
          .slice(0, 3)
          .filter(({ at }) => at !== column.at)
          .map(({ title }) => title),
      }) ??
      (isLog(draft) ? UNKNOWN : undefined);
    if (kind === undefined) return [];
    if (isShareOfKnee(column) && isExcitation(around)) return [{ column, kind: "excitation" }];
    return [{ column, kind: kind === "timing" && isOfRelays ? "protection" : kind }];
  };
  const isCurve = isOverTime(draft) || isTimed(columns);
  const typed = columns
    .filter(isReading)
    .flatMap(named)
    .map((measure) => (isCurve ? { ...measure, kind: "indexCurve" } : measure));
  const worked = columns.filter(
    ({ concept, computed, unit }) => computed && (concept === "reading" || isOfTest(concept, unit)),
  );
  const isTransformer = injectedOf(draft).length > 0;
  const found = likeBefore(typed.length > 0 ? typed : worked.flatMap(named)).map((measure) =>
    isTransformer ? { ...measure, kind: injectedOf(draft)[0]?.kind ?? measure.kind } : measure,
  );
  const levels = levelsOf(draft, found);
  found.push(...levels, ...injectedOf(draft), ...excitingOf(draft), ...releasesOf(draft));
  // Columns that are titled by what is measured alone, under a heading that tells the unit.
  const isPlain = ({ concept, numbers, computed, at, unit, title }: SurveyColumn) =>
    concept === undefined &&
    unit === undefined &&
    numbers &&
    !computed &&
    at > draft.table.left &&
    !isUnitText(title);
  const isTitled =
    !draft.view.turned &&
    found.some(
      ({ column: { position, lines } }) =>
        position !== undefined ||
        lines.some((line) => conceptOf(line) === "reading" && !isCircuit(line, around.unit)),
    );
  if (
    around.unit !== undefined &&
    !isTitled &&
    found.every(({ column }) => column.unit === undefined)
  )
    found.push(...columns.filter(isPlain).flatMap(named));
  // Insulation beside the withstand test of cables is that of the cables.
  const areCables = levels.some(({ kind }) => kind === "cable");
  const measured = areCables
    ? found.map((one) => (one.kind === "insulation" ? { ...one, kind: "cable" } : one))
    : found;
  return measured.length > 0 ? measured : checksOf(draft);
}

/** Whether a title is a circuit that insulation is read of, and no time: "Closing | Tripping | Motor" under "MΩ at 500 V DC". */
const isCircuit = (title: string, unit: Unit | undefined): boolean =>
  unit !== undefined &&
  classOf(unit) === "high resistance" &&
  operationIn([title]) !== undefined &&
  unitIn(title) === undefined;

/** What was measured after a test is of the kind that the same was of before it. */
const likeBefore = (measures: readonly Measure[]): Measure[] =>
  measures.map((measure) => {
    const { column } = measure;
    const before = measures.find(
      (one) =>
        column.stage === "after" &&
        one.column.stage === "before" &&
        one.column.position === column.position &&
        one.column.unit === column.unit,
    );
    return before ? { ...measure, kind: before.kind } : measure;
  });

/** Whether the lines of a table are minutes and seconds: one reading taken again and again. */
export const isOverTime = (draft: Draft): boolean => {
  const { view, table } = draft;
  const times = Array.from({ length: table.bottom - table.head }, (_, index) =>
    view.at(table.head + 1 + index, table.left),
  );
  return (
    times.filter((cell) => cell !== undefined && isTime(cell)).length >=
    Math.max(3, times.length * 0.5)
  );
};

/** Whether the columns of a table are times: four of them, or three with the index that comes of them. */
const isTimed = (columns: readonly SurveyColumn[]): boolean => {
  const times = new Set(
    columns.flatMap((column) =>
      isReading(column) && isPointOfTime(column.lines) ? [column.lines.at(-1)] : [],
    ),
  );
  return times.size >= (columns.some(({ concept }) => concept === "index") ? 3 : 4);
};

export const isTime = ({ unit }: Cell) => unit === "s" || unit === "min";

/** Whether what stands around a table speaks of exciting currents and of no withstand test. */
const isExcitation = ({ words }: Around): boolean => {
  const kinds = words.flatMap(kindsIn);
  return kinds.includes("excitation") && !kinds.includes("withstand");
};

/** A point of an exciting curve as a share of the knee: "50 %". */
const isShareOfKnee = ({ title, unit }: SurveyColumn): boolean =>
  unit === undefined && /^\d{1,3} ?%$/.test(title);

/** Currents that transformers draw at several voltages. */
const excitingOf = ({ columns, around }: Draft): Measure[] =>
  isExcitation(around)
    ? columns
        .filter(
          ({ concept, unit, numbers, computed }) =>
            concept === "leakage" && unit !== undefined && numbers && !computed,
        )
        .map((column) => ({ column, kind: "excitation" }))
    : [];

/** The voltages at which the releases of a drive work. */
const releasesOf = ({ columns, around }: Draft): Measure[] =>
  columns
    .filter(
      ({ concept, unit, operation, computed }) =>
        (concept === "voltage" || concept === undefined) &&
        unit === "V" &&
        operation !== undefined &&
        !computed,
    )
    .flatMap((column) => {
      const kind = kindOf("V", { title: column.title, words: around.words });
      return kind === "mechanism" || kind === "protection" ? [{ column, kind }] : [];
    });

/** Whether a column can be one of test levels: volts of control circuits are none. */
const isHigh = ({ view, table }: Draft, { at, unit, operation }: SurveyColumn): boolean => {
  if (operation !== undefined) return false;
  if (unit !== "V") return true;
  const volts = Array.from({ length: table.bottom - table.head }, (_, index) =>
    view.at(table.head + 1 + index, at),
  ).flatMap((cell) => cell?.number ?? []);
  return volts.some((number) => number >= 1000);
};

/** The phases for which a line tells one level and how long each was held; a level of one phase or of all is one test. */
const heldBy = (
  columns: readonly SurveyColumn[],
  { position }: SurveyColumn,
): readonly (string | undefined)[] => {
  const held = columns.flatMap((one) =>
    one.concept === "duration" && one.position !== undefined ? [one.position] : [],
  );
  return position === undefined && held.length > 1 ? held : [position];
};

/** The column of test levels, where the table is one of withstand tests. */
function levelsOf(draft: Draft, found: readonly Measure[]): Measure[] {
  const { columns, around } = draft;
  const has = (concept: Concept) => columns.some((column) => column.concept === concept);
  const applied = columns.filter(
    (column) => column.concept === "voltage" && !column.computed && isHigh(draft, column),
  );
  const isNamed = around.words.some((text) => kindsIn(text).includes("withstand"));
  const isWithstand =
    applied.some(({ title }) => kindsIn(title).includes("withstand")) ||
    has("discharge") ||
    has("leakage") ||
    (found.length === 0 && (has("duration") || isNamed));
  if (
    applied.length === 0 ||
    !isWithstand ||
    isExcitation(around) ||
    (isLog(draft) && found.length > 0)
  )
    return [];
  const kind = around.words.flatMap(kindsIn).find((one) => one === "cable") ?? "withstand";
  return applied.flatMap((column) =>
    heldBy(columns, column).map((position) => ({
      column: position === undefined ? column : { ...column, position },
      kind,
    })),
  );
}

/** The secondary currents or voltages of instrument transformers. */
function injectedOf({ columns, around }: Draft): Measure[] {
  const secondaries = columns.filter(
    ({ concept, computed }) => concept === "secondary" && !computed,
  );
  const injected = secondaries.at(-1);
  const isTransformer = columns.some(({ concept }) => concept === "primary" || concept === "ratio");
  const isTyped = columns.some((column) => isReading(column) && column.unit === injected?.unit);
  return injected && isTransformer && !isTyped
    ? [
        {
          column: injected,
          kind:
            kindOf(injected.unit ?? "A", { title: injected.title, words: around.words }) ??
            "currentTransformer",
        },
      ]
    : [];
}

/** A list of checks has words to check and columns of answers. */
function checksOf({ columns, around }: Draft): Measure[] {
  const answers = columns.filter(({ concept }) => concept === "result");
  const items = columns.some(
    ({ concept }) => concept === "part" || concept === "test" || concept === "name",
  );
  if (answers.length === 0 || (answers.length < 2 && !items)) return [];
  const kind = checkKindOf([...around.words, ...answers.map(({ title }) => title)]);
  return answers.map((column) => ({ column, kind }));
}
