import type { ReactElement, ReactNode } from "react";
import { byWeight } from "../check/byWeight";
import type { Report } from "../check/check";
import type { Compared } from "../check/compare";
import { isOpen } from "../check/finding";
import { countWords, matrix, standings } from "../check/matrix";
import { evenParts } from "../quantities/evenParts";
import { howMany } from "../quantities/howMany";
import { Elevation } from "./Elevation";
import { plotSvg } from "./plot";
import { STANDING } from "./standing";

const STYLE = `
:root { color: #1b2a33; background: #fff; font: 15px/1.45 Arial, Helvetica, sans-serif; }
body { margin: 0 auto; max-width: 1120px; padding: 20px 24px 60px; }
h1 { font-size: 24px; margin: 0 0 2px; } h2 { font-size: 18px; margin: 34px 0 8px; } h3 { font-size: 15px; margin: 22px 0 4px; }
p { margin: 4px 0; } .quiet { color: #4b5a63; }
.caution { background: #fff3c9; border-left: 6px solid #7a4e00; padding: 8px 12px; margin: 14px 0; }
.counts { display: flex; flex-wrap: wrap; gap: 8px; margin: 12px 0; padding: 0; list-style: none; }
.counts li { padding: 6px 14px; font-weight: bold; border: 1px solid #1b2a33; }
table { border-collapse: collapse; width: 100%; } th, td { border: 1px solid #9aa7ae; padding: 5px 8px; text-align: left; vertical-align: top; }
caption { text-align: left; padding: 10px 0 4px; color: #4b5a63; }
thead th { background: #24404d; color: #fff; } tbody th { background: #f1f4f5; white-space: nowrap; }
td.word { font-weight: bold; white-space: nowrap; } .scroll { overflow-x: auto; }
figure { margin: 8px 0 18px; overflow-x: auto; } :is(figure, [role=img]) svg { width: 100%; min-width: 860px; height: auto; } td { min-width: 5em; } td.wide { min-width: 22em; } svg a { cursor: pointer; }
a { color: #14506b; } a:focus-visible { outline: 3px solid #14506b; outline-offset: 2px; }
tr:target { outline: 3px solid #14506b; }
@page { margin: 12mm; }
@media print {
  body { padding: 0; max-width: none; font-size: 11px; } h2, h3, caption { break-after: avoid; }
  tr, figure, .plot { break-inside: avoid; } thead { display: table-header-group; }
  a { color: inherit; text-decoration: none; } .quiet, caption { color: #1b2a33; }
  :is(figure, [role=img]) svg { min-width: 0 !important; } .scroll, figure { overflow: visible; }
  .counts li, thead th { background: #fff !important; color: #1b2a33 !important; } thead th { border-bottom: 2px solid #1b2a33; }
  th, td { padding: 4px 6px; } .matrix { font-size: 10px; } .matrix :is(th, td) { padding: 3px 4px; } td { min-width: 0; } td.wide { min-width: 16em; }
}
`;

/** Records side by side in one table, and panels in one strip of the drawing, so that a portrait page holds them. */
const [RECORDS_WIDE, PANELS_WIDE] = [8, 10];

/** An earlier revision and what became of it. */
export interface Earlier {
  readonly file: string;
  readonly compared: Compared;
}

interface Props {
  readonly file: string;
  readonly made: string;
  readonly report: Report;
  readonly earlier?: Earlier;
}

const anchor = (text: string) => `p-${encodeURIComponent(text)}`;

