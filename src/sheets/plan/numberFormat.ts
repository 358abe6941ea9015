import { EXCEL_LIMITS } from "./excelLimits";

/**
 * Letters and signs of one section of a number format, as Excel reads them: [MS-OI29500] 18.8.30 (numFmt) and
 * "Review guidelines for customizing a number format",
 * https://support.microsoft.com/office/c0a1d1fa-d3f4-4018-96b7-9c9354dd99f5. What is shown as it stands needs
 * quotation marks or a backslash, save the signs that these pages list.
 */
const TOKENS: readonly (readonly [kind: Kind, pattern: RegExp])[] = [
  ["shown", /^(?:"[^"]*"|\\.|_.)/s],
  ["filled", /^\*./s],
  [
    "colour",
    /^\[(?:black|blue|cyan|green|magenta|red|white|yellow|color ?(?:[1-9]|[1-4]\d|5[0-6]))\]/i,
  ],
  ["condition", /^\[(?:<=|>=|<>|<|>|=)-?\d+(?:\.\d+)?\]/],
  ["locale", /^\[\$[^\]]*\]/],
  ["elapsed", /^\[(?:h+|m+|s+)\](?:\.0+)?/i],
  ["general", /^general/i],
  ["number", /^(?:[0#?,%]|E[+-])/],
  ["point", /^\./],
  ["date", /^(?:am\/pm|a\/p|s+(?:\.0+)?|[ymdhegb]+)/i],
  ["text", /^@/],
  ["shown", /^[-$+/():!^&'~{}<>= ]/],
];

type Kind =
  | "shown"
  | "filled"
  | "colour"
  | "condition"
  | "locale"
  | "elapsed"
  | "general"
  | "number"
  | "point"
  | "date"
  | "text";

/** At most so many sections: positive, negative, zero, text. */
const MAX_SECTIONS = 4;

/** Whether Excel understands a text as a number format. */
export function isNumberFormat(code: string): boolean {
  if (code === "" || code.length > EXCEL_LIMITS.numberFormat.most) return false;
  const sections: Kind[][] = [[]];
  let rest = code;
  while (rest !== "") {
    if (rest.startsWith(";")) {
      sections.push([]);
      rest = rest.slice(1);
      continue;
    }
    const [kind, length] = nextOf(rest);
    if (kind === undefined) return false;
    sections.at(-1)?.push(kind);
    rest = rest.slice(length);
  }
  return sections.length <= MAX_SECTIONS && sections.every(isSection);
}

function nextOf(text: string): readonly [Kind | undefined, number] {
  for (const [kind, pattern] of TOKENS) {
    const found = pattern.exec(text)?.[0];
    if (found !== undefined) return [kind, found.length];
  }
  return [undefined, 0];
}

/** Whether parts of a section go together: a number, a day, a text or General; each filling and condition once; text last. */
function isSection(kinds: readonly Kind[], at: number, sections: readonly (readonly Kind[])[]) {
  const has = (...wanted: readonly Kind[]) => kinds.some((kind) => wanted.includes(kind));
  const once = (kind: Kind) => kinds.filter((one) => one === kind).length <= 1;
  const sorts = [has("date", "elapsed"), has("number"), has("text"), has("general")];
  const singles: readonly Kind[] = ["filled", "colour", "condition", "locale", "general"];
  return (
    sorts.filter(Boolean).length <= 1 &&
    singles.every(once) &&
    (!has("text") || at === sections.length - 1)
  );
}
