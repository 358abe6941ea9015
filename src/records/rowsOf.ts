import type { Lineup } from "../lineup/lineup";
import type { RecordKind, Row } from "./kind";

/** Whether the project does without a record kind. */
export const isLeftOut = ({ leaveOut }: Lineup, { id }: RecordKind): boolean =>
  leaveOut.some(({ kind }) => kind === id);

/** The rows of a kind that this lineup needs: none of a kind that the project leaves out. */
export const rowsOf = (kind: RecordKind, lineup: Lineup): Row[] =>
  isLeftOut(lineup, kind) ? [] : kind.rows(lineup);
