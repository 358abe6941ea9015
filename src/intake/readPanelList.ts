import { parseCsv } from "hucre/csv";
import { BREAKER_MEDIA, PANEL_TYPES } from "../lineup/equipment";
import { bare } from "../lineup/lineup";
import { quoted } from "../quantities/quoted";
import { readReading } from "../quantities/readReading";
import { LANGUAGES } from "./words/languages/languages";

/** A panel as a list gives it; what the list does not say is left out. */
export interface ListedPanel {
  readonly designation: string;
  readonly name?: string;
  readonly type: (typeof PANEL_TYPES)[number];
  readonly section: string;
  readonly breaker?: { readonly medium: (typeof BREAKER_MEDIA)[number]; readonly ratedA: number };
}

/** The panels of a list, and for each line that is none, why and what would be right. */
export interface PanelList {
  readonly panels: readonly ListedPanel[];
  readonly problems: readonly { readonly line: number; readonly message: string }[];
}

const ORDER = ["designation", "name", "type", "section", "medium", "ratedA"] as const;
type Field = (typeof ORDER)[number];

const LISTS = LANGUAGES.flatMap(({ panelList }) => panelList ?? []);

/** Words for a panel's type: ours, and those that drawings use. */
const TYPE_WORDS: readonly (readonly [word: string, type: ListedPanel["type"]])[] = [
  ...PANEL_TYPES.map((type) => [type, type] as const),
  ...LISTS.flatMap(({ types }) => types),
];
const NO_BREAKER = new Set(["", ...LISTS.flatMap(({ none }) => none)]);

/**
 * Reads panels from a pasted list or drawing schedule: tab, semicolon or comma between its columns, with
 * titles, or without them in the order designation, name, type, section, breaker medium, rated current.
 * A panel without a type is a feeder; one without a section stands on that of the line before.
 *
 * @example readPanelList("Panel\tType\tSection\n=H01\tIncomer\tBus A").panels // [{ designation: "=H01", type: "incomer", section: "Bus A" }]
 */
export function readPanelList(text: string): PanelList {
  const delimiter = ["\t", ";", ","].find((mark) => text.includes(mark)) ?? "\t";
  const lines = parseCsv(text, { delimiter })
    .map((cells, at) => ({ line: at + 1, cells: cells.map((cell) => String(cell ?? "").trim()) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ""));
  const titles = (lines[0]?.cells ?? []).map(fieldOf);
  const titled = titles.filter((field) => field !== undefined).length >= 2;
  const fields = titled ? titles : ORDER;
  const panels: ListedPanel[] = [];
  const problems: { line: number; message: string }[] = [];
  if (titled && !titles.includes("designation"))
    return {
      panels: [],
      problems: [
        {
          line: 1,
          message: 'no column is titled "Panel"; give the column of designations that title',
        },
      ],
    };
  for (const { line, cells } of titled ? lines.slice(1) : lines) {
    const cell = (field: Field) => cells[fields.indexOf(field)] ?? "";
    const read = panelOf(cell, panels.at(-1)?.section ?? "Bus A");
    if (typeof read === "string") problems.push({ line, message: read });
    else panels.push(read);
  }
  return { panels, problems };
}

function panelOf(cell: (field: Field) => string, section: string): ListedPanel | string {
  const designation = cell("designation");
  if (designation === "") return "no designation; write one such as =H01";
  const type = cell("type") === "" ? "feeder" : typeOf(cell("type"));
  if (type === undefined)
    return `Unknown type of panel ${quoted(cell("type"))}; use one of ${PANEL_TYPES.join(", ")}`;
  const medium = BREAKER_MEDIA.find((one) => bare(cell("medium")).includes(bare(one)));
  if (medium === undefined && !NO_BREAKER.has(cell("medium").toLowerCase()))
    return `Unknown breaker medium ${quoted(cell("medium"))}; use ${BREAKER_MEDIA.join(" or ")}, or leave it blank for a panel without a breaker`;
  const current = readReading(cell("ratedA"), { unit: "A" });
  if (medium !== undefined && !current.ok) return `rated current of the breaker: ${current.reason}`;
  return {
    designation,
    ...(cell("name") === "" ? {} : { name: cell("name") }),
    type,
    section: cell("section") || section,
    ...(medium !== undefined && current.ok
      ? { breaker: { medium, ratedA: current.value.value } }
      : {}),
  };
}

const fieldOf = (title: string): Field | undefined =>
  ORDER.find((field) =>
    LISTS.some(({ titles }) => titles[field].some((word) => bare(word) === bare(title))),
  );

const typeOf = (text: string) =>
  TYPE_WORDS.find(([word]) => bare(word) === bare(text))?.[1] ??
  TYPE_WORDS.find(([word]) => bare(text).includes(bare(word)))?.[1];
