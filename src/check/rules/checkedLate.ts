import { serialDay } from "../../quantities/dates";
import { memoizeFor } from "../../quantities/memoizeFor";
import { alikeRows } from "../../records/cellsOf";
import { LINEUP } from "../../records/columns/common";
import { isBlank, type Row, verdictOf } from "../../records/kind";
import { kindWords } from "../../records/kindWords";
import {
  type Context,
  dayOf,
  everyKind,
  type JudgedTable,
  overRows,
  type Rule,
  rowName,
  where,
  withRole,
} from "../context";
import type { Finding } from "../findings/finding";
import { panelsOf } from "../panelsOf";

/** What a review looks at that the tests rely on, by its words. */
const RELIED_ON =
  /drawing|procedure|calibrat|document|specification|zeichnung|verfahren|kalibrier|unterlagen|dessin|proc[ée]dure|[ée]talonn|plano|procedimiento|calibraci|desenho|procedimento/i;

const isInspection = withRole("inspection");
const isDocument = withRole("document");

/** A review or a document looked at only after the first test that relies on it. */
export const checkedLate: Rule = {
  id: "checked-late",
  reach: "table",
  reads: "book",
  of: everyKind,
  find: (context) =>
    context.tables
      .filter(({ kind }) => isInspection(kind) || isDocument(kind))
      .flatMap((table) =>
        overRows(table, (row, stored, judged) =>
          verdictOf(judged) === "Pass" && reliesOn(table, stored)
            ? ofRow(table, row, stored, context)
            : undefined,
        ).map(({ finding }) => finding),
      ),
};

/** Whether tests rely on what a row is of, and nothing tells that it was looked at before. */
const reliesOn = (table: JudgedTable, row: Row): boolean =>
  isDocument(table.kind)
    ? isBlank(row.remarks) && !hasEarlier(table, row)
    : row.point === "R" && RELIED_ON.test(String(row.part ?? ""));

/** Whether the same revision of a document was looked at on an earlier day. */
const hasEarlier = ({ rows }: JudgedTable, { part, found, date }: Row): boolean =>
  rows.some(
    (other) =>
      other.part === part &&
      other.found === found &&
      Number(dayOf(other.date)) < Number(dayOf(date)),
  );

function ofRow(
  table: JudgedTable,
  row: number,
  stored: Row,
  context: Context,
): Finding | undefined {
  const day = dayOf(stored.date);
  if (day === undefined) return undefined;
  const first = panelsOf(context.lineup, String(stored.object ?? LINEUP))
    .flatMap((panel) => firstTests(context).get(panel) ?? [])
    .reduce<Test | undefined>(
      (one, other) => (one && one.day <= other.day ? one : other),
      undefined,
    );
  if (!first || Math.floor(day) <= first.day) return undefined;
  return {
    rule: "checked-late",
    weight: "query",
    ...where(table, row, "date"),
    message: context.text.rules["checked-late"].message(
      rowName(table, row),
      serialDay(day),
      kindWords(context.text, first.kind).title,
      serialDay(first.day),
    ),
    found: serialDay(day),
  };
}

/** The first test on a panel: its record, and its day. */
interface Test {
  /** Id of its record kind. */
  readonly kind: string;
  readonly day: number;
}

/** The first record of each panel that was made with an instrument. */
const firstTests = memoizeFor(({ tables, lineup }: Context): ReadonlyMap<string, Test> => {
  const first = new Map<string, Test>();
  for (const { object, ...test } of tables.flatMap(testsIn))
    for (const panel of panelsOf(lineup, object))
      if (test.day < (first.get(panel)?.day ?? Number.POSITIVE_INFINITY)) first.set(panel, test);
  return first;
});

/** The dated tests of a table, once for each object and day on which it has several. */
const testsIn = ({ kind, at, judged, aside }: JudgedTable): (Test & { object: string })[] =>
  kind.step === undefined || !at.has("instrument")
    ? []
    : alikeRows(judged, ["result", "date", "object"], aside).flatMap(([row = -1, next]) => {
        const test = judged[row] ?? {};
        const day = dayOf(test.date);
        // A day that stands once may be a slip, of which others tell.
        return next === undefined || day === undefined || verdictOf(test) === "Missing"
          ? []
          : [{ kind: kind.id, day: Math.floor(day), object: String(test.object ?? LINEUP) }];
      });
