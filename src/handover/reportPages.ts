import type { Content as Block, TableCell, TDocumentDefinitions } from "pdfmake/interfaces";
import type { Report } from "../check/check";
import { countWords, matrix, type Standing, standing, standings } from "../check/progress/matrix";
import type { Paper } from "../look/page";
import type { Messages } from "../messages/messages";
import { evenParts } from "../quantities/evenParts";
import { groupedBy } from "../quantities/groupedBy";
import { kindWords } from "../records/kindWords";
import { drawingOf } from "../report/drawing";
import { STANDING } from "../report/standing";
import { PUNCH_CHECK, PUNCH_STATES } from "../sheets/ours/punchSheet";
import { papersOf } from "../sheets/plan/plannedSheet";
import { type Content, type HandedPunch, isFinal } from "./content";
import { inGroups } from "./fingerprint";
import { plotBlocks } from "./plotBlocks";
import { recordBlocks } from "./recordBlocks";
import {
  instrumentBlocks,
  nameplateOf,
  repairBlocks,
  replacedBlocks,
  sourceBlocks,
  sourcesOf,
} from "./reportLists";
import { LAYOUT, tableOf } from "./tableOf";

const INK = "#1b2a33";
const NOTICE = "#fff3c9";

/** Panels side by side in the matrix, and panels in a strip of the drawing, that a page holds. */
const OBJECTS_WIDE = 10;
const PANELS_WIDE = 8;

const heading = (text: string, first = false): Block => ({
  text,
  fontSize: 15,
  bold: true,
  outline: true,
  margin: [0, 0, 0, 6],
  ...(first ? {} : { pageBreak: "before" as const }),
});
const smaller = (text: string, id?: string): Block => ({
  text,
  fontSize: 11,
  bold: true,
  margin: [0, 8, 0, 2],
  ...(id === undefined ? {} : { id }),
});

/** How the report is made: the content, the check that it came of, and what is printed on each page. */
export interface ReportPages {
  readonly content: Content;
  readonly report: Report;
  readonly fingerprint: string;
  readonly paper?: Extract<Paper, "a4" | "letter">;
}

/** The report as pages for the PDF library: every number of it stands in `content`. */
export function reportPages(
  { content, report, fingerprint, paper }: ReportPages,
  messages: Messages,
): TDocumentDefinitions {
  const text = messages.handover;
  const { project, basis } = content.lineup;
  const name = [project.name, project.number].filter(Boolean).join(", ");
  const revision = project.revisions?.at(-1)?.revision;
  const usual = papersOf({ basis }) === "American" ? "letter" : "a4";
  return {
    pageSize: (paper ?? usual) === "letter" ? "LETTER" : "A4",
    pageMargins: [36, 36, 36, 50],
    info: { title: `${text.title}, ${name}`, creator: "Gearproof", producer: "Gearproof" },
    version: "1.7",
    language: "en",
    tagged: true,
    defaultStyle: { font: "Roboto", fontSize: 8, color: INK },
    ...(isFinal(content)
      ? {}
      : { watermark: { text: text.notFinal, color: "#8c1d18", opacity: 0.12, bold: true } }),
    footer: (page, pages) => ({
      margin: [36, 14, 36, 0],
      fontSize: 7,
      stack: [
        text.footer(name, revision, page, pages) + (isFinal(content) ? "" : ` · ${text.notFinal}`),
        text.fingerprintShort(inGroups(fingerprint)),
      ],
    }),
    content: [
      ...cover(content, fingerprint, text),
      ...summary(content, report, messages),
      ...panelSheets(content, report, messages),
      ...plots(report, messages),
      ...punch(content, text),
      ...instrumentBlocks(content, text, heading),
      ...sourceBlocks(content, text, heading, smaller),
      ...cautions(report, messages),
    ],
  };
}

