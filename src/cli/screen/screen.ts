/** What is written on: so many columns wide, with or without colours. Plain data, since a worker is told of it. */
export interface Screen {
  readonly width: number;
  readonly colours: boolean;
}

/** Columns of a file or a pipe, which has none; of a terminal, no fewer and no more than people read. */
const USUAL = 80;
const LEAST = 60;
const MOST = 120;

/** A page of text, where nothing is said of what is written on. */
export const PAGE: Screen = { width: USUAL, colours: false };

/** The terminal, or what takes its place. It has colours where it shows them and `NO_COLOR` is not set. */
export const screenOf = (
  stream: Pick<NodeJS.WriteStream, "columns" | "hasColors"> = process.stdout,
): Screen => ({
  width: Math.max(LEAST, Math.min(stream.columns ?? USUAL, MOST)),
  colours: stream.hasColors?.() ?? false,
});

const CODES = { red: 31, green: 32, yellow: 33, bold: 1, dim: 2 } as const;
export type Colour = keyof typeof CODES;

/** A text in a colour, where the screen has them. */
export const inColour = (text: string, colour: Colour | undefined, { colours }: Screen): string =>
  colours && colour && text !== "" ? `\u001b[${CODES[colour]}m${text}\u001b[0m` : text;

/** A text in lines no wider than this, each after its indent, broken at spaces; a word that is wider stands on a line of its own. */
export function wrap(text: string, width: number, indent = ""): string {
  const lines = [""];
  for (const word of text.split(" ")) {
    const line = lines.at(-1) ?? "";
    if (line === "") lines[lines.length - 1] = word;
    else if (indent.length + line.length + 1 + word.length > width) lines.push(word);
    else lines[lines.length - 1] = `${line} ${word}`;
  }
  return `${indent}${lines.join(`\n${indent}`)}`;
}

/** Options of a table without lines. */
export const NO_LINES = {
  chars: {
    top: "",
    "top-mid": "",
    "top-left": "",
    "top-right": "",
    bottom: "",
    "bottom-mid": "",
    "bottom-left": "",
    "bottom-right": "",
    left: "",
    "left-mid": "",
    mid: "",
    "mid-mid": "",
    right: "",
    "right-mid": "",
    middle: "  ",
  },
  style: { head: [], border: [], "padding-left": 0, "padding-right": 0 },
};
