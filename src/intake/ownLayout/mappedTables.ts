import type { Lineup } from "../../lineup/lineup";
import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import { keyIds, type RecordKind, rowKey } from "../../records/kind";
import { kindFor } from "../../records/kindFor";
import { KINDS } from "../../records/kinds";
import { rowsOf } from "../../records/rowsOf";
import type { LayoutMap } from "../../sheets/kept/layoutMap";
import type { LayoutProblem } from "../../sheets/recordBook";
import type { RecordTable } from "../../sheets/recordTable";
import type { SheetCells, Snapshot } from "../../sheets/snapshot";
import type { ArrivalOptions } from "../place/arrival";
import type { Lost } from "../rows/lost";
import { meaning } from "../rows/meaning";
import { rowFinder } from "../rows/rowFinder";
import type { EachRow, ExportBlock, ExportTable } from "../table/exportTable";
import type { Written } from "../table/written";
import { writtenBy } from "../table/writtenFacts";
import { partNamed } from "../words/partNamed";
import { besideReadings } from "./besideReadings";
import { isSameRecord, type LayoutRecord, layoutRecord, mergeRecord } from "./layoutRecord";
import { layoutTable } from "./layoutTable";
import { readBlock } from "./readBlock";
import { joinedTo } from "./sheetRows";
import { nameCells, titleRows } from "./tellers";

/** The record tables that maps make of a workbook's sheets, and what of them is not understood. */
export interface Mapped {
  readonly tables: readonly RecordTable[];
  readonly problems: readonly LayoutProblem[];
}

export const NOTHING_MAPPED: Mapped = { tables: [], problems: [] };

/**
 * Blocks in somebody's own layout as record tables: each line, or each phase of a line, is a record of
 * the lineup, found as a line of an export is; its cells are read in their own units and words. Where
 * each value stands is kept, so that findings name its cell and readings are written there.
 *
 * @param maps those of the workbook where not given
 */
export const mappedTables = (
  snapshot: Snapshot,
  lineup: Lineup,
  maps: readonly LayoutMap[] = snapshot.maps ?? [],
): Mapped => {
  const all = maps.map((map) => mapped(map, snapshot, lineup));
  return {
    tables: all.flatMap(({ tables }) => tables),
    problems: all.flatMap(({ problems }) => problems),
  };
};

/** A block as its map says; where names held for the cells below would double a record, none is held. */
const mapped = (map: LayoutMap, snapshot: Snapshot, lineup: Lineup): Mapped => {
  const held = recordsOf(map, snapshot, lineup);
  const second = map.down && secondOf(held);
  if (!map.down || !second) return held;
  const { down: _down, ...each } = map;
  const plain = recordsOf(each, snapshot, lineup);
  if (secondOf(plain)) return held;
  const { row, column, name } = second;
  return {
    tables: plain.tables,
    problems: [
      {
        sheet: map.sheet,
        row,
        column,
        message: ({ intake }) =>
          intake.layout.doubled(
            (map.down ?? []).map((title) => quoted(title)),
            row + 1,
            name,
          ),
      },
      ...plain.problems,
    ],
  };
};

/** The first line of a record that has another line already. */
const secondOf = ({ tables }: Mapped) => {
  for (const { kind, rows, table } of tables) {
    const names = rows.map((row) => rowKey(row, keyIds(kind)));
    const sofar = new Set<string>();
    const second = names.findIndex((name) => sofar.size === sofar.add(name).size);
    const place = table.ownLayout?.place(second, -1);
    if (place) return { ...place, name: names[second] };
  }
  return undefined;
};

