import { parseCsv } from "hucre/csv";
import { BREAKER_MEDIA, PANEL_TYPES } from "../lineup/equipment";
import { bare } from "../lineup/lineup";
import type { Said } from "../messages/reasons";
import type { Told } from "../messages/told";
import { quoted } from "../quantities/quoted";
import { readReading } from "../quantities/reading/readReading";
import { PANEL_LISTS } from "./words/languages/panelLists";

type PanelType = (typeof PANEL_TYPES)[number];
type Medium = (typeof BREAKER_MEDIA)[number];

/** A panel as a list gives it; what the list does not say is left out. */
export interface ListedPanel {
  readonly designation: string;
  readonly name?: string;
  readonly type: PanelType;
  readonly section: string;
  readonly breaker?: {
    readonly designation?: string;
    readonly medium: Medium;
    readonly ratedA: number;
  };
}

/** What the columns of a list may hold, in the order in which they stand where they have no titles. */
export const PANEL_COLUMNS = [
  "designation",
  "name",
  "type",
  "section",
  "medium",
  "ratedA",
  "breaker",
] as const;
export type PanelColumn = (typeof PANEL_COLUMNS)[number];

/** What a person says of a list that does not say it itself. */
export interface ListAnswers {
  /** What columns hold, by their titles; `spare` for one that is left out. */
  readonly columns?: Readonly<Record<string, PanelColumn | "spare">>;
  /** What breakers break in where their lines do not say it. */
  readonly medium?: Medium;
}

/** The panels of a list, for each line that is none why and what would be right, and what has to be asked. */
export interface PanelList {
  readonly panels: readonly ListedPanel[];
  readonly problems: readonly { readonly line: number; readonly message: Said<Told> }[];
  /** Columns whose title tells nothing, each with its first content. */
  readonly unknown: readonly { readonly title: string; readonly sample: string }[];
  /** Whether a line has a breaker and does not say what it breaks in. */
  readonly asksMedium: boolean;
}

interface Line {
  readonly line: number;
  readonly cells: readonly string[];
}

const LISTS = Object.values(PANEL_LISTS);

/** A word without case, accents, spaces and punctuation. */
const plain = (text: string) => bare(text.normalize("NFKD").replace(/\p{M}/gu, ""));
/** Its words, each between blanks. */
const worded = (text: string) =>
  ` ${(text.match(/[\p{L}\p{M}\p{N}]+/gu) ?? []).map(plain).join(" ")} `;

/** Words for one thing out of a few, the longest first: "transformer feeder" is not only a feeder. */
const wordsFor = <T extends string>(
  own: readonly T[],
  others: readonly (readonly [word: string, meant: T])[],
) =>
  [...own.map((word) => [word, word] as const), ...others]
    .map(([word, meant]) => ({ plain: plain(word), worded: worded(word), meant }))
    .sort((one, other) => other.plain.length - one.plain.length);

const TYPES = wordsFor(
  PANEL_TYPES,
  LISTS.flatMap(({ types }) => types),
);
const MEDIA = wordsFor(
  BREAKER_MEDIA,
  LISTS.flatMap(({ media }) => media),
);
const NONE = new Set(["", ...LISTS.flatMap(({ none }) => none.map((word) => word.toLowerCase()))]);

/** Fewer letters than this are a word only where they stand alone. */
const PART_OF_WORD = 4;

/** What a cell means: one of the words itself, one among others, or part of a longer word. */
function meaningOf<T extends string>(
  cell: string,
  words: readonly { readonly plain: string; readonly worded: string; readonly meant: T }[],
): T | undefined {
  const [whole, among] = [plain(cell), worded(cell)];
  const found =
    words.find((word) => word.plain === whole) ??
    words.find((word) => among.includes(word.worded)) ??
    words.find((word) => word.plain.length >= PART_OF_WORD && whole.includes(word.plain));
  return found?.meant;
}

const isNone = (cell: string) => NONE.has(cell.toLowerCase());

/**
 * Reads panels from a list or drawing schedule, typed or pasted: tab, semicolon or comma between its
 * columns, with titles in any of the languages of intake, or without them in the order designation, name,
 * type, section, breaker medium, rated current, breaker designation. A panel without a type is a feeder;
 * one without a section stands on that of the line before.
 *
 * @example readPanelList("Panel\tType\tSection\n=H01\tIncomer\tBus A").panels // [{ designation: "=H01", type: "incomer", section: "Bus A" }]
 */