function cover(content: Content, fingerprint: string, text: Messages["handover"]): Block[] {
  const { project, ratings, basis, note } = content.lineup;
  const { voltagekV, frequencyHz, busbarA } = ratings;
  const specification = [project.specification, project.specificationRevision].filter(Boolean);
  const drawings = project.drawings.map(({ number, revision, title }) =>
    [number, revision, title].filter(Boolean).join(" "),
  );
  const facts: [string, string | undefined][] = [
    [text.number, project.number],
    [text.client, project.client ?? " "],
    [text.contractor, project.contractor ?? " "],
    [text.site, project.site],
    [text.specification, specification.join(" ")],
    [text.drawings, drawings.join("; ")],
    [text.ratings, text.ratingsOf(voltagekV, frequencyHz, busbarA, basis)],
    [text.revision, project.revisions?.at(-1)?.revision],
    [text.made, content.checked],
    [text.fingerprint, inGroups(fingerprint)],
  ];
  const stops = content.findings.filter((one) => one.weight === "stop" && !one.concession).length;
  return [
    { text: text.title, fontSize: 26, bold: true, margin: [0, 60, 0, 4], outline: true },
    { text: project.name, fontSize: 18, margin: [0, 0, 0, 16] },
    ...(note ? [{ text: note, margin: [0, 0, 0, 10] } as Block] : []),
    {
      layout: LAYOUT,
      fontSize: 10,
      table: {
        widths: [130, "*"],
        body: facts.flatMap(([label, value]) =>
          value ? [[{ text: label, bold: true }, value]] : [],
        ),
      },
    },
    { text: stops > 0 ? text.stopsLeft(stops) : text.final, bold: true, margin: [0, 14, 0, 6] },
    { text: text.relatesOnly, margin: [0, 0, 0, 6] },
    noticeOf(text.caution),
    smaller(text.revisions),
    revisionsOf(content, text),
    smaller(text.signatures),
    tableOf(
      text.signatureColumns,
      text.signature.map((who) => [{ text: who, margin: [0, 10, 0, 10] }, "", "", "", ""]),
      [110, "*", "*", 60, "*"],
    ),
  ];
}

/** What each issue of the report changed. */
const revisionsOf = (
  { lineup: { project } }: Content,
  { revisionColumns, revisionsNone }: Messages["handover"],
): Block =>
  project.revisions
    ? tableOf(
        revisionColumns,
        project.revisions.map(({ revision, date, change }) => [revision, date ?? "", change]),
        [60, 80, "*"],
      )
    : revisionsNone;

const noticeOf = (text: string): Block => ({
  layout: "noBorders",
  margin: [0, 2, 0, 4],
  table: { widths: ["*"], body: [[{ text, fillColor: NOTICE, margin: [4, 3, 4, 3] }]] },
});

function summary(content: Content, report: Report, messages: Messages): Block[] {
  const { handover: text, report: words, findings } = messages;
  const results = matrix(report.context);
  const standingOf = standings(report, results);
  const strips = evenParts(content.lineup.panels, PANELS_WIDE);
  return [
    heading(text.summary),
    { text: countWords(content.counts, findings), fontSize: 11, margin: [0, 0, 0, 8] },
    ...strips.map(
      (panels): Block => ({
        svg: drawingOf({ ...content.lineup, panels }, standingOf, messages),
        width: Math.min(520, panels.length * 90),
        margin: [0, 0, 0, 6],
      }),
    ),
    // Where the drawing takes most of a page, the tables have one of their own.
    {
      stack: [smaller(text.results)],
      ...(strips.length > 1 ? { pageBreak: "before" as const } : {}),
    },
    {
      fontSize: 7,
      stack: evenParts(results.objects, OBJECTS_WIDE).map((objects) =>
        tableOf(
          [text.record, ...objects],
          [
            ...results.kinds.map(({ id, title }) => [
              { text: title, bold: true },
              ...objects.map((object) => {
                const counts = results.cell(object, id);
                return coloured(countWords(counts, findings), standing([counts]));
              }),
            ]),
            [
              { text: words.page.standing, bold: true },
              ...objects.map((object) =>
                coloured(words.standing[standingOf(object)], standingOf(object)),
              ),
            ],
          ],
          [80, ...objects.map(() => "*")],
        ),
      ),
    },
  ];
}

