import type { Column } from "../../records/kind";
import { SOURCES } from "../../records/limits";
import { asLineupHasIt } from "../compare/asLineupHasIt";
import { amongDifferences, differences } from "../compare/differences";
import { isSameResult } from "../compare/isSameResult";
import { type Rule, rowName, said, shown, where } from "../context";

const isFact = ({ role, id }: Column) => role === "given" && id !== SOURCES;

/** A rating or fact of a row that is not the lineup's. */
export const givenDiffers: Rule = {
  id: "given-differs",
  reach: "table",
  reads: "row",
  among: (table) => amongDifferences(table, isFact),
  rows: (table, { text, lineup }) => {
    const ids = new Map(table.kind.columns.map(({ id, header }) => [header, id]));
    const byLineup = asLineupHasIt(table, lineup);
    const differ = differences(table, isFact, (row, { id, header }, stored, wanted) => ({
      rule: "given-differs",
      weight: "stop",
      ...where(table, row, id),
      message: text.rules["given-differs"].message(
        rowName(table, row),
        header,
        shown(stored, text),
        shown(wanted, text),
      ),
      found: said(stored),
      expected: said(wanted),
    }));
    return (row, stored, judged) => {
      const found = [differ(row, stored, judged) ?? []].flat();
      if (found.length === 0) return found;
      const right = byLineup(row, stored);
      // What follows from another name or fact, and is right by the lineup's, was not changed.
      return found.filter(({ column = "" }) => {
        const id = ids.get(column) ?? "";
        return !(right && isSameResult(stored[id], right[id]));
      });
    };
  },
};
