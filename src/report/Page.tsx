import type { ReactElement } from "react";
import type { Report } from "../check/check";
import { byWeight } from "../check/findings/byWeight";
import { matrix, standings } from "../check/progress/matrix";
import { evenParts } from "../quantities/evenParts";
import { anchor } from "./anchor";
import { ChangesSince, type Earlier } from "./ChangesSince";
import { Elevation } from "./Elevation";
import { FindingsTable } from "./FindingsTable";
import { Plots } from "./Plots";
import { ResultsMatrix } from "./ResultsMatrix";
import { STANDING } from "./standing";
import { STYLE } from "./style";
import { useText } from "./text";

/** Panels in one strip of the drawing, so that a portrait page holds them. */
const PANELS_WIDE = 10;

interface Props {
  readonly file: string;
  readonly made: string;
  readonly report: Report;
  readonly earlier?: Earlier;
}

/** The check of one workbook as a page that needs nothing but itself. */
export function Page({ file, made, report, earlier }: Props): ReactElement {
  const { page, standing } = useText().report;
  const { lineup } = report.context;
  const results = matrix(report.context);
  const standingOf = standings(report);
  const { project, ratings, basis, note, panels } = lineup;
  return (
    <html lang="en">
      <head>
        <meta charSet="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        {/* The page loads nothing and runs nothing, whatever a workbook put into it. */}
        <meta
          httpEquiv="Content-Security-Policy"
          content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"
        />
        <meta name="generator" content="Gearproof" />
        <title>{page.title(file)}</title>
        {/* biome-ignore lint/security/noDangerouslySetInnerHtml: our own constant style sheet */}
        <style dangerouslySetInnerHTML={{ __html: STYLE }} />
      </head>
      <body>
        <header>
          <h1>{project.name}</h1>
          <p>{page.subtitle(project.site, ratings.voltagekV, basis)}</p>
          <p className="quiet">{page.made(file, made)}</p>
          {note && <p className="quiet">{note}</p>}
        </header>
        <main>
          <p className="caution">{page.caution}</p>
          <ul className="counts" aria-label={page.counts}>
            {(["fail", "inconclusive", "missing", "open", "pass"] as const).map((key) => (
              <li key={key} style={{ background: STANDING[key].fill, color: STANDING[key].ink }}>
                {report.counts[key]} {standing[key]}
              </li>
            ))}
          </ul>
          <h2>{page.lineup}</h2>
          <figure>
            {evenParts(panels, PANELS_WIDE).map((strip) => (
              <Elevation
                key={strip[0]?.designation}
                lineup={{ ...lineup, panels: strip }}
                least={72}
                standingOf={standingOf}
                hrefOf={(object) => `#${anchor(object)}`}
              />
            ))}
          </figure>
          <h2>{page.results}</h2>
          <ResultsMatrix results={results} standingOf={standingOf} />
          <h2>{page.findings}</h2>
          <FindingsTable findings={byWeight(report.findings)} />
          {earlier && <ChangesSince {...earlier} />}
          <h2>{page.plots}</h2>
          <Plots tables={report.context.tables} order={results.objects} />
        </main>
      </body>
    </html>
  );
}
