import { type CellValue, isBlank } from "../../records/kind";
import { overColumns, overRows, type Rule, rowName, said, where } from "../context";
import { agrees } from "./resultDisagrees";

/** A limit on the sheet that is not the one its criterion gives, or a rating or source that is not the lineup's. */
export const limitDiffers: Rule = {
  id: "limit-differs",
  find: (context) =>
    overRows(context, (table) => {
      const ours = table.kind.columns.filter(
        ({ id, role, formula }) =>
          (role === "limit" || role === "given") &&
          table.at.has(id) &&
          (table.calculated || !formula),
      );
      return (row, stored, judged) => {
        const planned = table.given.get(table.keys[row] ?? "");
        return overColumns(ours, ({ id, header, role, value }) => {
          const wanted = value ? judged[id] : planned ? planned[id] : stored[id];
          if (agrees(stored[id], wanted)) return undefined;
          const limit = role === "limit";
          return {
            rule: limit ? "limit-differs" : "given-differs",
            weight: "stop",
            ...where(table, row, id),
            message: `${rowName(table, row)}: "${header}" is ${shown(stored[id])}; ${limit ? "its criterion" : "the lineup"} gives ${shown(wanted)}.`,
            found: said(stored[id]),
            expected: said(wanted),
            ...(limit ? { source: String(judged.sources ?? "") } : {}),
          };
        });
      };
    }),
};

const shown = (cell: CellValue | undefined) => (isBlank(cell) ? "blank" : said(cell));
