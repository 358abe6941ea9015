import type { Unseen } from "../sheets/snapshot";
import { type Book, onePart } from "./book";
import { partXml } from "./package/relations";
import { childOf, childrenOf, type XmlElement } from "./xml/readXml";

const [WHITE, BLACK] = ["FFFFFF", "000000"];
/** Colours by number that are white or black on every machine (ECMA-376 part 1, 18.8.27). */
const INDEXED: Readonly<Record<string, string>> = {
  0: BLACK,
  1: WHITE,
  8: BLACK,
  9: WHITE,
  64: BLACK,
};
/** The first two colours of a theme are those of the page and of its text (ECMA-376 part 1, 18.8.3). */
const THEMED: Readonly<Record<string, string>> = { 0: WHITE, 1: BLACK };
/** A tint this small is not told apart from the colour itself. */
const SLIGHT_TINT = 0.05;
/** Below this contrast a text is not made out on its ground; ordinary text has at least 4.5 (WCAG 2.2, 1.4.3). */
const LEAST_CONTRAST = 1.2;

/** A colour as one word, so that two may be compared; black where none is stated. */
function colourOf(colour: XmlElement | undefined): string {
  const { attributes } = colour ?? { attributes: new Map<string, string>() };
  const [rgb, theme, indexed] = ["rgb", "theme", "indexed"].map((name) => attributes.get(name));
  const tint = Number(attributes.get("tint") ?? 0);
  if (rgb !== undefined) return rgb.slice(-6).toUpperCase();
  const named = theme === undefined ? INDEXED[indexed ?? ""] : THEMED[theme];
  if (named !== undefined && Math.abs(tint) < SLIGHT_TINT) return named;
  return theme === undefined && indexed === undefined
    ? BLACK
    : `${theme ?? ""}/${indexed ?? ""}/${tint}`;
}

/** Relative luminance of a colour of six hexadecimal digits, 0 to 1 (WCAG 2.2). */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Whether a text of one colour is not made out on a ground of another. */
function isLost(colour: string, ground: string): boolean {
  if (colour === ground) return true;
  if (![colour, ground].every((one) => /^[0-9A-F]{6}$/.test(one))) return false;
  const [dark = 0, light = 0] = [luminance(colour), luminance(ground)].sort(
    (one, other) => one - other,
  );
  return (light + 0.05) / (dark + 0.05) < LEAST_CONTRAST;
}

/** What stands behind the text of a cell: the page, where the fill is none. */
function groundOf(fill: XmlElement | undefined): string {
  const pattern = childOf(fill, "patternFill");
  if (pattern?.attributes.get("patternType") !== "solid") return pattern ? WHITE : "gradient";
  const colour = childOf(pattern, "fgColor");
  return colour ? colourOf(colour) : "unsaid";
}

/** What of a number format is no literal text: places of digits, parts of days, the word General. */
const PLACES = /[0#?@dmyhsge]/i;
const LITERALS = /"[^"]*"|\\./g;

/** Whether a number format shows nothing of a number, or digits of its own: `;;;`, `"26.1"`, `0".5"`. */
export function isMasking(code: string): boolean {
  const first = code.split(/;(?=(?:[^"]*"[^"]*")*[^"]*$)/)[0] ?? "";
  const literals = first.match(LITERALS) ?? [];
  const rest = first.replace(LITERALS, "").replace(/\[[^\]]*\]|_.|\*./g, "");
  if (code.includes(";") ? !PLACES.test(rest) : first !== "" && !PLACES.test(rest)) return true;
  return literals.some((literal) => /^"?\\?[.,]?\d[\d.,]*"?$/.test(literal));
}

/** By number of a cell style, why what stands in such a cell is not seen, or seen as something else. */
export function unseenStyles(book: Book): readonly (Unseen | undefined)[] {
  const part = onePart(book, "styles");
  if (!part) return [];
  const root = partXml(book.pack, part);
  const masking = new Set(
    childrenOf(childOf(root, "numFmts"), "numFmt")
      .filter(({ attributes }) => isMasking(attributes.get("formatCode") ?? ""))
      .map(({ attributes }) => attributes.get("numFmtId")),
  );
  const fonts = childrenOf(childOf(root, "fonts"), "font").map((font) =>
    colourOf(childOf(font, "color")),
  );
  const grounds = childrenOf(childOf(root, "fills"), "fill").map(groundOf);
  return childrenOf(childOf(root, "cellXfs"), "xf").map(({ attributes }) => {
    if (masking.has(attributes.get("numFmtId"))) return "format";
    const colour = fonts[Number(attributes.get("fontId") ?? 0)] ?? BLACK;
    const ground = grounds[Number(attributes.get("fillId") ?? 0)] ?? WHITE;
    return isLost(colour, ground) ? "colour" : undefined;
  });
}
