import { readUnit } from "../quantities/readUnit";
import type { Unit } from "../quantities/units";
import type { Block, Entry, Facts, Limit, Stage, SurveyColumn } from "./block";
import { type Cell, isValue, quantityIn, type SheetView } from "./cells";
import { factsIn, joinFacts, NO_FACTS, quantitiesIn } from "./findFacts";
import type { FoundTable } from "./findTables";
import { checkKindOf, classOf, kindOf } from "./kindOf";
import { boundInTitle, isAggregate, isSummary, operationIn, stageIn } from "./nameColumns";
import { isPointOfTime } from "./pointOfTime";
import { sharesName } from "./shareNames";
import { isUnitText, unitIn } from "./unitIn";
import { conceptOf, hasWord, isWord, kindsIn } from "./words/sheetWords";
import type { Concept } from "./words/words";

/** What stands around a table and counts for it. */
interface Around {
  readonly facts: Facts;
  /** Lines of words that belong to the table. */
  readonly heading: readonly Cell[];
  /** Lines of words over the table, the nearest first, then the sheet's name. */
  readonly words: readonly string[];
  /** The panel that form, heading or sheet name tell for all lines. */
  readonly panel: string;
  /** The unit of values whose titles carry none. */
  readonly unit?: Unit;
  readonly stage?: Stage;
  /** Cells that somebody has pointed at, which hold for lines that say none themselves. */
  readonly pointed?: Beside;
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

const cellsOf = ({ view, table: { left, right } }: Draft, row: number): Cell[] =>
  Array.from({ length: right - left + 1 }, (_, index) => view.at(row, left + index)).flatMap(
    (cell) => cell ?? [],
  );

/** Whether a line states limits or conditions for the others: its label says so. */
const isAsideLine = (cells: readonly Cell[], label: Cell | undefined): boolean => {
  const named = label && conceptOf(label.text);
  if (named !== undefined && ASIDE_LINES.includes(named)) return true;
  const first =
    cells[0] && typeof cells[0].value === "string" ? conceptOf(cells[0].text) : undefined;
  return first !== undefined && (LIMIT_LINES.includes(first) || first === "remarks");
};

/** Words at the beginning of a line that is about the columns: who measured them, when, and what came of it. */
const OF_COLUMNS: readonly (Concept | undefined)[] = [
  "date",
  "by",
  "tester",
  "result",
  "instrument",
];

/** The few lines of a table that begin with such a word; none where many do, since that is what its first column holds. */
const namedLines = (draft: Draft): ReadonlySet<number> => {
  const { view, table } = draft;
  const rows = Array.from(
    { length: table.bottom - table.head },
    (_, index) => table.head + 1 + index,
  );
  const named = rows.filter((row) => {
    const cell = view.at(row, table.left);
    return (
      cell !== undefined &&
      typeof cell.value === "string" &&
      !isValue(cell) &&
      OF_COLUMNS.includes(conceptOf(cell.text))
    );
  });
  return new Set(named.length <= rows.length * 0.4 ? named : []);
};

/** The lines of a table that hold records, with what banners between them say. */
function linesOf(draft: Draft): { lines: Line[]; aside: Line[] } {
  const { view, table } = draft;
  const lines: Line[] = [];
  const aside: Line[] = [];
  let banner: { text: string; facts: Facts } | undefined;
  const label = labelOf(draft);
  const named = namedLines(draft);
  for (let row = table.head + 1; row <= table.bottom; row++) {
    const cells = cellsOf(draft, row);
    const [first] = cells;
    if (!first) continue;
    const isBanner = cells.length === 1 && !isValue(first) && typeof first.value === "string";
    if (isBanner) banner = { text: first.text, facts: factsIn(first) };
    const line = { row, cells, facts: banner?.facts ?? NO_FACTS, banner: banner?.text };
    if (isAsideLine(cells, label && view.at(row, label.at)) || named.has(row)) aside.push(line);
    else if (!isBanner && !isSummary(cells)) lines.push(line);
  }
  // A line with a fraction of the cells of the others is a note or a count at the foot of the table.
  const filled = lines.map(({ cells }) => cells.length).sort((one, other) => one - other);
  const usual = filled[Math.floor(filled.length / 2)] ?? 0;
  const isLine = ({ cells }: Line) =>
    (cells.length >= Math.min(3, usual) || isAnswered(draft, cells)) && cells.length > usual * 0.3;
  return { lines: lines.filter(isLine), aside };
}

/** Whether a line with a blank or two is one of records all the same: its result stands there. */
const isAnswered = ({ view, columns }: Draft, cells: readonly Cell[]): boolean =>
  cells.length > 1 &&
  cells.some(
    (cell) =>
      isValue(cell) &&
      columns.some(({ at, concept }) => concept === "result" && at === view.columnOf(cell)),
  );

/** A column of labels: without a title, or with units in most of its words. */
const labelOf = ({ view, columns, table }: Draft): SurveyColumn | undefined =>
  columns.find(({ title, at, numbers, concept }) => {
    if (at === table.left && columns.some(({ panel }) => panel !== undefined)) return true;
    if (at !== table.left || (title !== "" && (numbers || concept === "panel"))) return false;
    const words = Array.from({ length: table.bottom - table.head }, (_, index) =>
      view.at(table.head + 1 + index, at),
    );
    const told = words.filter(
      (cell) =>
        cell !== undefined &&
        cell.number === undefined &&
        !/^\p{Lu}\p{Ll}{2,}$/u.test(cell.text) &&
        unitIn(cell.text) !== undefined,
    );
    return title === "" || (told.length > 0 && told.length >= words.length * 0.5);
  });

interface Measure {
  readonly column: SurveyColumn;
  readonly kind: string;
}

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
const UNKNOWN = "";

/** Whether a table has a test or a unit of its own in every line. */
const isLog = (columns: readonly SurveyColumn[]): boolean =>
  columns.some(({ concept }) => concept === "test" || concept === "unit");

/** Quantities whose columns are readings, whatever they are called. */
const MEASURED: readonly string[] = [
  "high resistance",
  "low resistance",
  "torque",
  "pressure",
  "length",
];

/** The columns that hold readings, each with the kind of record that it belongs to. */
function readingsOf(draft: Draft): Measure[] {
  const { columns, around } = draft;
  // What is held against a ratio has no unit of a heading.
  const isRatio = (["ratio", "error"] as const).every((concept) =>
    columns.some((column) => column.concept === concept),
  );
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
      (isLog(columns) ? UNKNOWN : undefined);
    return kind === undefined ? [] : [{ column, kind }];
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
  const found = (typed.length > 0 ? typed : worked.flatMap(named)).map((measure) =>
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
        position !== undefined || lines.some((line) => conceptOf(line) === "reading"),
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

/** Whether the lines of a table are minutes and seconds: one reading taken again and again. */
const isOverTime = (draft: Draft): boolean => {
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

const isTime = ({ unit }: Cell) => unit === "s" || unit === "min";

/** Whether what stands around a table speaks of exciting currents and of no withstand test. */
const isExcitation = ({ words }: Around): boolean => {
  const kinds = words.flatMap(kindsIn);
  return kinds.includes("excitation") && !kinds.includes("withstand");
};

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
        concept === "voltage" && unit === "V" && operation !== undefined && !computed,
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
    (isLog(columns) && found.length > 0)
  )
    return [];
  const kind = around.words.flatMap(kindsIn).find((one) => one === "cable");
  return applied.map((column) => ({ column, kind: kind ?? "withstand" }));
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

/** How well a column beside a reading fits it: its own stage, phase and operation count, then nearness. */
const fitOf = (column: SurveyColumn, reading: SurveyColumn): number | undefined => {
  const keys = ["panel", "stage", "position", "operation"] as const;
  if (
    keys.some(
      (key) =>
        column[key] !== undefined && reading[key] !== undefined && column[key] !== reading[key],
    )
  )
    return undefined;
  const same = keys.filter(
    (key) => column[key] !== undefined && column[key] === reading[key],
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

type Beside = Partial<Record<Concept, Cell>>;
type CellOf = (column: SurveyColumn) => Cell | undefined;

/** Whether a limit is that of another column by its name: "PI least" beside "PI". */
const isOfAnother = (
  columns: readonly SurveyColumn[],
  limit: SurveyColumn,
  reading: SurveyColumn,
): boolean =>
  limit.concept !== undefined &&
  LIMIT_LINES.includes(limit.concept) &&
  !sharesName(limit.title, reading.title) &&
  columns.some(
    ({ at, title, numbers, concept }) =>
      numbers &&
      at !== limit.at &&
      (concept === undefined || concept === "index") &&
      sharesName(limit.title, title),
  );

const besideOf = ({ columns }: Draft, reading: SurveyColumn, cellOf: CellOf): Beside => {
  const best = new Map<Concept, { column: SurveyColumn; fit: number }>();
  for (const column of columns) {
    if (column.concept === undefined || column.at === reading.at) continue;
    if (isOfAnother(columns, column, reading)) continue;
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
const withNumber = (written: Cell, concept: Concept, unit: Unit | undefined): Cell => {
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
const carrier = ({ view, columns }: Draft, lines: readonly Line[]) => {
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

/** On which side the limit of a kind lies where its title does not say. */
const LEAST: readonly string[] = ["insulation", "control", "cable", "indexCurve"];
const sideBy = (kind: string): Limit["side"] => (LEAST.includes(kind) ? "least" : "most");

const sideOf = (concept: Concept, cell: Cell, kind: string): Limit["side"] => {
  const sign = /^\s*([<>≤≥])/.exec(cell.text)?.[1];
  if (sign) return /[>≥]/.test(sign) ? "least" : "most";
  const [least, most] = [hasWord(cell.text, "atLeast"), hasWord(cell.text, "atMost")];
  if (least !== most) return least ? "least" : "most";
  return concept === "minimum" ? "least" : concept === "maximum" ? "most" : sideBy(kind);
};

/** Two bounds in one cell: "40–60". */
const BOTH =
  /^(\d+(?:[.,]\d+)?)\s?(?:-|–|…|\.\.\.|to|bis|à|a|hasta|até|إلى)\s?(\d+(?:[.,]\d+)?)(?:\s|$)/u;

const boundsIn = (cell: Cell, concept: Concept, kind: string, unit: Unit | undefined): Limit[] => {
  const [, low = "", high = ""] = BOTH.exec(cell.text) ?? [];
  const [least, most] = [quantityIn(low)?.number, quantityIn(high)?.number];
  const { address, number } = cell;
  if (least !== undefined && most !== undefined && least < most)
    return [
      { side: "least", number: least, unit, address },
      { side: "most", number: most, unit, address },
    ];
  return number === undefined
    ? []
    : [{ side: sideOf(concept, cell, kind), number, unit: cell.unit ?? unit, address }];
};

/** Limits that a line's own cells state. */
const limitsBeside = (beside: Beside, unit: Unit | undefined, kind: string): Limit[] =>
  (["minimum", "maximum", "limit", "required"] as const).flatMap((concept): Limit[] => {
    const cell = beside[concept];
    if (!cell) return [];
    const isBound = /^\s*[<>≤≥]/.test(cell.text) || BOTH.test(cell.text);
    return concept === "required" && !isBound ? [] : boundsIn(cell, concept, kind, unit);
  });

/** Whether a cell is worked out as the highest or lowest of others: it sums up readings, and bounds none. */
const isExtreme = ({ formula }: Cell): boolean => formula !== undefined && isAggregate(formula);

/** Limits in lines of their own, for the readings of their columns. */
const limitsAside = (
  view: SheetView,
  aside: readonly Line[],
  column: SurveyColumn,
  unit: Unit | undefined,
  kind: string,
): Limit[] =>
  aside.flatMap((line): Limit[] => {
    const [named] = line.cells;
    const concept = named && conceptOf(named.text);
    const shown = view.shown(line.row, column.at);
    if (
      !named ||
      concept === undefined ||
      !LIMIT_LINES.includes(concept) ||
      !shown ||
      shown === named ||
      isExtreme(shown)
    )
      return [];
    const cell = withNumber(shown, concept, unitIn(named.text));
    return boundsIn(cell, concept, kind, unitIn(named.text) ?? unit);
  });

/** Bounds that a title states for what stands under it: "Contact resistance, µΩ (max 60)". */
const limitsInTitle = (
  { view, table }: Draft,
  { at, title }: SurveyColumn,
  unit: Unit | undefined,
): Limit[] => {
  const text = boundInTitle(title);
  const cell = text === undefined ? undefined : view.shown(table.head, at);
  return cell && text !== undefined
    ? factsIn({ ...cell, text }, unit).limits.filter(
        (limit) => !limit.unit || !unit || classOf(limit.unit) === classOf(unit),
      )
    : [];
};

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

/** One reading with what stands beside it; undefined where its cell is joined to another. */
function entryOf(
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
  const beside = isMixed ? without(all, OF_WITHSTAND) : all;
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

/** Whether a line has a reading or a place for one: dates and verdicts under all of several readings are about the columns. */
const holdsReadings = ({ view }: Draft, measures: readonly Measure[], row: number): boolean => {
  const asked = measures.filter(({ column: { concept } }) => concept !== "result");
  const cells = asked.flatMap(({ column: { at } }) => view.at(row, at) ?? []);
  return (
    asked.length < 3 ||
    cells.length < asked.length * 0.7 ||
    cells.some((cell) => (cell.number !== undefined && cell.day === undefined) || isGap(cell))
  );
};

/** Whether a cell stands for a reading that is not there. */
const isGap = ({ text }: Cell): boolean =>
  isWord(text, "notDone") || isWord(text, "notApplicable") || /^[-–—?.…/]+$/.test(text);

/** Reads a table as records; undefined where it holds none that are known. */
export function readTable(draft: Draft): Block | undefined {
  const { columns, around } = draft;
  const measures = readingsOf(draft);
  if (measures.length === 0) return undefined;
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
  return entries.some(({ cell }) => cell !== undefined)
    ? blockOf(draft, entries, lines)
    : undefined;
}

function blockOf(
  { view, table, columns, around }: Draft,
  entries: readonly Entry[],
  lines: readonly Line[],
): Block {
  const kinds = [...new Set(entries.map(({ kind }) => kind))];
  const panels = [...new Set(entries.map(({ panel }) => panel).filter((panel) => panel !== ""))];
  const units = [...new Set(entries.flatMap(({ unit }) => unit ?? []))];
  const titles = [...new Set(entries.map(({ column }) => `"${column.title}"`))];
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
    evidence: [
      `readings under ${titles.slice(0, 4).join(", ")}`,
      ...(units.length > 0 ? [`in ${units.join(", ")}`] : []),
      ...(around.words[0] ? [`under "${around.words[0]}"`] : []),
    ].join("; "),
  };
}

/** The range that two corners span, whichever way they are given. */
const rangeOf = (corners: readonly [string, string]): string => corners.join(":");
