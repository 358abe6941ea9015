import * as z from "zod/mini";
import en from "zod/v4/locales/en.js";

// The small edition of the library comes without words.
z.config(en());

const KINDS: Readonly<Record<string, string>> = {
  object: "an object in braces",
  record: "an object in braces",
  array: "a list in brackets",
  string: "text in quotation marks",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
};

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
export function plainly(
  issue: z.core.$ZodIssue | { readonly path: readonly PropertyKey[]; readonly message: string },
  file: string,
): string {
  if (!("code" in issue)) return issue.message;
  switch (issue.code) {
    case "invalid_type": {
      const wanted = KINDS[issue.expected] ?? issue.expected;
      return issue.message.endsWith("received undefined")
        ? `is missing; it is ${wanted}`
        : issue.message.startsWith("Invalid input")
          ? `must be ${wanted}`
          : issue.message;
    }
    case "invalid_value":
      return `must be one of ${issue.values.map(String).join(", ")}`;
    case "unrecognized_keys":
      return `has what no ${file} has: ${issue.keys.join(", ")}; take it out or correct its name`;
    default:
      return issue.message;
  }
}
