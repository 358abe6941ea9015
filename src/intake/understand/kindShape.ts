import type { RecordKind } from "../../records/kind";

/** Whether a kind has a row for each operation of a breaker, its poles beside each other. */
export const hasOperations = ({ columns }: RecordKind): boolean =>
  columns.some(({ id }) => id === "operation");

/** Whether a kind's curve is measured along both of its axes, point by point. */
export const hasMeasuredPoints = ({ curve }: RecordKind): boolean =>
  curve?.points.some(([along]) => typeof along === "string") ?? false;
