import { isBlank } from "../../records/kind";
import { overColumns, overRows, type Rule, rowName, said, where } from "../context";
import { agrees } from "./resultDisagrees";

/** A limit on the sheet that is not the one its criterion gives. */
export const limitDiffers: Rule = {
  id: "limit-differs",
  find: (context) =>
    overRows(context, (table) => {
      const limits = table.kind.columns.filter(
        ({ id, role }) => role === "limit" && table.at.has(id),
      );
      return (row, stored, judged) =>
        overColumns(limits, ({ id, header }) => {
          if (agrees(stored[id], judged[id])) return undefined;
          return {
            rule: "limit-differs",
            weight: "stop",
            ...where(table, row, id),
            message: `${rowName(table, row)}: "${header}" is ${isBlank(stored[id]) ? "blank" : said(stored[id])}; its criterion gives ${isBlank(judged[id]) ? "none" : said(judged[id])}.`,
            found: said(stored[id]),
            expected: said(judged[id]),
            source: String(judged.sources ?? ""),
          };
        });
    }),
};
