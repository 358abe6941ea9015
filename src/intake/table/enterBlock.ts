import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import type { Unit } from "../../quantities/units";
import { doubled, firstAlike } from "../columns/alikeColumns";
import { asInstrument } from "../columns/asInstrument";
import { chosenCells } from "../columns/chosenCells";
import { asPart, asPoles, asStage } from "../columns/columnsByCells";
import { headingUnit, withHeadingUnit } from "../columns/headingUnit";
import { namesBelow, namesHeld } from "../columns/namesBelow";
import { type RowWithUnits, unitsBeside } from "../columns/unitsBeside";
import { type Unpivoted, unpivot } from "../columns/unpivot";
import type { TextRow } from "../text/delimited";
import { wholeRow } from "../text/textCells";
import type { Knowledge } from "../understand/knowledge";
import { partsSpoken } from "../understand/partsSpoken";
import { understand } from "../understand/understand";
import { lostInTitle } from "../words/lostUnit";
import { plainWords } from "../words/plainWords";
import { isOpen } from "../words/sensedWords";
import { sensesOf } from "../words/senses";
import { titleKey, titleKeys } from "../words/titleKeys";
import type { ExportColumn } from "../words/titles";
import { asAnswered, type Evidence } from "./evidence";
import type { ExportOptions, Shape } from "./exportOptions";
import type { ExportBlock } from "./exportTable";
import type { Block } from "./facts";
import type { Head, LayoutOptions } from "./head";
import { type LayoutPart, layout } from "./layout";
import { factsOf } from "./writtenFacts";

/** A block of a file as it is read: its columns understood, and its wide lines unpivoted. */
export interface EnteredBlock {
  readonly exported: ExportBlock;
  /** The block with its columns as they stand in the file. */
  readonly block: Block;
  /** The columns that lines are read by. */
  readonly columns: readonly ExportColumn[];
  readonly unpivoted: Unpivoted;
  readonly shape: Evidence<Shape>;
  /** The unit of its readings, where a heading over it tells it and their titles do not. */
  readonly unit?: Unit;
  /** Why it cannot be read: columns that read alike. */
  readonly refused: Said<Told> | undefined;
}

/**
 * Makes the reader of a file's blocks, which makes sure by their cells what their titles leave open.
 *
 * @param rows reads the file from the start
 * @param first its first rows
 */
export const blockReader = (
  rows: () => Iterable<TextRow>,
  first: readonly TextRow[],
  head: Head,
  how: LayoutOptions,
  options: ExportOptions,
): ((found: Block) => EnteredBlock) => {
  const { guess, shape, heading: givenHeading } = options;
  const below = new Set((options.down ?? []).map(plainWords));
  const guessed = guess && rowsByHead(layout(rows(), head, how));
  const withInstrument = (columns: readonly ExportColumn[], { line }: Head) =>
    guessed && guess
      ? firstAlike(asInstrument(columns, guessed.get(line) ?? [], guess.instruments, how.given))
      : columns;
  const withNames = (columns: readonly ExportColumn[], { line }: Head) =>
    guessed && !guess?.apart.has(line)
      ? namesBelow(columns, guessed.get(line) ?? [])
      : columns.map((column) =>
          below.has(plainWords(column.title)) ? { ...column, below: true as const } : column,
        );
  return (found) => {
    const known = options.knows && understoodBlock(found, options, options.knows);
    if (known) return known;
    const staged = asStage(withoutOpen(found.head.columns), found, first);
    const named = withNames(withInstrument(staged, found.head), found.head);
    const heading = givenHeading ?? headingUnit(found.title);
    const measuredIn = (columns: readonly ExportColumn[]) =>
      withHeadingUnit(
        asPart(asPoles(columns, found, first, heading), found, first, how.given),
        heading,
      );
    const block = { ...found, head: { ...found.head, columns: measuredIn(named) } };
    const columns = measuredIn(shape === "long" ? withoutPhases(named) : named);
    const unpivoted = unpivot(columns, options.blanks);
    const isWide = unpivoted.columns !== columns;
    const { constants } = options;
    const isMeasuredIn = block.head.columns.some(({ unit }, at) => unit !== named[at]?.unit);
    return {
      exported: {
        title: block.title,
        line: block.head.line,
        header: Object.fromEntries(block.facts.map(({ key, value }) => [key, value])),
        columns: unpivoted.columns,
        shape: isWide ? "wide" : "long",
        ...(constants && withConstants(block.facts, constants)),
      },
      block,
      columns,
      unpivoted,
      shape: shapeSeen(isWide, shape),
      ...(isMeasuredIn && heading && { unit: heading.unit }),
      refused: doubled(columns),
    };
  };
};

/** What stands over a table, and what is said for all its lines. */
const withConstants = (
  facts: Block["facts"],
  { kind, facts: said }: NonNullable<ExportOptions["constants"]>,
): Pick<ExportBlock, "kind" | "facts"> => ({
  ...(kind === undefined ? {} : { kind }),
  facts: [...factsOf(Object.fromEntries(facts.map(({ key, value }) => [key, value]))), ...said],
});

/** Titles that were seen to speak of something, of which it did not become known what. */
const withoutOpen = (columns: readonly ExportColumn[]): readonly ExportColumn[] =>
  columns.map((column) => (isOpen(column.field) ? { ...column, field: undefined } : column));

