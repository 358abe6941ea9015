import type { Lineup } from "../../lineup/lineup";
import { KINDS } from "../../records/kinds";
import { rowsOf } from "../../records/rowsOf";
import type { LayoutMap } from "../../sheets/layoutMap";
import { recordTables } from "../../sheets/recordTable";
import type { SheetSnapshot, Snapshot } from "../../sheets/snapshot";
import type { ArrivalOptions, Say } from "../place/arrival";
import { arrivalsByRow } from "../place/arrivals";
import type { RecordRows } from "../place/recordRows";
import { agree, type Repeated } from "../place/resolveRepeats";
import type { TextRow } from "../table/delimited";
import { asAnswered, type Confidence } from "../table/evidence";
import type { Guess } from "../table/exportOptions";
import type { ExportTable } from "../table/exportTable";
import type { InspectedBlock } from "../table/inspection";
import { readRows } from "../table/readRows";
import { LEFT_OUT } from "../words/mappedTo";
import { STATED_NAMES, type StatedField, statedField } from "../words/statedColumns";
import { titleKey, titleKeys } from "../words/titleKeys";
import { columnBlocks, sheetRows } from "./sheetRows";

/** A map as it is guessed, and how sure that is: nothing is judged by it before somebody has looked. */
export interface GuessedMap {
  readonly map: LayoutMap;
  readonly confidence: Confidence;
  readonly evidence: string;
  readonly block: InspectedBlock;
}

/**
 * Guesses for every block with titles, on sheets that have no record table of ours, which records it
 * holds: by its titles and units, and by how many of its lines find a row of the lineup.
 *
 * @param say is told of blocks that are left out
 */
export const guessMaps = (
  snapshot: Snapshot,
  lineup: Lineup,
  say: SayUnread = () => {},
  said: SaidOfMaps = {},
): GuessedMap[] => {
  return foreignSheets(snapshot).flatMap((sheet) =>
    guessOn(sheet, lineup, snapshot.words, say, said),
  );
};

/** The sheets that have no record table of ours. */
const foreignSheets = (snapshot: Snapshot): SheetSnapshot[] => {
  const ours = new Set(recordTables(snapshot).map(({ table }) => table.sheet));
  return snapshot.sheets.filter(({ name }) => !ours.has(name));
};

/** What is known of blocks before they are guessed at: by title what a column means, by field what a name means. */
export interface SaidOfMaps {
  readonly columns?: Readonly<Record<string, string>>;
  readonly means?: ArrivalOptions["means"];
}

/** Is told of a block with titles none of whose lines finds a row: its sheet, the first such line, and why. */
export type SayUnread = (sheet: string, line: number, reason: string) => void;

const guessOn = (
  { name, cells }: SheetSnapshot,
  lineup: Lineup,
  words: Snapshot["words"],
  say: SayUnread,
  { columns, means }: SaidOfMaps,
): GuessedMap[] => {
  if (!cells) return [];
  const tables = KINDS.map((kind) => ({ kind, rows: rowsOf(kind, lineup) }));
  const instruments = new Set(
    lineup.instruments.flatMap(({ id, serial }) =>
      [id, serial].map((text) => text.trim().toLowerCase()),
    ),
  );
  return columnBlocks(cells).flatMap((region) => {
    const readWith = (guess: Guess) =>
      readRows(() => sheetRows(cells, region), asAnswered("", "the cells of a sheet"), {
        name,
        guess,
        mapping: columns,
        synonyms: words,
      });
    const arrivals = (table: ExportTable, say: Say) =>
      arrivalsByRow(table, tables, { panels: lineup.panels, means }, say);
    const held = readWith({ instruments, apart: new Set() });
    if (!held.ok) {
      const line = lineWith(sheetRows(cells, region), columns);
      if (line !== undefined)
        say(
          name,
          line,
          "has a title that was said to be one, and no other that is recognised; say what the others mean as well.",
        );
      return [];
    }
    const apart = doubledBlocks(
      held.value,
      arrivals(held.value, () => {}),
    );
    const read = apart.size === 0 ? held : readWith({ instruments, apart });
    if (!read.ok) return [];
    const lost = new Map<number, string>();
    const found = arrivals(read.value, (line, reason) => {
      if (!lost.has(line)) lost.set(line, reason);
    }).flat();
    const guessed = blockGuesses(read.value, found);
    const known = new Set(guessed.map(({ block }) => block.titles.value));
    const heads = [...new Set(read.value.inspection.blocks.map(({ titles }) => titles.value))];
    heads.forEach((head, at) => {
      const first = known.has(head) ? undefined : lostIn(lost, head, heads[at + 1]);
      if (first) say(name, ...first);
    });
    return guessed.map(({ kind, block: inspected, lines, last, facts }) => {
      const block = withStated(inspected, kind);
      const share = block.lines === 0 ? 0 : Math.min(1, lines / block.lines);
      const down = block.columns.flatMap(({ title, below }) => (below ? [title] : []));
      return {
        block,
        confidence: share >= 0.9 ? ("likely" as const) : ("open" as const),
        evidence: `${lines} of ${block.lines} lines find their row of ${kind}${share >= 0.9 ? "" : firstLost(lost, block.titles.value, last && last + 1)}`,
        map: {
          sheet: name,
          kind,
          titles: block.titles.value,
          ...(last !== undefined && { last }),
          left: region.left + 1,
          right: region.right + 1,
          titleLines: block.titleLines.value,
          units: block.units.value,
          shape: block.shape.value,
          ...(block.unit && { unit: block.unit }),
          ...(read.value.decimal.mark && { decimal: read.value.decimal.mark }),
          ...(read.value.dates && { dateOrder: read.value.dates }),
          columns: Object.fromEntries([
            ...block.columns.flatMap(({ title, name, field, says, alike }) =>
              field.value === undefined || title === ""
                ? alike === undefined && name === title && !isLeftOut(field)
                  ? []
                  : [[name, LEFT_OUT]]
                : [
                    [
                      name,
                      says
                        ? `${field.value} of ${[says.position, says.stage].filter(Boolean).join(" ")}`
                        : field.value,
                    ],
                  ],
            ),
          ]),
          ...(down.length > 0 && { down }),
          facts,
          ...(means && { means: means as LayoutMap["means"] }),
        } satisfies LayoutMap,
      };
    });
  });
};

