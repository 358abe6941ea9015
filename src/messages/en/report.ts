import { countIn } from "../plurals";

const count = countIn("en");

/** Texts of the drawing, and of the page that the check writes. */
export const report = {
  standing: {
    pass: "Pass",
    fail: "Fail",
    inconclusive: "Inconclusive",
    missing: "Missing",
    open: "Open",
    none: "No records",
  },
  singleLine: (panels: number) =>
    `Single line of ${count(panels, { one: "panel", other: "panels" })}, an impression`,
  singleLineOf: (panel: string, lacks: readonly string[]) =>
    lacks.length === 0 ? panel : `${panel}, not described yet: ${lacks.join(", ")}`,
  parts: {
    breaker: "Circuit-breaker",
    currentTransformers: "Current transformers",
    voltageTransformers: "Voltage transformers",
    protection: "Protection",
    cables: "Cables",
  },
  drawing: (project: string, panels: number) =>
    `Front elevation of ${project}: ${count(panels, { one: "panel", other: "panels" })}`,
  page: {
    title: (file: string) => `Check of ${file}`,
    subtitle: (site: string, kV: number, basis: string) => `${site} · ${kV} kV · basis ${basis}`,
    made: (file: string, day: string) => `Check of ${file}, ${day}`,
    caution:
      "This page evaluates records. It never says that equipment is safe to energize: licensed people decide that under the local code, the site's permit system and the manufacturer's instructions.",
    counts: "Rows by result",
    lineup: "Lineup",
    results: "Results by panel and record",
    resultsOf: (first: string, last: string) => `Results by panel and record, ${first} to ${last}`,
    tableOf: (first: string, last: string, part: number, parts: number) =>
      `${first} to ${last}, table ${part} of ${parts}`,
    object: "Panel or section",
    standing: "Overall",
    findings: "Findings",
    weights: (stop: number, query: number, note: number) =>
      `${stop} stop, ${query} query, ${note} note. A stop means that the record does not prove what it must; a query needs an answer; a note is worth knowing.`,
    noFindings: "No findings.",
    weight: "Weight",
    cell: "Cell",
    finding: "Finding",
    rule: "Rule",
    conceded: (name: string, date: string, reason: string) =>
      ` Accepted by ${name}, ${date}: ${reason}.`,
    source: (source: string) => ` Source: ${source}`,
    since: (file: string) => `Changes since ${file}`,
    sinceCounts: (closed: number, fresh: number, changed: number, same: number, altered: number) =>
      `${count(closed, { one: "finding", other: "findings" })} closed, ${fresh} new, ${changed} changed, ${same} unchanged; ${count(altered, { one: "entry", other: "entries" })} altered.`,
    change: "Change",
    changes: { fresh: "new", changed: "changed", closed: "closed", altered: "altered" },
    findingOrEntry: "Finding or entry",
    changedFrom: (now: string, before: string) => `${now} Before: ${before}`,
    alteredEntry: (
      row: string,
      column: string,
      before: string,
      after: string | undefined,
      rows = 1,
    ) =>
      `${row}, "${column}": was ${before}, now ${after ?? "blank"}${rows > 1 ? `, in ${count(rows, { one: "row", other: "rows" })}` : ""}.`,
    plots: "Readings against limits",
    plot: (kind: string, unit: string, log: boolean) =>
      `${kind}: readings against limits by panel, ${unit}${log ? ", logarithmic axis" : ""}`,
    noReadings: "No readings yet.",
    above: "above its number",
  },
};