/** A block as it is read by all that the workbook tells; undefined where that tells nothing of it. */
const understoodBlock = (
  found: Block,
  { name, shape, blanks, mapping = {}, constants }: ExportOptions,
  knows: Knowledge,
): EnteredBlock | undefined => {
  const { head, headings, notes, above, facts, sample, title } = found;
  const keys = titleKeys(head.columns.map((column) => column.title));
  const said = new Set(Object.keys(mapping).map(titleKey));
  const given = new Set(
    keys.flatMap((names, at) => (names.some((key) => said.has(key)) ? at : [])),
  );
  const understood = understand(
    {
      ...{ titles: head.texts, units: head.unitTexts, rows: sample },
      ...{ headings, notes, above, facts, file: name },
      ...{ columns: withoutOpen(head.columns), given, constants: constants?.facts ?? [] },
    },
    ofKind(knows, constants?.kind),
  );
  if (understood === undefined) return undefined;
  // What the user has said of titles, and units that have lost a sign, are told by the titles alone.
  const isTold = given.size > 0 || head.texts.flat().some((text) => lostInTitle(text));
  if ("why" in understood) return isTold ? undefined : openBlock(found, understood.why);
  const below = withoutHeld(
    namesBelow(
      understood.columns,
      sample.map((cells, line) => ({ line, cells })),
    ),
    constants,
  );
  const columns = shape === "long" ? withoutPhases(below) : below;
  const unpivoted = unpivot(columns, blanks);
  const isWide = unpivoted.columns !== columns;
  return {
    exported: {
      title,
      line: head.line,
      header: Object.fromEntries(facts.map(({ key, value }) => [key, value])),
      columns: unpivoted.columns,
      shape: isWide ? "wide" : "long",
      kind: understood.kind.id,
      facts: understood.facts,
      about: partsSpoken(
        [
          ...headings,
          ...testsSaid(facts),
          name.replace(/[_.]/g, " "),
          ...columns.flatMap(partTitle),
        ].join(" ; "),
      ),
    },
    block: { ...found, head: { ...head, columns } },
    columns,
    unpivoted,
    shape: shapeSeen(isWide, shape),
    refused: doubled(columns),
  };
};

/** Columns of which a blank cell says what is said for all lines, and not what stands above it. */
const withoutHeld = (
  columns: readonly ExportColumn[],
  constants: ExportOptions["constants"],
): readonly ExportColumn[] =>
  columns.map(({ below, ...column }) =>
    below && !constants?.facts.some(({ field }) => field === column.field)
      ? { ...column, below }
      : column,
  );

/** How the test of a block is called on its lines, or over them. */
const testsSaid = (facts: Block["facts"]): readonly string[] =>
  facts.flatMap(({ key, value }) => (sensesOf(key).senses.has("test") ? value : []));

/** What the workbook tells of one record kind alone, where one is said. */
const ofKind = (knows: Knowledge, id: string | undefined): Knowledge =>
  id === undefined ? knows : { ...knows, kinds: knows.kinds.filter(({ kind }) => kind.id === id) };

/** The title of parts, or of what nothing is read from, says which sort is meant: "Breaker" over "52", "Breaker serial"; that of panels where it is "Breaker" alone. */
const partTitle = ({ field, title }: ExportColumn) =>
  field === "part" || field === undefined || (field === "object" && isOfBreakers(title))
    ? title
    : [];

const isOfBreakers = (title: string): boolean => {
  const { senses } = sensesOf(title);
  return (
    senses.has("breaker") && [...senses].every((sense) => sense === "breaker" || sense === "number")
  );
};

/** A block of which nothing is taken until somebody says what it is. */
const openBlock = (found: Block, open: Said<Told>): EnteredBlock => {
  const columns = withoutOpen(found.head.columns);
  return {
    exported: {
      title: found.title,
      line: found.head.line,
      header: Object.fromEntries(found.facts.map(({ key, value }) => [key, value])),
      columns,
      shape: "long",
      open,
    },
    block: { ...found, head: { ...found.head, columns } },
    columns,
    unpivoted: { columns },
    shape: shapeSeen(false, undefined),
    refused: undefined,
  };
};

/** Makes the reader of a table's lines with what stands above and beside for them: joined, held, units. */
export const wholeLine = (columns: readonly ExportColumn[]): ((row: TextRow) => RowWithUnits) => {
  const own = columns.filter(({ from }) => from === undefined);
  const measured = own.map((column) => ({ ...column, field: fieldChosen(column, columns) }));
  const [hold, beside, choose] = [namesHeld(own), unitsBeside(measured), chosenCells(columns)];
  return (row) => {
    const joined = wholeRow(row);
    const held = hold?.(joined) ?? joined;
    const whole = beside?.(held) ?? held;
    return choose?.(whole) ?? whole;
  };
};

/** What a column holds, or what is chosen from it by the line: its unit is that of either. */
const fieldChosen = ({ index, field }: ExportColumn, columns: readonly ExportColumn[]) =>
  field ?? columns.find(({ from }) => from && !("part" in from) && from.column === index)?.field;

/** The lines of readings below each line of titles. */
const rowsByHead = (parts: Iterable<LayoutPart>): ReadonlyMap<number, readonly TextRow[]> => {
  const byHead = new Map<number, TextRow[]>();
  let rows: TextRow[] = [];
  for (const { block, row } of parts)
    if (block) {
      rows = byHead.get(block.head.line) ?? [];
      byHead.set(block.head.line, rows);
    } else if (row) rows.push(row);
  return byHead;
};

/** Set to be long, a table's phases are no more than titles. */
const withoutPhases = (columns: readonly ExportColumn[]) =>
  columns.map(({ says: _says, ...column }) => column);

const shapeSeen = (wide: boolean, answered: Shape | undefined): Evidence<Shape> =>
  answered
    ? asAnswered(answered, ({ intake }) => intake.seen.shapes[answered])
    : wide
      ? { value: "wide", evidence: ({ intake }) => intake.seen.wide, confidence: "likely" }
      : { value: "long", evidence: ({ intake }) => intake.seen.long, confidence: "certain" };
