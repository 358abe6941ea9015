import type { Lineup } from "../../lineup/lineup";
import type { OwnLimit } from "../../lineup/ownCriterion";
import { panelOf } from "../../lineup/panelOf";
import type { Criterion } from "../../standards/criterion";
import { widestOpening } from "../../standards/iec60529.2013";
import { isFor, ownItems } from "../columns/checkItems";
import { closing, LINEUP, trail } from "../columns/common";
import {
  type Column,
  type Comparison,
  isBlank,
  type Own,
  type RecordKind,
  type Row,
} from "../kind";
import { sourceOf, sources, stricterOf, strictestOf } from "../limits";
import { verdictBy } from "../verdict";

const OPENING = "Widest opening in the enclosure";

/**
 * What is measured of a lineup as it stands, and the criterion that limits it: common practice. Some are
 * measured only where a limit is given.
 */
const USUAL: readonly {
  readonly item: string;
  readonly quantity: string;
  readonly end: "least" | "most";
  readonly each: "lineup" | "panel";
  readonly ifLimited?: true;
}[] = [
  ...(
    [
      ["Clearance in front, least", "clearance in front mm"],
      ["Clearance behind, least", "clearance behind mm"],
      ["Clearance at the left end", "clearance at the sides mm"],
      ["Clearance at the right end", "clearance at the sides mm"],
      ["Clearance above, least", "clearance above mm"],
    ] as const
  ).map(([item, quantity]) => ({ item, quantity, end: "least", each: "lineup" }) as const),
  ...(
    [
      ["Out of level over 1 m, along the lineup", "level over 1 m mm"],
      ["Out of level over 1 m, front to back", "level over 1 m mm"],
      ["Front out of line with its neighbour's", "alignment of fronts mm"],
    ] as const
  ).map(([item, quantity]) => ({ item, quantity, end: "most", each: "panel" }) as const),
  {
    item: "Clearance under live parts, least",
    quantity: "clearance under live parts mm",
    end: "least",
    each: "panel",
    ifLimited: true,
  },
  {
    item: OPENING,
    quantity: "opening in the enclosure mm",
    end: "most",
    each: "panel",
    ifLimited: true,
  },
];

type End = "least" | "most";

/** A limit that the lineup gives: with an item of the project's own, or as a criterion. */
const givenLimit = (end: End): Own =>
  stricterOf(end, (row, lineup) => drawn(end, row, lineup), usual[end]);

/** The criteria for what is usually measured. */
const usualLimit = (end: End): Own =>
  strictestOf(
    end,
    ...USUAL.filter((one) => one.end === end).map(({ item, quantity }) => ({
      name: quantity,
      of: ({ part }: Row) => part === item,
    })),
  );
const usual = { least: usualLimit("least"), most: usualLimit("most") };

const drawn = (end: End, row: Row, lineup: Lineup): OwnLimit | undefined => {
  const panel = panelOf(lineup, String(row.object));
  const own = ownItems(lineup, "dimensions").find(
    (one) => one.item === row.part && panel && isFor(one, panel),
  );
  return own && limitOf(own[end], own.document);
};
const limitOf = (value: number | undefined, document: string): OwnLimit | undefined =>
  value === undefined ? undefined : { from: "project", value, document };
const least = givenLimit("least");
const ownMost = givenLimit("most");
/** The maker's or project's, where the degree of protection does not ask for less. */
const most: Own = Object.assign(
  (row: Row, lineup: Lineup) => {
    const own = ownMost(row, lineup);
    const standard = standardMost(row, lineup);
    return own && standard && standard.value < own.value ? undefined : own;
  },
  { quantities: ownMost.quantities },
);

/** What the degree of protection on the plate limits: the widest opening. */
const standardMost = ({ part }: Row, { ratings }: Lineup): Criterion | undefined => {
  if (part !== OPENING || ratings.degreeOfProtection === undefined) return undefined;
  const found = widestOpening(ratings.degreeOfProtection);
  return found.ok ? found.value : undefined;
};

const accepted: readonly Comparison[] = [
  { value: "reading", limit: "least", unit: "mm", sense: "least", when: "least" },
  { value: "reading", limit: "most", unit: "mm", sense: "most", when: "most" },
];

const limit = (id: End, header: string, own: NonNullable<Column["own"]>): Column => ({
  id,
  header,
  role: "limit",
  width: 9,
  unit: "mm",
  own,
  help: "From the approved drawing or the maker; where the lineup gives none, type it here and name the document.",
  value: (row, lineup) =>
    (id === "most" ? standardMost(row, lineup)?.value : undefined) ?? row[id] ?? null,
});

const isLimited = (row: Row, lineup: Lineup): boolean =>
  [least, most, standardMost].some((limit) => limit(row, lineup) !== undefined);

const isTyped = (row: Row, lineup: Lineup) =>
  (!isBlank(row.least) && !least(row, lineup)) ||
  (!isBlank(row.most) && !most(row, lineup) && !standardMost(row, lineup));

const ENDS = ["least", "most"] as const;

/** Where a limit comes from; of one that was typed, the document beside it says it. */
const sourceFor = (end: End, row: Row, lineup: Lineup): string =>
  sourceOf(
    end === "least" ? least(row, lineup) : (most(row, lineup) ?? standardMost(row, lineup)),
  ) || TO_NAME;
const TO_NAME =
  "as typed here, by the document beside it; without one, type it and name its document";

const columns: readonly Column[] = [
  { id: "object", header: "Panel or lineup", role: "key", width: 15 },
  { id: "part", header: "Dimension", role: "key", width: 38 },
  {
    id: "reading",
    header: "Measured mm",
    role: "entry",
    width: 10,
    unit: "mm",
    accepts: { type: "number", least: 0, most: 100000 },
    need: "reading",
    help: "The worst place counts: the least clearance along the lineup, the greatest departure of a panel.",
  },
  limit("least", "Minimum mm", least),
  limit("most", "Maximum mm", most),
  {
    id: "document",
    header: "Document of a typed limit",
    role: "entry",
    width: 26,
    accepts: { type: "text" },
    need: "trail",
    needed: isTyped,
    help: "Drawing or manual, and where in it, that a limit typed here was taken from.",
  },
  sources((row, lineup) => ENDS.map((end) => [end, sourceFor(end, row, lineup)] as const)),
  ...trail(),
];

/** Level, alignment, clearances and openings of the lineup as it stands. */
export const dimensions: RecordKind<"dimensions"> = {
  id: "dimensions",
  ownItems: "measured",
  step: "installation",
  sheet: "Dimensions",
  table: "GearDimensions",
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) => {
    const own = ownItems(lineup, "dimensions");
    const usual = (object: string, each: "lineup" | "panel"): Row[] =>
      USUAL.filter((one) => one.each === each).flatMap(({ item, ifLimited }) => {
        const row: Row = { object, part: item };
        return ifLimited && !isLimited(row, lineup) ? [] : [row];
      });
    return [
      ...usual(LINEUP, "lineup"),
      ...lineup.panels.flatMap((panel) => {
        const ours = own.filter((one) => isFor(one, panel)).map(({ item }) => item);
        return [
          ...usual(panel.designation, "panel").filter(({ part }) => !ours.includes(String(part))),
          ...ours.map((part): Row => ({ object: panel.designation, part })),
        ];
      }),
    ];
  },
  accepted,
  enough: [],
};
