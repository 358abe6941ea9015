/**
 * Control characters but for the end of a line, marks that turn the direction of writing, characters that
 * are not seen, and halves of letters. Joiners within words of Persian or Indic scripts are none of these.
 */
const UNSEEN =
  /[\p{Cc}\p{Zl}\p{Zp}\p{Cs}\u00ad\u061c\u180e\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e007f}]/gu;

/** A text with a dot for each such character. */
export const withoutUnseen = (text: string): string =>
  text.replace(UNSEEN, (mark) => (mark === "\n" || mark === "\t" ? mark : "·"));

/** Longer lines are cut. */
const LONGEST = 4_000;

/**
 * Text of others as it may stand in a terminal or on a page: a dot for each character that would steer it
 * instead of being seen, long lines cut.
 *
 * @example shown("K1\u001b[2J\u202e") // "K1·[2J·"
 */
export const shown = (text: string): string =>
  text
    .split("\n")
    .map((line) => {
      const seen = line.slice(0, LONGEST).replace(UNSEEN, "·");
      return line.length > LONGEST ? `${seen}…` : seen;
    })
    .join("\n");

/** The same on one line. */
export const shownInLine = (text: string): string => shown(text.replace(/\s*[\r\n]+\s*/g, " "));

/** JSON in which every such character is written by its number. */
export const safeJson = (json: string): string =>
  json.replace(UNSEEN, (mark) =>
    mark === "\n"
      ? mark
      : Array.from(
          { length: mark.length },
          (_, at) => `\\u${mark.charCodeAt(at).toString(16).padStart(4, "0")}`,
        ).join(""),
  );

/** Whether a text holds a character that would steer and is not seen; the ends of lines among them. */
export const hasUnseen = (text: string): boolean => text.search(UNSEEN) >= 0;

const LATIN = /\p{Script=Latin}/u;
/** Letters of Cyrillic and Greek that are drawn as a Latin letter is. */
const ALIKE = /[АВЕЗІЈКМНОРСТУХЅаеіјорсухѕΑΒΕΖΗΙΚΜΝΟΡΤΥΧο]/u;

/**
 * Whether a word has Latin letters beside others that only look like them: a name that is read as another.
 *
 * @example mixesScripts("AК1") // true: the К is Cyrillic
 */
export const mixesScripts = (text: string): boolean =>
  text.split(/\s+/).some((word) => LATIN.test(word) && ALIKE.test(word));
