import type { Content as Block } from "pdfmake/interfaces";
import type { Context } from "../check/context";
import type { Messages } from "../messages/messages";
import { evenParts } from "../quantities/evenParts";
import { kindWords } from "../records/kindWords";
import { plotSvg } from "../report/plot";

/** Panels side by side in one plot. */
const PANELS_WIDE = 14;
const WIDTH = 520;

/** Readings against their limits, a plot for each record kind that has one and as many panels as it holds. */
export const plotBlocks = (
  { tables }: Pick<Context, "tables">,
  order: readonly string[],
  messages: Messages,
  smaller: (text: string) => Block,
): Block[] =>
  tables.flatMap((table) => {
    const { plot, id } = table.kind;
    if (!plot) return [];
    return evenParts(order, PANELS_WIDE).flatMap((objects): Block[] => {
      const among = new Set(objects);
      const some = {
        ...table,
        judged: table.judged.filter((row) => among.has(String(row.object))),
      };
      const drawn = plotSvg(some, objects, messages.report);
      return drawn
        ? [
            {
              unbreakable: true,
              stack: [
                smaller(kindWords(messages, id).title),
                drawn.upward,
                {
                  svg: drawn.svg.replaceAll(/Arial, ?Helvetica, ?sans-serif/g, "Roboto"),
                  width: WIDTH,
                },
              ],
            },
          ]
        : [];
    });
  });
