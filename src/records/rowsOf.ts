import type { Lineup } from "../lineup/lineup";
import { PHASES } from "./columns/common";
import type { CellValue, RecordKind, Row } from "./kind";

/** Whether the project does without a record kind. */
export const isLeftOut = ({ leaveOut }: Lineup, { id }: RecordKind): boolean =>
  leaveOut.some(({ kind }) => kind === id);

/** Whether a record kind is one that the project would have to ask for and does not. */
const isUnasked = ({ furtherRecords }: Lineup, { id, onRequest }: RecordKind): boolean =>
  onRequest === true && !furtherRecords.some(({ kind }) => kind === id);

/** The rows of a kind that this lineup needs: none of a kind that the project leaves out, or has to ask for. Phases are called as the lineup has it. */
export const rowsOf = (kind: RecordKind, lineup: Lineup): Row[] => {
  if (isLeftOut(lineup, kind) || isUnasked(lineup, kind)) return [];
  const rows = kind.rows(lineup);
  const { phases } = lineup;
  return PHASES.every((phase, at) => phase === phases[at])
    ? rows
    : rows.map((row) => withPhases(row, (text) => inPhases(text, phases)));
};

/** Columns whose cells name a phase, a pole, or phases that are put against each other. */
const PHASE_COLUMNS = ["phase", "pole", "combination"] as const;

const withPhases = (row: Row, rename: (text: string) => string): Row =>
  Object.fromEntries(
    Object.entries(row).map(([id, cell]): [string, CellValue] => [
      id,
      PHASE_COLUMNS.some((one) => one === id) && typeof cell === "string" ? rename(cell) : cell,
    ]),
  );

/**
 * A position by L1, L2 and L3 in what a lineup calls its phases.
 *
 * @example inPhases("L1-E", ["A", "B", "C"]) // "A-E"
 */
export const inPhases = (position: string, phases: Lineup["phases"]): string =>
  position.replace(/\bL([123])\b/g, (_all, at: string) => phases[Number(at) - 1] ?? "");
