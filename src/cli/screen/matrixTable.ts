import Table from "cli-table3";
import type { Counts, Report } from "../../check/check";
import { type Matrix, matrix, standing } from "../../check/progress/matrix";
import type { CommandLineText } from "../../messages/commandLine";
import { type Colour, inColour, NO_LINES, type Screen, wrap } from "./screen";

type CheckText = CommandLineText["check"];

/** More groups of panels than these are told by their counts alone. */
const MOST_GROUPS = 3;

type Asking = "fail" | "missing" | "inconclusive" | "open";

/** What a row may come to that asks for something, with the letter and the colour that stand for it. */
const ASKING: readonly (readonly [Asking, string, Colour])[] = [
  ["fail", "F", "red"],
  ["missing", "M", "yellow"],
  ["inconclusive", "?", "yellow"],
  ["open", "o", "dim"],
];

/**
 * Record kinds against panels and bus sections, as far as they ask for something; the others are named below.
 * Panels stand in groups that the screen is wide enough for; of very many panels only counts are told.
 */
export function matrixTable(report: Report, text: CheckText, screen: Screen): string {
  const all = matrix(report.context);
  const { objects, kinds, cell, total } = all;
  const of = (standings: readonly string[]) =>
    kinds.filter(({ id }) => standings.includes(standing([total(id)])));
  const begun = of(["fail", "inconclusive", "missing", "open"]).filter(
    ({ id }) => !isUntouched(total(id)),
  );
  const untouched = of(["open"]).filter(({ id }) => isUntouched(total(id)));
  const passing = of(["pass"]);
  const asking = objects.filter((object) => begun.some(({ id }) => asks(cell(object, id))));
  const quiet = objects.length - asking.length;
  const listed = (title: (kinds: string) => string, of: Matrix["kinds"]) =>
    of.length === 0 ? [] : [wrap(title(of.map((kind) => kind.title).join(", ")), screen.width)];
  return [
    ...(asking.length === 0
      ? []
      : grouped({ ...all, kinds: begun, objects: asking }, text, screen)),
    ...listed(text.passedKinds, passing),
    ...listed(text.untouchedKinds, untouched),
    ...(quiet > 0 && untouched.length === 0 ? [text.passedObjects(quiet)] : []),
  ].join("\n");
}

/** Nothing at all is recorded of these rows. */
const isUntouched = ({ pass, fail, missing, inconclusive, open }: Counts) =>
  open > 0 && pass + fail + missing + inconclusive === 0;

const asks = (counts: Counts | undefined) =>
  counts !== undefined && ASKING.some(([key]) => counts[key] > 0);

/** A table for each group of panels that fits on the screen, or one of counts. */
function grouped(shown: Matrix, text: CheckText, screen: Screen): string[] {
  const { objects, kinds } = shown;
  const first = Math.max(...kinds.map(({ title }) => title.length));
  const cells = objects.flatMap((object) =>
    kinds.map(({ id }) => letters(shown.cell(object, id)).length),
  );
  const wide = Math.max(4, ...objects.map(({ length }) => length), ...cells) + GAP;
  const each = Math.max(1, Math.floor((screen.width - first) / wide));
  const groups = Array.from({ length: Math.ceil(objects.length / each) }, (_, at) =>
    objects.slice(at * each, (at + 1) * each),
  );
  if (groups.length > MOST_GROUPS)
    return [countTable(shown, text, screen), wrap(text.askingObjects(objects), screen.width)];
  return [
    ...groups.map((group) =>
      tableOf(
        ["", ...group],
        kinds.map(({ id, title }) => [
          title,
          ...group.map((object) => painted(shown.cell(object, id), screen)),
        ]),
        [first, ...group.map(() => wide - GAP)],
      ),
    ),
    wrap(text.legend, screen.width),
  ];
}

const GAP = NO_LINES.chars.middle.length;

const tableOf = (
  head: readonly string[],
  rows: readonly (readonly string[])[],
  colWidths: readonly number[],
): string => {
  const table = new Table({ ...NO_LINES, head: [...head], colWidths: [...colWidths] });
  for (const row of rows) table.push([...row]);
  return table
    .toString()
    .split("\n")
    .map((line) => line.trimEnd())
    .join("\n");
};

/** `1F2M`; `ok` where every row passes; nothing where there are none. */
const letters = (counts: Counts | undefined): string => {
  if (!counts) return "";
  const said = ASKING.flatMap(([key, letter]) =>
    counts[key] > 0 ? [`${counts[key]}${letter}`] : [],
  );
  return said.length > 0 ? said.join("") : "ok";
};

const painted = (counts: Counts | undefined, screen: Screen): string =>
  inColour(
    letters(counts),
    ASKING.find(([key]) => counts && counts[key] > 0)?.[2] ?? "green",
    screen,
  );

/** Record kinds with how many of their rows came to what. */
function countTable({ kinds, total }: Matrix, text: CheckText, screen: Screen): string {
  const first = Math.max(...kinds.map(({ title }) => title.length));
  return tableOf(
    ["", ...ASKING.map(([key]) => text.columns[key]), text.columns.pass],
    kinds.map(({ id, title }) => {
      const counts = total(id);
      return [
        title,
        ...ASKING.map(([key, , colour]) =>
          counts[key] > 0 ? inColour(String(counts[key]), colour, screen) : "",
        ),
        String(counts.pass),
      ];
    }),
    [
      first,
      ...[...ASKING.map(([key]) => text.columns[key]), text.columns.pass].map(({ length }) =>
        Math.max(6, length),
      ),
    ],
  );
}