/** The first line of a block that finds no row, and why; the block ends before the next titles. */
const lostIn = (
  lost: ReadonlyMap<number, string>,
  titles: number,
  next = Number.POSITIVE_INFINITY,
): [line: number, reason: string] | undefined =>
  [...lost].find(([line]) => line > titles && line < next);

/** The same in a few words. */
const firstLost = (...where: Parameters<typeof lostIn>): string => {
  const [line, reason = ""] = lostIn(...where) ?? [];
  return line === undefined ? "" : `; row ${line}: ${reason.split(/[.;] /, 1)[0]}`;
};

/** The first line with one of the titles that were said. */
const lineWith = (
  rows: Iterable<TextRow>,
  columns: SaidOfMaps["columns"] = {},
): number | undefined => {
  const keys = new Set(Object.keys(columns).map(titleKey));
  for (const { line, cells } of rows)
    if (titleKeys(cells).some((one) => one.some((key) => keys.has(key)))) return line;
  return undefined;
};

/**
 * The titles of every block on sheets that have no record table of ours, whether or not its lines find a
 * row; where nothing is recognised, the texts of the lines with a title that was said.
 */
export const titlesOn = (
  snapshot: Snapshot,
  columns: Readonly<Record<string, string>>,
): string[][] =>
  foreignSheets(snapshot).flatMap(({ name, cells }) =>
    !cells
      ? []
      : columnBlocks(cells).flatMap((region) => {
          const read = readRows(
            () => sheetRows(cells, region),
            asAnswered("", "the cells of a sheet"),
            {
              name,
              guess: { instruments: new Set(), apart: new Set() },
              mapping: columns,
              synonyms: snapshot.words,
            },
          );
          if (read.ok)
            return read.value.inspection.blocks.map((block) =>
              block.columns.map(({ title }) => title),
            );
          const line = lineWith(sheetRows(cells, region), columns);
          return [...sheetRows(cells, region)].flatMap((row) =>
            row.line === line ? [[...row.cells]] : [],
          );
        }),
  );

/** The titles' lines of blocks in which names held for the cells below bring two lines to one record that say otherwise. */
const doubledBlocks = (
  { blocks }: ExportTable,
  found: readonly (readonly Repeated<RecordRows>[])[],
): ReadonlySet<number> => {
  const doubled = found
    .filter((group) => group.length > 1 && !agree(group))
    .flatMap((group) => group.flatMap(({ lines }) => lines));
  return new Set(
    doubled.flatMap((line) => blocks.findLast((block) => block.line < line)?.line ?? []),
  );
};

/** Whether the user has said that a column is left out. */
const isLeftOut = ({ value, confidence }: InspectedBlock["columns"][number]["field"]) =>
  value === undefined && confidence === "certain";

/** The block with the first limit, corrected value, spread and result of a layout's own, by title. */
const withStated = (block: InspectedBlock, id: string): InspectedBlock => {
  const { columns } = block;
  const kind = KINDS.find((one) => one.id === id);
  const stated = columns.map(({ title, field }) =>
    kind && title !== "" && field.value === undefined && !isLeftOut(field)
      ? statedField(kind, title, block.unit)
      : undefined,
  );
  const isSaid = (field: StatedField) => columns.some((column) => column.field.value === field);
  return {
    ...block,
    columns: columns.map((column, at) => {
      const field = stated[at];
      return field === undefined || stated.indexOf(field) !== at || isSaid(field)
        ? column
        : {
            ...column,
            field: {
              value: field,
              evidence: `${STATED_NAMES[field]}, by the title; compared, never taken over`,
              confidence: "likely",
            },
          };
    }),
  };
};

interface BlockGuess {
  readonly kind: string;
  readonly block: InspectedBlock;
  readonly lines: number;
  readonly last: number | undefined;
  readonly facts: Record<string, string>;
}

/** For each block the kind that most of its lines belong to. */
const blockGuesses = (table: ExportTable, found: readonly Repeated<RecordRows>[]): BlockGuess[] =>
  table.inspection.blocks.flatMap((block, at): BlockGuess[] => {
    const next = table.inspection.blocks[at + 1];
    const end = next ? next.titles.value - 1 : Number.POSITIVE_INFINITY;
    const counts = new Map<string, Set<number>>();
    for (const { lines, table: of } of found)
      for (const line of lines)
        if (line > block.titles.value && line <= end) {
          const { id } = of.kind;
          counts.set(id, (counts.get(id) ?? new Set()).add(line));
        }
    const [best] = [...counts].sort(([, one], [, other]) => other.size - one.size);
    return best
      ? [
          {
            kind: best[0],
            // Headings between lines part a block that has its titles once.
            block: {
              ...block,
              lines: table.inspection.blocks.reduce(
                (sum, one) => sum + (one.titles.value === block.titles.value ? one.lines : 0),
                0,
              ),
            },
            lines: best[1].size,
            last: next && next.titles.value - 1,
            facts: Object.fromEntries(
              Object.entries(table.blocks[at]?.header ?? {}).filter(([, value]) => value !== ""),
            ),
          },
        ]
      : [];
  });
