import type { Finding } from "../../check/findings/finding";
import type { Messages } from "../../messages/messages";
import type { Unit } from "../../quantities/units";
import type { CellValue } from "../../records/kind";
import type { BesideCell, BesideTable } from "../../sheets/besideTable";
import { a1 } from "../../sheets/cells/address";
import { type Area, covers, readArea } from "../../sheets/cells/area";
import type { SheetSnapshot, Snapshot } from "../../sheets/snapshot";
import { type SurveyAnswers, surveyed } from "../checkSurvey";
import type { Block, SurveyColumn } from "../find/block";
import { resultOf, temperatureOf } from "../rules/judge";
import type { SurveyContext } from "../rules/rule";
import { type BoundEntry, type Group, groupsOf } from "./groups";
import {
  correctedCell,
  correctsHere,
  type LinePlaces,
  limitCell,
  resultCell,
  sourceCell,
  unitOf,
  unreadable,
} from "./lineCells";
import { roomBeside } from "./place";
import { type Guard, type Said, withReasons } from "./said";

/** A table that gets no columns, and why. */
interface Without {
  readonly sheet: string;
  readonly range: string;
  readonly why: string;
}

/** Result columns for the tables of a workbook of somebody's own. */
export interface ResultColumns {
  readonly beside: readonly BesideTable[];
  readonly without: readonly Without[];
}

/** One column of ours: its title, what it looks like, and what it holds in a line. */
interface Column {
  readonly id: string;
  readonly title: string;
  /** The column of the sheet, or the row of it where lines are columns, that it looks like. */
  readonly like: number;
  readonly said: (places: LinePlaces, guards: readonly Guard[]) => Said | undefined;
}

/** A table on its way to get columns. */
interface Draft {
  readonly block: Block;
  readonly sheet: SheetSnapshot;
  readonly context: SurveyContext;
  readonly findings: readonly Finding[];
  readonly area: Area;
}

const areaOf = (address: string): Area =>
  readArea(address) ?? { top: 0, left: 0, bottom: 0, right: 0 };

/** The corners of a range, whichever way it is given. */
const upright = ({ top, left, bottom, right }: Area): Area => ({
  top: Math.min(top, bottom),
  left: Math.min(left, right),
  bottom: Math.max(top, bottom),
  right: Math.max(left, right),
});

/** The row of the sheet in which a line stands, or the column where lines are columns. */
const lineOf = ({ turned }: Block, address: string): number =>
  turned ? areaOf(address).left : areaOf(address).top;

/** The column of the sheet in which a cell of a line stands, or the row. */
const columnOf = ({ turned }: Block, address: string): number =>
  turned ? areaOf(address).top : areaOf(address).left;

/** What the check says at a line besides its limits and blanks: a stop, or a result that fails. */
function guardsOf(
  { block, sheet, findings, area, context }: Draft,
  entries: readonly BoundEntry[],
): Guard[] {
  const first = entries[0]?.entry;
  if (!first) return [];
  const line = lineOf(block, first.address);
  const { results } = context.text;
  const raw = rawOf(sheet);
  const failing = entries.flatMap(({ entry }): Guard[] => {
    const { result } = entry.beside;
    return result && resultOf(entry) === "Fail"
      ? [
          {
            address: result.address,
            value: raw(result.address),
            verdict: "Fail",
            reason: results.lineFails(result.text),
          },
        ]
      : [];
  });
  const stopped = findings.flatMap(({ rule, weight, address, message }): Guard[] =>
    weight === "stop" &&
    !JUDGED.includes(rule) &&
    covers(area, areaOf(address)) &&
    lineOf(block, address) === line
      ? [
          {
            address,
            value: raw(address),
            verdict: "Inconclusive",
            reason: results.stopped(message),
          },
        ]
      : [],
  );
  const all = [...failing, ...stopped];
  return all.filter(
    ({ address, verdict }, at) =>
      all.findIndex((one) => one.address === address && one.verdict === verdict) === at,
  );
}

/** Rules whose stops the formulas tell themselves. */
const JUDGED: readonly string[] = ["survey-limit", "survey-missing"];

const rawOf =
  ({ cells }: SheetSnapshot) =>
  (address: string): CellValue => {
    const { top, left } = areaOf(address);
    return cells?.cell(top, left) ?? null;
  };

/** The unit that all lines have; undefined where they differ. */
const sameUnit = (units: readonly (Unit | undefined)[]): Unit | undefined => {
  const all = [...new Set(units.filter((unit) => unit !== undefined))];
  return all.length === 1 ? all[0] : undefined;
};

type PlacesOf = (line: readonly BoundEntry[]) => LinePlaces;

const correctedId = (column: SurveyColumn, at: number) => `corrected ${at} ${column.at}`;

