import type { ReactElement } from "react";
import { type Finding, isOpen, type Weight } from "../check/findings/finding";
import { useText } from "./text";
import { Wide } from "./Wide";

/** Every finding with its cell, its rule, and why it was accepted where it was. */
export function FindingsTable({ findings }: { findings: readonly Finding[] }): ReactElement {
  const { page } = useText().report;
  const open = (weight: Weight) =>
    findings.filter((finding) => isOpen(finding) && finding.weight === weight).length;
  return (
    <>
      <p className="quiet">{page.weights(open("stop"), open("query"), open("note"))}</p>
      {findings.length === 0 ? (
        <p>{page.noFindings}</p>
      ) : (
        <Wide name={page.findings}>
          <table>
            <thead>
              <tr>
                <th scope="col">{page.weight}</th>
                <th scope="col">{page.cell}</th>
                <th scope="col">{page.finding}</th>
                <th scope="col">{page.rule}</th>
              </tr>
            </thead>
            <tbody>
              {findings.map((finding) => (
                <FindingRow
                  key={`${finding.rule}${finding.sheet}${finding.address}${finding.message}`}
                  finding={finding}
                />
              ))}
            </tbody>
          </table>
        </Wide>
      )}
    </>
  );
}

function FindingRow({ finding }: { finding: Finding }): ReactElement {
  const {
    report: { page },
    check: { weights },
  } = useText();
  const { weight, sheet, address, message, concession, source, rule } = finding;
  return (
    <tr>
      <td className="word">{weights[weight]}</td>
      <td>
        {sheet}!{address}
      </td>
      <td className="wide">
        {message}
        {concession && (
          <span className="quiet">
            {page.conceded(concession.name, concession.date, concession.reason)}
          </span>
        )}
        {source && <span className="quiet">{page.source(source)}</span>}
      </td>
      <td>{rule}</td>
    </tr>
  );
}
