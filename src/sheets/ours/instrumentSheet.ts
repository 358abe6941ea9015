import type { Lineup } from "../../lineup/lineup";
import { daySerial } from "../../quantities/dates";
import { writeRanges } from "../../quantities/measuringRange";
import { ACCURACY } from "../../records/guard";
import { RANGES } from "../../records/instruments";
import { type Column, isBlank, type Row } from "../../records/kind";
import type { PlannedSheet } from "../plan/plannedSheet";
import { asRecordTable } from "../recordTable";
import { type Snapshot, tablesOf } from "../snapshot";
import { instrumentList } from "./instrumentList";

export const INSTRUMENT_COLUMNS: readonly Column[] = [
  { id: "id", header: "Id", role: "key", width: 12 },
  { id: "kind", header: "Instrument", role: "entry", width: 34, accepts: { type: "text" } },
  { id: "serial", header: "Serial number", role: "entry", width: 18, accepts: { type: "text" } },
  {
    id: "calibrated",
    header: "Calibrated",
    role: "entry",
    width: 12,
    format: "yyyy-mm-dd",
    accepts: { type: "date" },
  },
  {
    id: "due",
    header: "Due",
    role: "entry",
    width: 12,
    format: "yyyy-mm-dd",
    accepts: { type: "date" },
  },
  {
    id: "accuracyPercent",
    header: ACCURACY,
    role: "entry",
    width: 10,
    unit: "%",
    accepts: { type: "number", least: 0, most: 100 },
    help: "Greatest error of a reading. Where the cover says guarded acceptance, a reading has to keep inside its limit by it.",
  },
  {
    id: "ranges",
    header: RANGES,
    role: "given",
    width: 34,
    help: "From the lineup's description: a reading outside them proves nothing. A change belongs there, then build again.",
  },
];

export const INSTRUMENT_SHEET = "Instruments";
export const INSTRUMENT_TABLE = "GearInstruments";

/** The test instruments; every record's instrument is looked up here. */
export const instrumentSheet = (lineup: Lineup): PlannedSheet => ({
  sheet: INSTRUMENT_SHEET,
  table: INSTRUMENT_TABLE,
  title: "Test instruments",
  purpose: "Every record names its instrument by the Id given here. Add rows as needed.",
  cautions: [],
  columns: INSTRUMENT_COLUMNS,
  rows: lineup.instruments.map(
    ({ id, kind, serial, calibrated, due, accuracyPercent, ranges }) => ({
      id,
      kind,
      serial: serial ?? null,
      calibrated: calibrated === undefined ? null : daySerial(calibrated),
      due: due === undefined ? null : daySerial(due),
      accuracyPercent: accuracyPercent ?? null,
      ranges: ranges ? writeRanges(ranges) : null,
    }),
  ),
});

export interface InstrumentRow {
  readonly id: string;
  /** What it is, in words. */
  readonly kind: string;
  readonly serial: string;
  readonly calibrated?: number;
  readonly due?: number;
  readonly accuracyPercent?: number;
}

/**
 * The instruments that the workbook lists, in a table or on a sheet of somebody's own, or else its lineup,
 * by Id in lower case; undefined where none does.
 */
export function instrumentsOf(snapshot: Snapshot): ReadonlyMap<string, InstrumentRow> | undefined {
  const table = tablesOf(snapshot).find(
    ({ name, headers }) =>
      name === INSTRUMENT_TABLE ||
      ["Id", "Serial number", "Due"].every((header) => headers.includes(header)),
  );
  if (!table) {
    const listed = snapshot.sheets.flatMap(({ cells }) => (cells ? instrumentList(cells) : []));
    if (listed.length > 0) return new Map(listed.map(asListed));
    return snapshot.lineup && new Map(instrumentSheet(snapshot.lineup).rows.map(asListed));
  }
  const { rows } = asRecordTable({ columns: INSTRUMENT_COLUMNS }, table);
  return new Map(rows.filter(({ id }) => !isBlank(id)).map(asListed));
}

const asListed = ({
  id,
  kind,
  serial,
  calibrated,
  due,
  accuracyPercent,
}: Row): [string, InstrumentRow] => {
  const name = String(id).trim();
  return [
    name.toLowerCase(),
    {
      id: name,
      kind: String(kind ?? ""),
      serial: String(serial ?? ""),
      calibrated: dayOf(calibrated),
      due: dayOf(due),
      ...(typeof accuracyPercent === "number" ? { accuracyPercent } : {}),
    },
  ];
};

const dayOf = (cell: unknown) => {
  if (typeof cell === "number") return cell;
  const text = String(cell).trim();
  return /^\d{4}-\d{2}-\d{2}$/.test(text) ? daySerial(text) : undefined;
};
