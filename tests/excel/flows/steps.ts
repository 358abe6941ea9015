import { concede } from "../../../src/check/concessions/concede";
import type { Finding } from "../../../src/check/findings/finding";
import { findingsSheet } from "../../../src/check/findings/findingsSheet";
import { buildOnto, clearMarks, markFindings, undoBuild } from "../../../src/excel/workbook";
import { openBook } from "../../../src/intake/openBook";
import { takeIn } from "../../../src/intake/takeIn";
import { messagesFor } from "../../../src/messages/messages";
import type { Built } from "../../../src/pane/host";
import { bringBack, bringIn } from "../../../src/pane/readings/bringIn";
import type { LastIntake } from "../../../src/sheets/kept/lastIntake";
import { rememberedOf } from "../../../src/sheets/kept/remembered";
import { CONCESSION_COLUMNS, CONCESSION_TABLE } from "../../../src/sheets/ours/concessionSheet";
import { appended, writesOf } from "../../../src/sheets/plan/appended";
import type { RecordBook } from "../../../src/sheets/recordBook";
import { type Snapshot, tablesOf } from "../../../src/sheets/snapshot";
import type { StandInHost } from "../../../src/standin/host";
import { standInHost, WATCH } from "../../pane/standInHost";
import { inExcel } from "../excelSupport";
import { RECORDS } from "./tokens";
import { OWN_MAP, planOf } from "./world";

/** What the pane keeps between two of its steps. */
export interface Pane {
  readonly host: StandInHost;
  built?: { readonly built: Built; readonly after: Snapshot };
  /** What the intake had written that is being taken back. */
  undone?: LastIntake["cells"];
}

/** An export: the records that it has readings of, and these. */
export interface File {
  readonly name: string;
  readonly readings: ReadonlyMap<number, number>;
}

/** One piece of work of the pane's, as it does it when a button is pressed. */
export interface Step {
  readonly what: string;
  readonly file?: File;
  readonly replace?: boolean;
  readonly panels?: number;
  readonly limit?: number;
}

const TODAY = 46_351;
/** Bytes to a batch, few enough that the work takes several. */
export const SMALL = 30_000;

export const paneHost = ({ host }: Pane) => standInHost(host, SMALL);
export const read = async (pane: Pane): Promise<RecordBook> =>
  openBook(await paneHost(pane).read(WATCH));

const exported = ({ readings }: File): string =>
  [
    "Panel,Part,Pole,R (µΩ),Date",
    ...[...readings].map(([record, reading]) => {
      const { panel, part, pole } = RECORDS[record] as (typeof RECORDS)[number];
      return `${panel},${part},${pole},${reading},2026-11-20`;
    }),
  ].join("\n");

/** @returns whether the workbook had records that the file could be taken into */
export async function bring(pane: Pane, file: File, replace: boolean): Promise<boolean> {
  const known = await read(pane);
  const intake = takeIn(
    known,
    [{ name: file.name, content: exported(file) }],
    { replace, decimal: "." },
    TODAY,
  );
  if (!intake.ok) return false;
  await bringIn(paneHost(pane), known, intake, WATCH);
  return true;
}

/** Findings that are invented, on every second row of each record table. */
const invented = ({ tables }: RecordBook): Finding[] =>
  tables.flatMap(({ table }) =>
    Array.from(
      { length: Math.ceil(table.rowCount / 2) },
      (_, at): Finding => ({
        rule: "invented",
        weight: at % 2 === 0 ? "stop" : "query",
        sheet: table.sheet,
        address: `B${table.top + 2 + at * 2}`,
        row: "invented",
        message: "Invented.",
      }),
    ),
  );

const STEPS: Readonly<Record<string, (pane: Pane, step: Step) => Promise<unknown>>> = {
  "bring in": (pane, { file, replace = true }) =>
    file ? bring(pane, file, replace) : Promise.resolve(),
  "take back": async (pane) => {
    const known = await read(pane);
    pane.undone = known.remembered.last?.cells;
    await bringBack(paneHost(pane), known, WATCH);
  },
  build: async (pane, { panels = 2, limit = 50 }) => {
    const plan = planOf(panels, limit);
    pane.built = undefined;
    const built = await inExcel(pane.host, (context) => buildOnto(context, plan, { most: SMALL }));
    pane.built = { built, after: await paneHost(pane).read(WATCH) };
  },
  "undo the build": async (pane) => {
    const { built } = pane;
    if (!built) return;
    await inExcel(pane.host, (context) =>
      undoBuild(context, built.built, built.after, { most: SMALL }),
    );
    pane.built = undefined;
  },
  mark: async (pane) => {
    const findings = invented(await read(pane));
    await inExcel(pane.host, (context) => markFindings(context, findings, { most: SMALL }));
  },
  "clear the marks": (pane) =>
    inExcel(pane.host, (context) => clearMarks(context, { most: SMALL })),
  "list the findings": async (pane) => {
    const planned = findingsSheet(
      { findings: invented(await read(pane)) },
      messagesFor("en").findings,
    );
    await paneHost(pane).change({ renew: [{ planned, writes: writesOf(planned) }] }, WATCH);
  },
  "accept a finding": async (pane) => {
    const known = await read(pane);
    const [finding] = invented(known);
    const table = tablesOf(known.snapshot).find(({ name }) => name === CONCESSION_TABLE);
    if (!table || !finding) return;
    const row = concede(finding, { reason: "Invented.", name: "A. N. Other", date: "2026-11-25" });
    await paneHost(pane).change(
      { change: [{ table, ...appended(CONCESSION_COLUMNS, [row], table) }] },
      WATCH,
    );
  },
  map: async (pane) => {
    const { snapshot } = await read(pane);
    const maps = snapshot.sheets.some(({ name }) => name === OWN_MAP.sheet) ? [OWN_MAP] : [];
    await paneHost(pane).change({ remembered: { ...rememberedOf(snapshot), maps } }, WATCH);
  },
  "type into a row": async (pane, { file }) => {
    const known = await read(pane);
    for (const [record, reading] of [...(file?.readings ?? [])].slice(0, 1)) {
      const { panel, part, pole } = RECORDS[record] as (typeof RECORDS)[number];
      const table = known.tables.find(({ at }) => at.has("reading"));
      const row =
        table?.rows.findIndex(
          (one) => one.object === panel && one.part === part && one.pole === pole,
        ) ?? -1;
      if (!table || row < 0 || table.rows[row]?.reading !== null) continue;
      const cell = { table, row, column: "reading", old: null, value: reading };
      await paneHost(pane).fill([{ ...cell, source: { file: "typed", line: 1 } }], WATCH);
    }
  },
};

export const STEP_NAMES = Object.keys(STEPS);

export const run = (pane: Pane, step: Step): Promise<unknown> | undefined =>
  STEPS[step.what]?.(pane, step);
