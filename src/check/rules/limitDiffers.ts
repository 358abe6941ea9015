import { isBlank } from "../../records/kind";
import { headerOf, overRows, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../finding";
import { agrees } from "./resultDisagrees";

/** A limit on the sheet that is not the one its criterion gives. */
export const limitDiffers: Rule = {
  id: "limit-differs",
  find: (context) =>
    overRows(context, (table, row, stored, judged) =>
      table.kind.columns.flatMap(({ id, role }): Finding[] => {
        if (role !== "limit" || !table.at.has(id)) return [];
        if (agrees(stored[id] ?? null, judged[id] ?? null)) return [];
        const source = judged[`${id}Source`] ?? judged.source;
        return [
          {
            rule: "limit-differs",
            weight: "stop",
            ...where(table, row, id),
            message: `${rowName(table, row)}: "${headerOf(table, id)}" is ${isBlank(stored[id]) ? "blank" : said(stored[id])}; its criterion gives ${isBlank(judged[id]) ? "none" : said(judged[id])}.`,
            found: said(stored[id]),
            expected: said(judged[id]),
            ...(source ? { source: String(source) } : {}),
          },
        ];
      }),
    ),
};
