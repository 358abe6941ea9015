import type { ArrivalOptions } from "../place/arrival";
import { plainWords } from "../words/plainWords";

/** What a text means by the user's own word, and a circuit's name by the lineup. */
export const meaning = ({ means = {}, panels = [] }: ArrivalOptions) => {
  const said = new Map(
    Object.entries(means).flatMap(([field, words]) =>
      Object.entries(words ?? {}).map(([text, name]) => [`${field} ${plainWords(text)}`, name]),
    ),
  );
  const named = new Map<string, string | undefined>();
  for (const { designation, name } of panels) {
    const words = plainWords(name ?? "");
    // A name that two panels have means neither.
    if (words !== "") named.set(words, named.has(words) ? undefined : designation);
  }
  const designations = new Set(panels.map(({ designation }) => plainWords(designation)));
  const none = said.size === 0 && named.size === 0;
  return (field: string, text = ""): string => {
    if (none || text === "") return text;
    const words = plainWords(text);
    const asked = field === "circuit" ? "object" : field;
    const own = said.get(`${asked} ${words}`);
    if (own !== undefined) return own;
    return asked === "object" && !designations.has(words) ? (named.get(words) ?? text) : text;
  };
};
