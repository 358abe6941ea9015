import type { Content as Block } from "pdfmake/interfaces";
import type { Messages } from "../messages/messages";
import { serialDay } from "../quantities/dates";
import { groupedBy } from "../quantities/groupedBy";
import { isBlank } from "../records/kind";
import { storedKindWords } from "../records/kindWords";
import { inWords } from "../sheets/ours/equipmentWords";
import { factsOf } from "../sheets/ours/facts";
import type { Content } from "./content";
import { LAYOUT, tableOf } from "./tableOf";
import { sourcesIn } from "./words";

type Text = Messages["handover"];
type Heading = (text: string) => Block;

const day = (serial: number | undefined): string => (serial === undefined ? "" : serialDay(serial));

/** The test instruments with their calibration. */
export const instrumentBlocks = (
  { instruments }: Content,
  text: Text,
  heading: Heading,
): Block[] => [
  heading(text.instruments),
  tableOf(
    text.instrumentColumns,
    instruments.map(({ id, kind, serial, calibrated, due, accuracyPercent }) => [
      id,
      kind,
      serial,
      day(calibrated),
      day(due),
      accuracyPercent === undefined ? "" : String(accuracyPercent),
    ]),
    [60, "*", 100, 60, 60, 50],
  ),
];

/** The sources of all limits, in the order of their numbers. */
export const sourcesOf = ({ rows }: Pick<Content, "rows">): readonly string[] =>
  [...new Set(rows.flatMap(({ sources }) => sourcesIn(sources)))].sort();

/** The sources of the limits with their editions and certainty, and the lineup's own criteria. */
export const sourceBlocks = (
  content: Content,
  text: Text,
  heading: Heading,
  smaller: Heading,
): Block[] => {
  const own = content.lineup.criteria.map(({ quantity, applies, from, value, document }) => [
    quantity,
    applies?.join(", ") ?? text.all,
    from,
    String(value),
    document,
  ]);
  return [
    heading(text.criteria),
    { text: text.criteriaNote, margin: [0, 0, 0, 4] },
    { ol: [...sourcesOf(content)] },
    smaller(text.decision),
    text.decisionOf[content.lineup.decisionRule],
    ...leftOutBlocks(content.lineup, text, smaller),
    ...(own.length > 0 ? [smaller(text.ownCriteria), tableOf(text.ownCriteriaColumns, own)] : []),
  ];
};

/** Records that the project does without, each with its reason. */
const leftOutBlocks = ({ leaveOut }: Content["lineup"], text: Text, smaller: Heading): Block[] => [
  smaller(text.leftOut),
  leaveOut.length === 0
    ? text.leftOutNone
    : tableOf(
        text.leftOutColumns,
        leaveOut.map(({ kind, reason, document }) => [
          storedKindWords(kind).title,
          reason,
          document ?? "",
        ]),
      ),
];

/** What is known of a panel's gear: each fact of its description, those of a transformer or cable on a line of their own. */
export function nameplateOf(
  { panels }: Content["lineup"],
  panel: string,
  text: Text,
  smaller: Heading,
): Block[] {
  const found = panels.find(({ designation }) => designation === panel);
  if (!found) return [];
  const { designation: _, ...gear } = found;
  const facts = factsOf(gear).filter(({ value }) => !isBlank(value));
  const lines = groupedBy(facts, ({ path: [list, at] }) =>
    typeof at === "number" ? `${list} ${at}` : "",
  );
  return [
    smaller(text.nameplate),
    {
      layout: LAYOUT,
      fontSize: 7,
      margin: [0, 0, 0, 6],
      table: {
        dontBreakRows: true,
        widths: [110, "*"],
        body: [...lines].map(([list, some]) => {
          const words = some.map(({ path, value }) => [
            ...inWords(path).split(" · "),
            String(value),
          ]);
          const [entry = ""] = words[0] ?? [];
          const told = words.map((parts) => parts.slice(list === "" ? 0 : 1).join(": "));
          return [{ text: list === "" ? panel : entry, bold: true }, told.join(" · ")];
        }),
      },
    },
  ];
}

/** Readings of a panel that later ones have taken the place of, failed ones among them. */
export const replacedBlocks = (
  history: Content["history"],
  text: Text,
  smaller: Heading,
): Block[] =>
  history.length === 0
    ? []
    : [
        smaller(text.replaced),
        tableOf(
          text.replacedColumns,
          history.map(({ sheet, row, column, value, date, source, replacedOn }) => [
            `${sheet}: ${row.split(" · ").slice(1).join(" · ")}`,
            column,
            String(value ?? ""),
            date,
            source,
            replacedOn,
          ]),
          ["*", "auto", "auto", "auto", "*", "auto"],
        ),
      ];

/** What failed on a panel and was repaired: as found, the repair, as left. */
export const repairBlocks = (repairs: Content["repairs"], text: Text, smaller: Heading): Block[] =>
  repairs.length === 0
    ? []
    : [
        smaller(text.repairs),
        tableOf(
          text.repairColumns,
          repairs.map(
            ({ sheet, row, found, tested, cause, work, done, by, date, left, retested }) => [
              `${sheet}: ${row.split(" · ").slice(1).join(" · ")}`,
              [found, tested].filter(Boolean).join(", "),
              cause,
              `${work}: ${done}`,
              [by, date].filter(Boolean).join(", "),
              left === "" ? text.notRetested : [left, retested].filter(Boolean).join(", "),
            ],
          ),
        ),
      ];