export function readPanelList(text: string, answers: ListAnswers = {}): PanelList {
  const delimiter = ["\t", ";", ","].find((mark) => text.includes(mark)) ?? "\t";
  const lines = parseCsv(text, { delimiter })
    .map((cells, at) => ({ line: at + 1, cells: cells.map((cell) => String(cell ?? "").trim()) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ""));
  const [first] = lines;
  if (!first || !isTitles(lines)) return panelsOf(lines, PANEL_COLUMNS, [], answers);
  const below = lines.slice(1);
  const fields = first.cells.map(
    (title, at) => answers.columns?.[title] ?? fieldOf(title, cellsOf(below, at)),
  );
  const unknown = first.cells.flatMap((title, at) => {
    const sample = cellsOf(below, at)[0];
    return title === "" || sample === undefined || fieldOf(title, cellsOf(below, at)) !== undefined
      ? []
      : [{ title, sample }];
  });
  if (fields.includes("designation")) return panelsOf(below, fields, unknown, answers);
  const message: Said<Told> = ({ intake }) => intake.panels.noTitle;
  return { panels: [], problems: [{ line: first.line, message }], unknown, asksMedium: false };
}

const cellsOf = (lines: readonly Line[], at: number): string[] =>
  lines.flatMap(({ cells }) => cells[at] || []);

/** Whether the first line holds titles: two are known, or it alone has no figure in it. */
function isTitles([first, ...below]: readonly Line[]): boolean {
  const titles = first?.cells ?? [];
  const hasFigure = (cells: readonly string[]) => cells.some((cell) => /\p{Nd}/u.test(cell));
  return (
    titles.filter((title) => fieldsNamed(title).length > 0).length >= 2 ||
    (below.length > 0 && !hasFigure(titles) && below.every(({ cells }) => hasFigure(cells)))
  );
}

const fieldsNamed = (title: string): PanelColumn[] =>
  PANEL_COLUMNS.filter((field) =>
    LISTS.some(({ titles }) => titles[field].some((word) => plain(word) === plain(title))),
  );

/** A title that may stand over designations or over media of breakers is told by its cells. */
function fieldOf(title: string, cells: readonly string[]): PanelColumn | undefined {
  const named = plain(title) === "" ? [] : fieldsNamed(title);
  if (named.length < 2) return named[0];
  const areMedia = cells.every((cell) => isNone(cell) || meaningOf(cell, MEDIA) !== undefined);
  const isOfBreaker = named.includes("medium") && named.includes("breaker");
  // Neither all media nor none of them: what is wrong with a medium is said at its line.
  const someMedia = cells.some((cell) => meaningOf(cell, MEDIA) !== undefined);
  return isOfBreaker ? (areMedia || someMedia ? "medium" : "breaker") : named[0];
}

function panelsOf(
  lines: readonly Line[],
  fields: readonly (PanelColumn | "spare" | undefined)[],
  unknown: PanelList["unknown"],
  { medium }: ListAnswers,
): PanelList {
  const panels: ListedPanel[] = [];
  const problems: { line: number; message: Said<Told> }[] = [];
  const lineOf = new Map<string, number>();
  let asksMedium = false;
  for (const { line, cells } of lines) {
    const cell = (field: PanelColumn) => cells[fields.indexOf(field)] ?? "";
    asksMedium ||= isBlank(cell("medium")) && hasBreaker(cell);
    const read = panelOf(cell, panels.at(-1)?.section ?? "Bus A", medium);
    const before = lineOf.get(bare(cell("designation")));
    if (typeof read === "function") problems.push({ line, message: read });
    else if (before !== undefined)
      problems.push({
        line,
        message: ({ intake }) => intake.panels.twice(quoted(read.designation), before),
      });
    else {
      panels.push(read);
      lineOf.set(bare(read.designation), line);
    }
  }
  return { panels, problems, unknown, asksMedium };
}

const isBlank = (cell: string) => cell === "";
const hasBreaker = (cell: (field: PanelColumn) => string) =>
  !isNone(cell("breaker")) || !isNone(cell("ratedA"));

function panelOf(
  cell: (field: PanelColumn) => string,
  section: string,
  otherwise: Medium | undefined,
): ListedPanel | Said<Told> {
  const designation = cell("designation");
  if (designation === "") return ({ intake }) => intake.panels.noDesignation;
  const type = cell("type") === "" ? "feeder" : meaningOf(cell("type"), TYPES);
  if (type === undefined)
    return ({ intake }) => intake.panels.unknownType(quoted(cell("type")), PANEL_TYPES);
  const breaker = breakerOf(cell, otherwise);
  if (typeof breaker === "function") return breaker;
  return {
    designation,
    ...(cell("name") === "" ? {} : { name: cell("name") }),
    type,
    section: cell("section") || section,
    ...breaker,
  };
}

function breakerOf(
  cell: (field: PanelColumn) => string,
  otherwise: Medium | undefined,
): Pick<ListedPanel, "breaker"> | Said<Told> {
  const written = cell("medium");
  if (isBlank(written) ? !hasBreaker(cell) : isNone(written)) return {};
  const medium = isBlank(written) ? otherwise : meaningOf(written, MEDIA);
  if (medium === undefined)
    return ({ intake: { panels } }) =>
      isBlank(written)
        ? panels.noMedium(BREAKER_MEDIA)
        : panels.unknownMedium(quoted(written), BREAKER_MEDIA);
  const current = readReading(cell("ratedA"), { unit: "A" });
  if (!current.ok) return (text) => text.intake.panels.current(current.say(text));
  const designation = isNone(cell("breaker")) ? {} : { designation: cell("breaker") };
  return { breaker: { ...designation, medium, ratedA: current.value.value } };
}