/** The columns of a group, from left to right. */
function columnsOf(
  { block, context, area }: Draft,
  group: Group,
  at: number,
  placesOf: PlacesOf,
): Column[] {
  const { results } = context.text;
  const lines = group.lines.map(placesOf);
  const titled = (title: string) => (group.title === "" ? title : `${title}: ${group.title}`);
  const edge = block.turned ? area.bottom : area.right;
  const readings = [
    ...new Map(group.lines.flat().map(({ entry }) => [entry.column.at, entry] as const)).values(),
  ];
  const near = readings[0] ? columnOf(block, readings[0].address) : edge;
  const corrected = readings
    .filter(({ column }) =>
      lines.some((line) =>
        line.entries.some((one) => one.entry.column.at === column.at && correctsHere(one, line)),
      ),
    )
    .map(
      ({ column, address }, _, { length }): Column => ({
        id: correctedId(column, at),
        title: length > 1 ? `${results.corrected}: ${column.title}` : titled(results.corrected),
        like: columnOf(block, address),
        said: (line) => {
          const one = line.entries.find(({ entry }) => entry.column.at === column.at);
          const warmth = one && correctsHere(one, line) ? temperatureOf(one.entry) : undefined;
          return one && warmth ? correctedCell(one.entry, warmth.celsius, warmth.cell) : undefined;
        },
      }),
    );
  const limits = group.slots.map((slot): Column => {
    const unit = sameUnit(lines.map((line) => unitOf(line, slot)));
    return {
      id: `limit ${at} ${slot.key}`,
      title: titled(results.limit(slot.side, group.slots.length > 1, unit)),
      like: near,
      said: (line) => limitCell(line, slot),
    };
  });
  return [
    ...corrected,
    ...limits,
    {
      id: `result ${at}`,
      title: titled(results.result),
      like: edge,
      said: (line, guards) => resultCell(line, guards),
    },
    {
      id: `source ${at}`,
      title: titled(results.source),
      like: edge,
      said: (line, guards) => withReasons(sourceCell(line), guards),
    },
  ];
}

/** The result columns of one table; a text says why it gets none. */
function besideOf(draft: Draft, planned: readonly Area[]): BesideTable | string {
  const { block, sheet, context, area } = draft;
  const groups = groupsOf(block, context);
  if (groups.length === 0) return context.text.results.notJudged;
  const address = new Map<string, (line: number) => string>();
  const placesOf =
    (at: number): PlacesOf =>
    (entries) => {
      const line = lineOf(block, entries[0]?.entry.address ?? "A1");
      const cell = (id: string) => address.get(id)?.(line) ?? "";
      return {
        entries,
        slots: groups[at]?.slots ?? [],
        hasOwn: groups[at]?.lines.flat().some(({ entry }) => entry.beside.corrected) ?? false,
        corrected: (column) => cell(correctedId(column, at)),
        limit: ({ key }) => cell(`limit ${at} ${key}`),
        raw: rawOf(sheet),
        context,
      };
    };
  const columns = groups.flatMap((group, at) =>
    columnsOf(draft, group, at, placesOf(at)).map((column) => ({ column, group, at })),
  );
  const head = lineOf(block, block.address(block.span[0] - 1, block.columns[0]?.at ?? 0));
  const last = block.turned ? area.right : area.bottom;
  const edge = block.turned ? area.bottom : area.right;
  const room = roomBeside(
    sheet,
    { from: head, to: last, edge, width: columns.length, across: block.turned },
    planned,
  );
  if (room === undefined) return context.text.results.noRoom;
  const start = block.turned ? room.top : room.left;
  const place = (line: number, offset: number) =>
    block.turned ? { row: start + offset, column: line } : { row: line, column: start + offset };
  for (const [offset, { column }] of columns.entries())
    address.set(column.id, (line) => {
      const { row, column } = place(line, offset);
      return a1(row, column);
    });
  const apart = start === edge + 1 ? "" : ` (${block.range})`;
  const cells = columns.flatMap(({ column, group, at }, offset): BesideCell[] => [
    { ...place(head, offset), value: `${column.title}${apart}` },
    ...group.lines.flatMap((line): BesideCell[] => {
      const places = placesOf(at)(line);
      const guards = [...guardsOf(draft, line), ...unreadable(places)];
      const said = column.said(places, guards);
      const row = lineOf(block, line[0]?.entry.address ?? "A1");
      return said === undefined || (said.value === null && said.formula === undefined)
        ? []
        : [{ ...place(row, offset), ...said }];
    }),
  ]);
  return {
    sheet: sheet.name,
    area: room,
    cells,
    like: columns.map(({ column }) =>
      block.turned
        ? { top: column.like, bottom: column.like, left: room.left, right: room.right }
        : { top: room.top, bottom: room.bottom, left: column.like, right: column.like },
    ),
    across: block.turned,
  };
}

/**
 * Result columns beside the tables that a workbook of somebody's own keeps: the corrected value where a
 * criterion for 20 °C asks for one, the limit with its source, and the result, as worksheet functions over
 * the table's own cells. They come to what the check says of each line.
 *
 * @param today the day of the check, as a serial number
 */
export function resultColumns(
  snapshot: Snapshot,
  today: number,
  answers: SurveyAnswers,
  text: Messages["survey"],
): ResultColumns {
  const { context, findings } = surveyed(snapshot, today, answers, text);
  const beside: BesideTable[] = [];
  const without: Without[] = [];
  for (const block of context.survey.blocks) {
    const sheet = snapshot.sheets.find(({ name }) => name === block.sheet);
    if (!sheet) continue;
    const made = besideOf(
      {
        block,
        sheet,
        context,
        findings: findings.filter((finding) => finding.sheet === block.sheet),
        area: upright(areaOf(block.range)),
      },
      beside.filter((one) => one.sheet === block.sheet).map(({ area }) => area),
    );
    if (typeof made === "string")
      without.push({ sheet: block.sheet, range: block.range, why: made });
    else beside.push(made);
  }
  return { beside, without };
}
