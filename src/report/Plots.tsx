import type { ReactElement } from "react";
import type { JudgedTable } from "../check/context";
import { kindWords } from "../records/kindWords";
import { plotSvg } from "./plot";
import { useText } from "./text";
import { Wide } from "./Wide";

/** The readings of each record against their limits, panel by panel. */
export function Plots({
  tables,
  order,
}: {
  tables: readonly JudgedTable[];
  /** Panels and sections in the order in which they stand. */
  order: readonly string[];
}): ReactElement {
  const messages = useText();
  const { report } = messages;
  const { page } = report;
  return (
    <>
      {tables.map((table) => {
        const { plot, id } = table.kind;
        const { title } = kindWords(messages, id);
        if (!plot) return undefined;
        const drawn = plotSvg(table, order, report);
        return (
          <section key={table.table.name} className="plot">
            <h3>{title}</h3>
            {drawn ? (
              <Wide name={title}>
                <p>{drawn.upward}</p>
                <div
                  role="img"
                  aria-label={page.plot(title, plot.unit, plot.log)}
                  // biome-ignore lint/security/noDangerouslySetInnerHtml: drawn by the chart library, labels escaped
                  dangerouslySetInnerHTML={{ __html: drawn.svg }}
                />
              </Wide>
            ) : (
              <p>{page.noReadings}</p>
            )}
          </section>
        );
      })}
    </>
  );
}