const coloured = (text: string, standing: Standing): TableCell => {
  const { fill, ink } = STANDING[standing];
  return text === "" ? "" : { text, fillColor: fill, color: ink };
};

function panelSheets(content: Content, report: Report, messages: Messages): Block[] {
  const text = messages.handover;
  const byPanel = groupedBy(content.rows, ({ panel }) => panel);
  const replaced = groupedBy(content.history, ({ panel }) => panel);
  const repaired = groupedBy(content.repairs, ({ panel }) => panel);
  const objects = [...matrix(report.context).objects, ...replaced.keys(), ...repaired.keys()];
  const numbers = new Map(sourcesOf(content).map((source, at) => [source, at + 1]));
  const numberOf = (source: string) => numbers.get(source) ?? 0;
  return [...new Set(objects)].flatMap((panel) => {
    const rows = byPanel.get(panel) ?? [];
    const before = replaced.get(panel) ?? [];
    const repairs = repaired.get(panel) ?? [];
    if ([rows, before, repairs].every(({ length }) => length === 0)) return [];
    return [
      heading(text.sheetOf(panel)),
      ...nameplateOf(content.lineup, panel, text, smaller),
      ...[...groupedBy(rows, ({ title }) => title)].flatMap(([title, some]) =>
        recordBlocks(title, some, numberOf, messages),
      ),
      ...repairBlocks(repairs, text, smaller),
      ...replacedBlocks(before, text, smaller),
    ];
  });
}

function plots({ context }: Report, messages: Messages): Block[] {
  const blocks = plotBlocks(context, matrix(context).objects, messages, smaller);
  return blocks.length > 0 ? [heading(messages.handover.plots), ...blocks] : [];
}

function punch({ findings, punch }: Content, text: Messages["handover"]): Block[] {
  const closed = punch.filter(isClosed);
  const left = punch.filter((item) => !isClosed(item) && item.state !== PUNCH_STATES.accepted);
  const accepted = findings.flatMap(({ message, concession }) =>
    concession ? [[message, concession.reason, concession.name, concession.date]] : [],
  );
  return [
    heading(text.punch),
    left.length > 0
      ? tableOf(
          text.punchColumns,
          left.map((item) => openLine(item, text)),
          [20, 36, 46, "*", 76, 62, 46],
        )
      : text.punchNone,
    ...(closed.length > 0
      ? [
          smaller(text.punchClosed),
          tableOf(
            text.punchClosedColumns,
            closed.map(({ number, panel, what, closed, note }) => [
              String(number),
              panel,
              what,
              closed,
              note,
            ]),
            [20, 46, "*", 50, "*"],
          ),
        ]
      : []),
    smaller(text.concessions),
    accepted.length > 0
      ? tableOf(text.concededColumns, accepted, ["*", "*", 80, 55])
      : text.concessionsNone,
  ];
}

/** Closed, and not found by the check all the same. */
const isClosed = ({ state, check }: HandedPunch): boolean =>
  state === PUNCH_STATES.closed && check !== PUNCH_CHECK.found;

const openLine = (
  { number, severity, panel, what, sheet, cell, owner, due, state }: HandedPunch,
  text: Messages["handover"],
): string[] => [
  String(number),
  severity,
  panel,
  what,
  sheet === "" ? "" : `${sheet}!${cell}`,
  [owner, due].filter(Boolean).join(", "),
  state === PUNCH_STATES.closed ? text.stillFound(state) : state,
];

function cautions({ context }: Report, messages: Messages): Block[] {
  const { handover: text } = messages;
  const said = context.tables.flatMap(({ kind }) => kindWords(messages, kind.id).cautions);
  return [
    heading(text.cautions),
    noticeOf(text.caution),
    { ul: [...new Set(said)], margin: [0, 6, 0, 0] },
    { text: text.end, bold: true, alignment: "center", margin: [0, 14, 0, 0] },
  ];
}
