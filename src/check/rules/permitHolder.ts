import { bare } from "../../lineup/lineup";
import { cellsOf } from "../../records/cellsOf";
import { isBlank } from "../../records/kind";
import { type Context, everyKind, type Rule, rowName, where, withRole } from "../context";
import type { Finding } from "../findings/finding";

const isPermit = withRole("permit");
const isInspection = withRole("inspection");

/** Whether a name is another one, or a part of it: initials alone are no part. */
const isPart = (one: string, other: string): boolean =>
  one === other || (one.length > SHORT && other.includes(one));
const SHORT = 3;

/** A permit held by somebody who made none of the records, where others are held by those who did. */
export const permitHolder: Rule = {
  id: "permit-holder",
  reads: "book",
  of: everyKind,
  find: (context) => {
    const workers = workersIn(context);
    const works = (name: string) => workers.some((one) => isPart(one, name) || isPart(name, one));
    const held = context.tables
      .filter(({ kind }) => isPermit(kind))
      .flatMap((table) =>
        table.rows.flatMap(({ by: holder }, row) =>
          isBlank(holder) || table.aside.has(row)
            ? []
            : [{ table, row, holder: String(holder), isOfWork: works(bare(String(holder))) }],
        ),
      );
    // Where no holder works, a project has permits held by others than the crews.
    if (!held.some(({ isOfWork }) => isOfWork)) return [];
    return held
      .filter(({ isOfWork }) => !isOfWork)
      .map(
        ({ table, row, holder }): Finding => ({
          rule: "permit-holder",
          weight: "query",
          ...where(table, row, "by"),
          message: context.text.rules["permit-holder"].message(rowName(table, row), holder),
          found: holder,
        }),
      );
  },
};

/** Those who made records, by their plain names; whoever releases an inspection point looks on. */
const workersIn = ({ tables }: Context): readonly string[] => [
  ...new Set(
    tables.flatMap(({ kind, rows }) =>
      isPermit(kind) || isInspection(kind)
        ? []
        : [...new Set(cellsOf(rows, "by"))].flatMap((by) =>
            isBlank(by) ? [] : [bare(String(by))],
          ),
    ),
  ),
];
