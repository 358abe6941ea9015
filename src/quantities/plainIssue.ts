import * as z from "zod/mini";
import en from "zod/v4/locales/en.js";
import type { Said } from "../messages/reasons";
import type { Told } from "../messages/told";

// The small edition of the library comes without words.
z.config(en());

/**
 * Where in a JSON file something is wrong; blank for the whole of it.
 *
 * @example pathText(["panels", 3, "breaker", "medium"]) // "panels[3].breaker.medium"
 */
export const pathText = (path: readonly PropertyKey[]): string =>
  path
    .map((part) => (typeof part === "number" ? `[${part}]` : `.${String(part)}`))
    .join("")
    .replace(/^\./, "");

/**
 * What is wrong in a JSON file and what would be right, for the person who wrote it.
 *
 * @param file what sort of file it is: `lineup`, `map`
 */
export const plainly =
  (issue: z.core.$ZodIssue | OwnIssue, file: string): Said<Told> =>
  (told) => {
    const { lineup } = told;
    if (!("code" in issue)) return issue.message(told);
    const own = mustOf(issue.message, lineup.must);
    switch (issue.code) {
      case "invalid_type": {
        const wanted = mustOf(issue.expected, lineup.kinds) ?? issue.expected;
        if (issue.message.endsWith("received undefined")) return lineup.missing(wanted);
        return (
          own ??
          (issue.message.startsWith("Invalid input") ? lineup.wrongKind(wanted) : issue.message)
        );
      }
      case "invalid_value":
        return lineup.oneOf(issue.values.map(String));
      case "unrecognized_keys":
        return lineup.unknownKeys(file, issue.keys);
      default:
        return own ?? issue.message;
    }
  };

/** What is wrong between the parts of a file, which no schema says. */
export interface OwnIssue {
  readonly path: readonly PropertyKey[];
  readonly message: Said<Told>;
}

const mustOf = (key: string, words: Readonly<Record<string, string>>): string | undefined =>
  Object.hasOwn(words, key) ? words[key] : undefined;