/** The check of one workbook as a page that needs nothing but itself. */
export function Page({ file, made, report, earlier }: Props): ReactElement {
  const { lineup, tables } = report.context;
  const { objects, kinds, cell } = matrix(report.context);
  const standingOf = standings(report);
  const findings = byWeight(report.findings);
  return (
    <html lang="en">
      <head>
        <meta charSet="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="generator" content="Gearproof" />
        <title>{`Check of ${file}`}</title>
        {/* biome-ignore lint/security/noDangerouslySetInnerHtml: our own constant style sheet */}
        <style dangerouslySetInnerHTML={{ __html: STYLE }} />
      </head>
      <body>
        <header>
          <h1>{lineup.project.name}</h1>
          <p>
            {lineup.project.site} · {lineup.ratings.voltagekV} kV · basis {lineup.basis}
          </p>
          <p className="quiet">
            Check of {file}, {made}
          </p>
          {lineup.note && <p className="quiet">{lineup.note}</p>}
        </header>
        <main>
          <p className="caution">
            This page evaluates records. It never says that equipment is safe to energize: that is
            decided by licensed people under the local code, the site's permit system and the
            maker's instructions.
          </p>
          <ul className="counts" aria-label="Rows by result">
            {(["fail", "inconclusive", "missing", "pass"] as const).map((key) => (
              <li key={key} style={{ background: STANDING[key].fill, color: STANDING[key].ink }}>
                {report.counts[key]} {STANDING[key].word}
              </li>
            ))}
          </ul>
          <h2>Lineup</h2>
          <figure>
            {evenParts(lineup.panels, PANELS_WIDE).map((panels) => (
              <Elevation
                key={panels[0]?.designation}
                lineup={{ ...lineup, panels }}
                least={72}
                standingOf={standingOf}
                hrefOf={(object) => `#${anchor(object)}`}
              />
            ))}
          </figure>
          <h2>Results by panel and record</h2>
          {evenParts(kinds, RECORDS_WIDE).map((some, part, parts) => {
            const first = some[0]?.title ?? "none";
            const last = some.at(-1)?.title ?? "none";
            return (
              <Wide key={first} name={`Results by panel and record, ${first} to ${last}`}>
                <table className="matrix">
                  <caption>
                    {`${first} to ${last}, ${part + 1} of ${howMany(parts.length, "table")}`}
                  </caption>
                  <thead>
                    <tr>
                      <th scope="col">Panel or section</th>
                      {some.map(({ id, title }) => (
                        <th key={id} scope="col">
                          {title}
                        </th>
                      ))}
                      <th scope="col">Stands at</th>
                    </tr>
                  </thead>
                  <tbody>
                    {objects.map((object) => (
                      <tr key={object} id={part === 0 ? anchor(object) : undefined}>
                        <th scope="row">{object}</th>
                        {some.map(({ id }) => (
                          <td key={id}>{countWords(cell(object, id))}</td>
                        ))}
                        <td className="word">{STANDING[standingOf(object)].word}</td>
                      </tr>
                    ))}
                  </tbody>
                </table>
              </Wide>
            );
          })}
          <h2>Findings</h2>
          <p className="quiet">
            {(["stop", "query", "note"] as const)
              .map(
                (weight) =>
                  `${findings.filter((one) => isOpen(one) && one.weight === weight).length} ${weight}`,
              )
              .join(", ")}
            . A stop means that the record does not prove what it must; a query wants an answer; a
            note is worth knowing.
          </p>
          {findings.length === 0 ? (
            <p>No findings.</p>
          ) : (
            <Wide name="Findings">
              <table>
                <thead>
                  <tr>
                    <th scope="col">Weight</th>
                    <th scope="col">Cell</th>
                    <th scope="col">Finding</th>
                    <th scope="col">Rule</th>
                  </tr>
                </thead>
                <tbody>
                  {findings.map((finding) => (
                    <tr key={`${finding.rule}${finding.sheet}${finding.address}${finding.message}`}>
                      <td className="word">{finding.weight}</td>
                      <td>
                        {finding.sheet}!{finding.address}
                      </td>
                      <td className="wide">
                        {finding.message}
                        {finding.concession && (
                          <span className="quiet">
                            {" "}
                            Conceded by {finding.concession.name}, {finding.concession.date}:{" "}
                            {finding.concession.reason}.
                          </span>
                        )}
                        {finding.source && <span className="quiet"> Source: {finding.source}</span>}
                      </td>
                      <td>{finding.rule}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </Wide>
          )}
          {earlier && <Since {...earlier} />}
          <h2>Readings against limits</h2>
          {tables.map((table) => {
            const { plot } = table.kind;
            if (!plot) return undefined;
            const svg = plotSvg(table, objects);
            return (
              <section key={table.table.name} className="plot">
                <h3>{table.kind.title}</h3>
                {svg ? (
                  <Wide name={table.kind.title}>
                    <div
                      role="img"
                      aria-label={`${table.kind.title}: readings against limits by panel, ${plot.unit}${plot.log ? ", logarithmic axis" : ""}`}
                      // biome-ignore lint/security/noDangerouslySetInnerHtml: drawn by the chart library, labels escaped
                      dangerouslySetInnerHTML={{ __html: svg }}
                    />
                  </Wide>
                ) : (
                  <p>No readings yet.</p>
                )}
              </section>
            );
          })}
        </main>
      </body>
    </html>
  );
}

/** A table that scrolls by itself where it is wider than the page; by keyboard too. */
const Wide = ({ name, children }: { name: string; children: ReactNode }): ReactElement => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
  <section className="scroll" aria-label={name} tabIndex={0}>
    {children}
  </section>
);

/** What became of findings and readings since an earlier revision. */
function Since({ file, compared }: Earlier): ReactElement {
  const { closed, fresh, changed, same, altered } = compared;
  const rows = [
    ...fresh.map((one) => ["new", one, one.message] as const),
    ...changed.map(
      ({ before, after }) =>
        ["changed", after, `${after.message} Before: ${before.message}`] as const,
    ),
    ...closed.map((one) => ["closed", one, one.message] as const),
    ...altered.map(
      (one) =>
        [
          "altered",
          one,
          `${one.row}, "${one.column}": ${one.before} before, ${one.after ?? "blank"} now.`,
        ] as const,
    ),
  ];
  return (
    <>
      <h2>Since {file}</h2>
      <p className="quiet">
        {howMany(closed.length, "finding")} closed, {fresh.length} new, {changed.length} changed,{" "}
        {same} as they were; entries altered: {altered.length}.
      </p>
      {rows.length > 0 && (
        <Wide name="Since the earlier revision">
          <table>
            <thead>
              <tr>
                <th scope="col">What became</th>
                <th scope="col">Cell</th>
                <th scope="col">Finding or entry</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(([what, { sheet, address }, text]) => (
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
