import type { ReactElement } from "react";
import { countWords, type matrix, type Standing } from "../check/progress/matrix";
import { evenParts } from "../quantities/evenParts";
import { anchor } from "./anchor";
import { useText } from "./text";
import { Wide } from "./Wide";

/** Records side by side in one table, so that a portrait page holds them. */
const RECORDS_WIDE = 8;

type Results = ReturnType<typeof matrix>;

/** How many rows of each panel and record passed, failed or are missing, in tables that a page holds. */
export function ResultsMatrix({
  results,
  standingOf,
}: {
  results: Results;
  standingOf: (object: string) => Standing;
}): ReactElement {
  const { page } = useText().report;
  return (
    <>
      {evenParts(results.kinds, RECORDS_WIDE).map((kinds, part, parts) => {
        const [first, last] = [kinds[0]?.title ?? "", kinds.at(-1)?.title ?? ""];
        return (
          <Wide key={first} name={page.resultsOf(first, last)}>
            <table className="matrix">
              <caption>{page.tableOf(first, last, part + 1, parts.length)}</caption>
              <MatrixRows
                results={results}
                kinds={kinds}
                standingOf={standingOf}
                isFirst={part === 0}
              />
            </table>
          </Wide>
        );
      })}
    </>
  );
}

function MatrixRows({
  results: { objects, cell },
  kinds,
  standingOf,
  isFirst,
}: {
  results: Results;
  kinds: Results["kinds"];
  standingOf: (object: string) => Standing;
  isFirst: boolean;
}): ReactElement {
  const { report, findings } = useText();
  const { page, standing } = report;
  return (
    <>
      <thead>
        <tr>
          <th scope="col">{page.object}</th>
          {kinds.map(({ id, title }) => (
            <th key={id} scope="col">
              {title}
            </th>
          ))}
          <th scope="col">{page.standing}</th>
        </tr>
      </thead>
      <tbody>
        {objects.map((object) => (
          <tr key={object} id={isFirst ? anchor(object) : undefined}>
            <th scope="row">{object}</th>
            {kinds.map(({ id }) => (
              <td key={id}>{countWords(cell(object, id), findings)}</td>
            ))}
            <td className="word">{standing[standingOf(object)]}</td>
          </tr>
        ))}
      </tbody>
    </>
  );
}
