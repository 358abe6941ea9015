import type { ReactElement } from "react";
import type { Compared } from "../check/compare/compare";
import { useText } from "./text";
import { Wide } from "./Wide";

/** An earlier revision, and what changed since. */
export interface Earlier {
  readonly file: string;
  readonly compared: Compared;
}

/** What changed in findings and entries since an earlier revision. */
export function ChangesSince({ file, compared }: Earlier): ReactElement {
  const { page } = useText().report;
  const { closed, fresh, changed, same, altered } = compared;
  const { changes } = page;
  const rows = [
    ...fresh.map((finding) => ({ ...finding, what: changes.fresh, text: finding.message })),
    ...changed.map(({ before, after }) => ({
      ...after,
      what: changes.changed,
      text: page.changedFrom(after.message, before.message),
    })),
    ...closed.map((finding) => ({ ...finding, what: changes.closed, text: finding.message })),
    ...altered.map((entry) => ({
      ...entry,
      what: changes.altered,
      text: page.alteredEntry(
        entry.row,
        entry.column,
        String(entry.before),
        entry.after === undefined || entry.after === null ? undefined : String(entry.after),
        entry.rows,
      ),
    })),
  ];
  return (
    <>
      <h2>{page.since(file)}</h2>
      <p className="quiet">
        {page.sinceCounts(closed.length, fresh.length, changed.length, same, altered.length)}
      </p>
      {rows.length > 0 && (
        <Wide name={page.since(file)}>
          <table>
            <thead>
              <tr>
                <th scope="col">{page.change}</th>
                <th scope="col">{page.cell}</th>
                <th scope="col">{page.findingOrEntry}</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ what, sheet, address, text }) => (
                <tr key={`${what}${sheet}${address}${text}`}>
                  <td className="word">{what}</td>
                  <td>
                    {sheet}!{address}
                  </td>
                  <td className="wide">{text}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Wide>
      )}
    </>
  );
}
