/** A text and the colon behind it, where it is a key; a bracket. */
const TOKEN = /("(?:[^"\\]|\\.)*")(\s*:)?|[{}[\]]/g;
const MOST = 20;

/**
 * Keys that an object of a JSON text says twice, where a reader takes the last and drops the rest unseen.
 *
 * @param json text that is JSON
 * @returns each with the line of its second place, the first few
 * @example repeatedKeys('{"a": 1, "a": 2}') // [{ key: "a", line: 1 }]
 */
export function repeatedKeys(json: string): { readonly key: string; readonly line: number }[] {
  const found: { key: string; line: number }[] = [];
  /** The keys of each object around; of a list none. */
  const around: Set<string>[] = [];
  for (const { 0: token, 1: text, 2: colon, index } of json.matchAll(TOKEN)) {
    if (token === "{" || token === "[") around.push(new Set());
    else if (token === "}" || token === "]") around.pop();
    if (text === undefined || colon === undefined) continue;
    const keys = around.at(-1);
    const key = String(JSON.parse(text));
    if (keys?.has(key)) found.push({ key, line: json.slice(0, index).split("\n").length });
    keys?.add(key);
    if (found.length === MOST) break;
  }
  return found;
}