const recordsOf = (map: LayoutMap, snapshot: Snapshot, lineup: Lineup): Mapped => {
  const problems: LayoutProblem[] = [];
  const problem = (row: number, column: number, message: Said<Told>) =>
    problems.push({ sheet: map.sheet, row, column, message });
  const known = KINDS.find(({ id }) => id === map.kind);
  const kind = known && kindFor(known, lineup);
  const cells = snapshot.sheets.find(({ name }) => name === map.sheet)?.cells;
  if (!kind || !cells) {
    problem(
      0,
      0,
      kind
        ? ({ intake }) => intake.layout.noSheet(map.sheet)
        : ({ intake }) =>
            intake.layout.noKind(
              map.kind,
              KINDS.map(({ id }) => id),
            ),
    );
    return { tables: [], problems };
  }
  const left = (map.left ?? 1) - 1;
  const read = readBlock(map, cells);
  if (!read.ok) {
    problem(map.titles - 1, left, read.say);
    return { tables: [], problems };
  }
  const block = { map, kind, cells, left, lineup, table: read.value, problem };
  const records = recordsIn(block);
  for (const { row, column, message } of besideReadings(kind, records, cells))
    problem(row, column, message);
  return {
    tables: records.length > 0 ? [layoutTable(map, kind, records, cells)] : [],
    problems,
  };
};

/** A block that is being read as records. */
interface BlockReading {
  readonly map: LayoutMap;
  readonly kind: RecordKind;
  readonly cells: SheetCells;
  /** First column of the block, from 0. */
  readonly left: number;
  readonly lineup: Lineup;
  readonly table: ExportTable;
  readonly problem: (row: number, column: number, message: Said<Told>) => void;
}

/** The records of a block, those on several lines once. */
const recordsIn = (reading: BlockReading): readonly LayoutRecord[] => {
  const { kind, cells, left, lineup, table, problem } = reading;
  const needed = rowsOf(kind, lineup);
  const joins = joinedTo(cells);
  const find = findIn(reading, needed);
  const ids = keyIds(kind);
  const records: LayoutRecord[] = [];
  const byKey = new Map<string, LayoutRecord[]>();
  const titlesOf = titleRows();
  const right = (reading.map.right ?? cells.columnCount) - 1;
  for (const each of table.each()) {
    const { written, found } = find(each);
    if (!found.ok) {
      problem(each.row.line - 1, left, (text) =>
        text.intake.layout.noRecord(
          each.row.line,
          kind.sheet,
          found.say(text),
          meanable(found.asked),
        ),
      );
      continue;
    }
    const key = needed[found.value.row] ?? {};
    const [top, bottom] = titlesOf(each);
    const tellers = [{ top, bottom, left, right }, ...nameCells(each, written, left, cells)];
    const line = { key, kind, each, written, table, left, joins, lineup, tellers, problem };
    const record = layoutRecord(line);
    const alike = byKey.get(rowKey(key, ids)) ?? [];
    byKey.set(rowKey(key, ids), alike);
    const same = alike.find((other) => isSameRecord(other, record, kind));
    if (same) mergeRecord(same, record);
    else {
      alike.push(record);
      records.push(record);
    }
  }
  return records;
};

/** Makes the search for the record that a line is of. */
const findIn = ({ map, kind, lineup, table }: BlockReading, needed: ReturnType<typeof rowsOf>) => {
  const rows = { kind, rows: needed };
  const finder = rowFinder([rows], table.positions);
  const meant = meaning({ panels: lineup.panels, means: map.means as ArrivalOptions["means"] });
  return ({ block, row }: EachRow) => {
    const written: ReadonlyMap<string, Written> = new Map([
      ...factsOf(map, block),
      ...writtenBy(block)(row),
    ]);
    const text = (field: Parameters<typeof meant>[0]) => meant(field, written.get(field)?.text);
    const place = {
      object: text("object") || text("circuit") || meant("object", written.get("section")?.text),
      part: partNamed(text("part"), written.get("operation")?.text ?? ""),
      position: text("position"),
      stage: text("stage"),
    };
    return { written, found: finder(place, [rows]) };
  };
};

/** How the map says what a name means that no row has. */
const meanable = (asked: Lost["asked"]): string | undefined =>
  asked && JSON.stringify({ [asked.field]: { [asked.written]: "…" } });

const factsOf = ({ facts = {} }: LayoutMap, block: ExportBlock) =>
  writtenBy({ ...block, header: facts, columns: [] })({ line: 0, cells: [] });
