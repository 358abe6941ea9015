import { instrument } from "../../lineup/equipment";
import { type Lineup, lineupSchema } from "../../lineup/lineup";
import { serialDay } from "../../quantities/dates";
import { readRanges } from "../../quantities/measuringRange";
import { type CellValue, type Column, isBlank, type Row } from "../../records/kind";
import { checkLineup } from "../../records/readLineup";
import { asRecordTable } from "../recordTable";
import { type Snapshot, tablesOf } from "../snapshot";
import { COVER_COLUMNS, COVER_ITEMS, COVER_TABLE } from "./coverSheet";
import { CRITERIA_COLUMNS, CRITERIA_TABLE } from "./criteriaSheet";
import { EQUIPMENT_COLUMNS, EQUIPMENT_TABLE, equipmentTold } from "./equipmentSheet";
import { INSTRUMENT_COLUMNS, INSTRUMENT_TABLE } from "./instrumentSheet";
import { PANEL_COLUMNS, PANEL_TABLE } from "./panelSheet";
import { given, SETTINGS_COLUMNS, SETTINGS_TABLE, settingsOf } from "./settingsSheet";

/**
 * The lineup as the cover, panels, equipment, criteria, settings and instruments of a workbook tell it: for workbooks that
 * another program saved without our memory. Undefined where they do not tell it in full.
 */
export function lineupOfSheets(snapshot: Snapshot): Lineup | undefined {
  const rowsOf = (name: string, columns: readonly Column[]): readonly Row[] => {
    const table = tablesOf(snapshot).find((table) => table.name === name);
    return table ? asRecordTable({ columns }, table).rows : [];
  };
  const cover = new Map(
    rowsOf(COVER_TABLE, COVER_COLUMNS).map((row) => [String(row.item), row.value ?? null]),
  );
  const criteria = rowsOf(CRITERIA_TABLE, CRITERIA_COLUMNS).filter((row) => !isBlank(row.quantity));
  const equipment = equipmentTold(rowsOf(EQUIPMENT_TABLE, EQUIPMENT_COLUMNS));
  const panels = rowsOf(PANEL_TABLE, PANEL_COLUMNS).filter((row) => !isBlank(row.panel));
  const instruments = rowsOf(INSTRUMENT_TABLE, INSTRUMENT_COLUMNS).filter(
    (row) => !isBlank(row.id),
  );

  const json: Record<string, unknown> = {};
  for (const [item, path] of COVER_ITEMS) put(json, path, cover.get(item) ?? null);
  if (json.phases !== undefined) json.phases = Object.values(json.phases as object).map(String);
  const { drawings, revisions, ...settings } = settingsOf(rowsOf(SETTINGS_TABLE, SETTINGS_COLUMNS));
  Object.assign(json, settings);
  json.project = { ...(json.project as object | undefined), drawings, revisions };
  json.panels = panels.map((row) => {
    const { breaker, ...others } = equipment.get(String(row.panel)) ?? {};
    return given({
      ...others,
      designation: row.panel,
      name: row.name,
      type: row.type,
      section: row.section,
      massKg: row.massKg,
      breaker: isBlank(row.breaker)
        ? null
        : given({
            ...(breaker as Record<string, unknown> | undefined),
            designation: row.breaker,
            medium: row.medium,
            ratedA: row.ratedA,
          }),
    });
  });
  json.criteria = criteria.map((row) =>
    given({
      quantity: row.quantity,
      from: row.from,
      value: row.value,
      document: row.document,
      applies: row.applies === "all" ? null : String(row.applies).split(", "),
    }),
  );
  json.instruments = instruments.map((row) =>
    given({
      id: row.id,
      kind: row.kind,
      serial: isBlank(row.serial) ? null : String(row.serial),
      calibrated: typeof row.calibrated === "number" ? serialDay(row.calibrated) : null,
      due: typeof row.due === "number" ? serialDay(row.due) : null,
      accuracyPercent: row.accuracyPercent,
      ranges: isBlank(row.ranges) ? null : readRanges(String(row.ranges)),
    }),
  );
  const read = checkLineup(written(json));
  if (read.ok) return read.value;
  writeNames(json);
  leaveUnread(json.instruments);
  const again = checkLineup(written(json));
  return again.ok ? again.value : undefined;
}

/** As a file of a lineup would have it: what is undefined is not there. */
const written = (json: unknown): unknown => JSON.parse(JSON.stringify(json));

/**
 * An instrument's row may lack what nobody had to fill in, or say "n/a" there: what cannot be read of it
 * is left out, and costs nothing else of the lineup.
 */
function leaveUnread(instruments: unknown) {
  for (const one of instruments as Record<string, unknown>[]) {
    one.kind ??= one.id;
    for (const { path } of instrument.safeParse(one).error?.issues ?? [])
      delete one[String(path[0])];
  }
}

/** Where a name is asked for, a number is its text again: another program makes one of a class such as 0.5. */
function writeNames(json: unknown) {
  for (const issue of lineupSchema.safeParse(json).error?.issues ?? []) {
    const last = issue.path.at(-1);
    if (issue.code !== "invalid_type" || issue.expected !== "string" || last === undefined)
      continue;
    const holder = issue.path
      .slice(0, -1)
      .reduce<unknown>((at, key) => (at as Record<PropertyKey, unknown>)[key], json);
    const fields = holder as Record<PropertyKey, unknown>;
    if (typeof fields[last] === "number") fields[last] = String(fields[last]);
  }
}

/** Sets a value at a path such as `ratings.voltagekV`; a blank is left out. */
function put(json: Record<string, unknown>, path: string, value: CellValue) {
  if (isBlank(value)) return;
  const keys = path.split(".");
  const last = keys.pop() as string;
  let at = json;
  for (const key of keys) {
    at[key] ??= {};
    at = at[key] as Record<string, unknown>;
  }
  at[last] = value;
}
