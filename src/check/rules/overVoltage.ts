import { cellsOf } from "../../records/cellsOf";
import { isBlank, type RecordKind, type Row } from "../../records/kind";
import { sourceText } from "../../standards/criterion";
import { withstandTolerance } from "../../standards/withstandTolerance";
import { amongRows, columnsNamed, inRowOrder } from "../among/amongRows";
import {
  type Context,
  headerOf,
  inUnit,
  type JudgedTable,
  type Rule,
  rowName,
  said,
  where,
  withRole,
} from "../context";
import type { Finding } from "../findings/finding";

const isWithstand = withRole("withstand");

type Stress = NonNullable<RecordKind["stress"]>[number];

/** Of a withstand test every stress above what is asked for is looked at. */
const OF_WITHSTAND: readonly Stress[] = [{ value: "applied", limit: "required", share: 0 }];

const stressesOf = (kind: RecordKind): readonly Stress[] =>
  isWithstand(kind) ? OF_WITHSTAND : (kind.stress ?? []);

/** A test above the required voltage by more than the tolerance: it strained what is tested more than was agreed. */
export const overVoltage: Rule = {
  id: "over-voltage",
  reads: "row",
  of: (kind) => stressesOf(kind).length > 0,
  among: (table) =>
    inRowOrder(
      stressesOf(table.kind).flatMap(({ value, limit }) => {
        const limits = cellsOf(table.judged, limit);
        return amongRows(table, columnsNamed(table, value), (is, _judged, row) => {
          const most = limits[row];
          return typeof is === "number" && typeof most === "number" && is > most;
        });
      }),
    ),
  rows: (table, context) => (row, stored, judged) =>
    isWithstand(table.kind)
      ? aboveRequired(table, row, stored, judged, context)
      : stressesOf(table.kind).flatMap(
          (stress) => beyond(table, row, stored, judged, stress, context) ?? [],
        ),
};

function aboveRequired(
  table: JudgedTable,
  row: number,
  stored: Row,
  judged: Row,
  { lineup, text }: Context,
): Finding | undefined {
  const tolerance = withstandTolerance(lineup.withstand.seconds);
  return typeof stored.applied === "number" &&
    typeof judged.required === "number" &&
    stored.applied > judged.required * (1 + tolerance.value)
    ? {
        rule: "over-voltage",
        weight: "query",
        ...where(table, row, "applied"),
        message: text.rules["over-voltage"].message(
          rowName(table, row),
          said(stored.applied),
          said(judged.required),
          tolerance.value * 100,
        ),
        found: said(stored.applied),
        expected: said(judged.required),
        source: sourceText(tolerance.source),
      }
    : undefined;
}

/** What was put on far above what was asked for (shares: common practice, no source). */
function beyond(
  table: JudgedTable,
  row: number,
  stored: Row,
  judged: Row,
  { value, limit, share, givenOnly }: Stress,
  { lineup, text }: Context,
): Finding | undefined {
  const [is, most] = [stored[value], judged[limit]];
  if (typeof is !== "number" || typeof most !== "number" || !isBlank(stored.remarks))
    return undefined;
  const { own } = table.kind.columns.find(({ id }) => id === limit) ?? {};
  if (is <= most * (1 + share) * (1 + 1e-9) || (givenOnly && !own?.(judged, lineup)))
    return undefined;
  const unit = table.kind.columns.find(({ id }) => id === value)?.unit;
  return {
    rule: "over-voltage",
    weight: "query",
    ...where(table, row, value),
    message: text.rules["over-voltage"].beyond(
      rowName(table, row),
      headerOf(table, value),
      inUnit(is, unit),
      headerOf(table, limit),
      inUnit(most, unit),
      share * 100,
    ),
    found: said(is),
    expected: said(most),
  };
}
