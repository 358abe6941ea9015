import type { Column } from "../../records/kind";
import { asLineupHasIt } from "../compare/asLineupHasIt";
import { amongDifferences, differences } from "../compare/differences";
import { earlierIn } from "../compare/earlierBuild";
import { isSameResult } from "../compare/isSameResult";
import { type Rule, rowName, said, shown, where } from "../context";

const isLimit = ({ role }: Column) => role === "limit";

/** A limit on the sheet that is not the one its criterion gives. */
export const limitDiffers: Rule = {
  id: "limit-differs",
  reach: "table",
  reads: "row",
  among: (table) => amongDifferences(table, isLimit),
  rows: (table, context) => {
    const { text } = context;
    const isEarlier = earlierIn(table, context);
    const differ = differences(table, isLimit, (row, { id, header }, stored, wanted, judged) => ({
      rule: "limit-differs",
      weight: "stop",
      ...where(table, row, id),
      message: text.rules["limit-differs"].message(
        rowName(table, row),
        header,
        shown(stored, text),
        shown(wanted, text),
      ),
      found: said(stored),
      expected: said(wanted),
      source: String(judged.sources ?? ""),
    }));
    const byLineup = asLineupHasIt(table, context.lineup);
    const ids = new Map(table.kind.columns.map(({ id, header }) => [header, id]));
    return (row, stored, judged) => {
      const found = [differ(row, stored, judged) ?? []].flat();
      if (found.length === 0) return found;
      const right = byLineup(row, stored);
      return found.filter(({ column = "" }) => {
        const id = ids.get(column) ?? "";
        return !isEarlier(row, id) && !(right && isSameResult(stored[id], right[id]));
      });
    };
  },
};
