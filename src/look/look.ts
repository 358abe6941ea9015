import type { Column, Role } from "../records/kind";
import type { CellStyle, ConditionalRule } from "./cellStyle";

const INK = "1B2A33";
const LINE = "9AA7AE";
/** A font that every spreadsheet has, or has a metric double of. */
export const FONT = "Arial";
const type = (size: number, rgb = INK, bold = false) => ({
  name: FONT,
  size,
  bold,
  color: { rgb },
});

const solid = (rgb: string): CellStyle["fill"] => ({
  type: "pattern",
  pattern: "solid",
  fgColor: { rgb },
});

const side = { style: "thin" as const, color: { rgb: LINE } };
const box = { top: side, bottom: side, left: side, right: side };

export const TITLE: CellStyle = { font: type(15, INK, true) };
export const PURPOSE: CellStyle = {
  font: type(10),
  alignment: { vertical: "top", wrapText: true },
};
export const CAUTION: CellStyle = {
  font: type(10, INK, true),
  fill: solid("FFF3C9"),
  alignment: { vertical: "top", wrapText: true },
};

/** Header fill by what the column is for: what people fill stands out from what is worked out. */
const HEADER_FILL: Record<Role, string> = {
  key: "24404D",
  given: "24404D",
  entry: "7A4E00",
  note: "7A4E00",
  limit: "4B5A63",
  computed: "4B5A63",
  result: "4B5A63",
};

const BODY_FILL: Partial<Record<Role, string>> = { entry: "FFFBEF", result: "F1F4F5" };

export const header = ({ role }: Column): CellStyle => ({
  font: type(9, "FFFFFF", true),
  fill: solid(HEADER_FILL[role]),
  alignment: { horizontal: "center", vertical: "center", wrapText: true },
  border: box,
});

const NUMERIC = new Set<Role>(["limit", "computed"]);

export const body = ({ role, format, unit, accepts }: Column): CellStyle => {
  const fill = BODY_FILL[role];
  const aligned = NUMERIC.has(role) || unit !== undefined || accepts?.type === "date";
  return {
    font: type(9, INK, role === "result"),
    border: box,
    // Text goes on in a further line rather than be cut; a spreadsheet never parts a number.
    alignment: {
      vertical: "center",
      horizontal: aligned ? "right" : "left",
      indent: 1,
      wrapText: true,
    },
    ...(fill ? { fill: solid(fill) } : {}),
    // Names such as "=H01", "01" or "1E5" stay text, whoever types them anew.
    ...(format ? { numFmt: format } : role === "key" ? { numFmt: "@" } : {}),
  };
};

/** The result's word carries the meaning; the colour only repeats it, also in grey on paper. */
const RESULT_LOOK: [word: string, fill: string, ink: string][] = [
  ["Fail", "8C1D18", "FFFFFF"],
  ["Missing", "EEF1F2", INK],
  ["Inconclusive", "D8D3EE", INK],
  ["Pass", "E3F1EC", INK],
];

export const resultRules = (range: string): ConditionalRule[] =>
  RESULT_LOOK.map(([word, fill, ink], index) => ({
    type: "cellIs",
    operator: "equal",
    priority: index + 1,
    formula: `"${word}"`,
    range,
    style: {
      font: { color: { rgb: ink } },
      fill: { type: "pattern", pattern: "solid", bgColor: { rgb: fill }, fgColor: { rgb: fill } },
    },
  }));
