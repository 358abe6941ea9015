import type { Content as Block } from "pdfmake/interfaces";
import type { Messages } from "../messages/messages";
import { serialDay } from "../quantities/dates";
import type { Content } from "./content";
import { tableOf } from "./tableOf";
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
    instruments.map(({ id, kind, serial, calibrated, due }) => [
      id,
      kind,
      serial,
      day(calibrated),
      day(due),
    ]),
    [60, "*", 100, 60, 60],
  ),
];

/** The sources of the limits with their editions and certainty, and the lineup's own criteria. */
export const sourceBlocks = (
  { rows, lineup }: Content,
  text: Text,
  heading: Heading,
  smaller: Heading,
): Block[] => {
  const sources = new Set(rows.flatMap(({ sources }) => sourcesIn(sources)));
  const own = lineup.criteria.map(({ quantity, applies, from, value, document }) => [
    quantity,
    applies?.join(", ") ?? text.all,
    from,
    String(value),
    document,
  ]);
  return [
    heading(text.criteria),
    { text: text.criteriaNote, margin: [0, 0, 0, 4] },
    { ul: [...sources].sort() },
    ...(own.length > 0 ? [smaller(text.ownCriteria), tableOf(text.ownCriteriaColumns, own)] : []),
  ];
};

/** What is known of a panel's gear: each fact of its description that is no list, and its breaker's. */
export function nameplateOf(
  { panels }: Content["lineup"],
  panel: string,
  text: Text,
  smaller: Heading,
): Block[] {
  const found = panels.find(({ designation }) => designation === panel);
  if (!found) return [];
  const { name, type, section, breaker } = found;
  const facts = Object.entries({ name, type, section, ...breaker, breaker: breaker?.designation })
    .filter(([key, value]) => key !== "designation" && /^(string|number)$/.test(typeof value))
    .map(([key, value]) => `${key}: ${value}`);
  return [smaller(text.nameplate), facts.join(" · ")];
}
