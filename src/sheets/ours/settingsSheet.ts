import type { Lineup } from "../../lineup/lineup";
import { type Column, isBlank, type Row } from "../../records/kind";
import type { PlannedSheet } from "../plan/plannedSheet";

export const SETTINGS_TABLE = "GearSettings";

export const SETTINGS_COLUMNS: readonly Column[] = [
  { id: "setting", header: "Setting", role: "key", width: 18 },
  { id: "name", header: "Name", role: "key", width: 40 },
  { id: "records", header: "Records", role: "key", width: 22 },
  { id: "sort", header: "Sort", role: "given", width: 12 },
  { id: "panels", header: "Panels", role: "given", width: 20 },
  { id: "types", header: "Panel types", role: "given", width: 24 },
  { id: "least", header: "Minimum mm", role: "given", width: 10, unit: "mm" },
  { id: "most", header: "Maximum mm", role: "given", width: 10, unit: "mm" },
  { id: "text", header: "Title or reason", role: "given", width: 40 },
  { id: "document", header: "Document", role: "given", width: 36 },
];

const DRAWING = "drawing";
const REVISION = "report revision";
const LEFT_OUT = "left out";
const FURTHER = "further record";
const POINT = "inspection point";
const ITEM = "check item";
const WEIGHT = "rule weight";
const CONFIRMED = "confirmed criterion";

/** Names in one cell. Names hold commas more often than semicolons. */
const BETWEEN = "; ";
const joined = (names: readonly string[] | undefined) => names?.join(BETWEEN) ?? null;
const parted = (cell: Row[string] | undefined) =>
  isBlank(cell) ? undefined : String(cell).split(BETWEEN);

/** What the project sets for its records: drawings, revisions of the report, what is left out, criteria that somebody confirmed, inspection points, items of its own, weights of the check's rules. */
export const settingsSheet = (lineup: Lineup): PlannedSheet => ({
  sheet: "Settings",
  table: SETTINGS_TABLE,
  title: "What the project sets for its records",
  purpose:
    "Drawings, revisions of the report, record kinds left out and asked for, inspection points, check items of the project's own and weights of the check's rules. Listed from the lineup's description; a change belongs there, then build again.",
  cautions: [],
  columns: SETTINGS_COLUMNS,
  rows: [
    ...lineup.project.drawings.map(({ number, revision, title }) => ({
      setting: DRAWING,
      name: number,
      sort: revision,
      text: title ?? null,
    })),
    ...(lineup.project.revisions ?? []).map(({ revision, date, change }) => ({
      setting: REVISION,
      name: revision,
      sort: date ?? null,
      text: change,
    })),
    ...lineup.leaveOut.map(({ kind, reason, document }) => ({
      setting: LEFT_OUT,
      name: kind,
      text: reason,
      document: document ?? null,
    })),
    ...lineup.furtherRecords.map(({ kind, document }) => ({
      setting: FURTHER,
      name: kind,
      document: document ?? null,
    })),
    ...lineup.inspectionPoints.map(({ activity, type, guards, each, document }) => ({
      setting: POINT,
      name: activity,
      records: joined(guards),
      sort: type,
      panels: each,
      document: document ?? null,
    })),
    ...lineup.checkItems.map(({ kind, item, applies, types, least, most, document }) => ({
      setting: ITEM,
      name: item,
      records: kind,
      panels: joined(applies),
      types: joined(types),
      least: least ?? null,
      most: most ?? null,
      document,
    })),
    ...lineup.confirmed.map(({ criterion, by }) => ({
      setting: CONFIRMED,
      name: criterion,
      text: by,
    })),
    ...Object.entries(lineup.ruleWeights ?? {}).map(([rule, weight]) => ({
      setting: WEIGHT,
      name: rule,
      sort: weight,
    })),
  ],
});

/** What the rows of the sheet of settings tell, in the shape of a lineup's description. */
export const settingsOf = (rows: readonly Row[]) => {
  const of = (setting: string) => rows.filter((row) => row.setting === setting);
  const weights = of(WEIGHT);
  const revisions = of(REVISION).map(({ name, sort, text }) =>
    given({ revision: String(name), date: sort, change: text }),
  );
  return {
    ...(weights.length > 0
      ? { ruleWeights: Object.fromEntries(weights.map(({ name, sort }) => [String(name), sort])) }
      : {}),
    confirmed: of(CONFIRMED).map(({ name, text }) => given({ criterion: name, by: text })),
    ...(revisions.length > 0 ? { revisions } : {}),
    drawings: of(DRAWING).map(({ name, sort, text }) =>
      given({ number: String(name), revision: String(sort), title: text }),
    ),
    leaveOut: of(LEFT_OUT).map(({ name, text, document }) =>
      given({ kind: name, reason: text, document }),
    ),
    furtherRecords: of(FURTHER).map(({ name, document }) => given({ kind: name, document })),
    inspectionPoints: of(POINT).map(({ name, records, sort, panels, document }) =>
      given({ activity: name, guards: parted(records), type: sort, each: panels, document }),
    ),
    checkItems: of(ITEM).map(({ name, records, panels, types, least, most, document }) =>
      given({
        kind: records,
        item: name,
        applies: parted(panels),
        types: parted(types),
        least,
        most,
        document,
      }),
    ),
  };
};

/** An object without its blanks. */
export const given = (fields: Record<string, unknown>) =>
  Object.fromEntries(
    Object.entries(fields).filter(
      ([, value]) => value !== null && value !== undefined && value !== "",
    ),
  );
