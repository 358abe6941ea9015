import { tokenize } from "@borgar/fx";
import { NATIVES } from "./natives";
import { type Put, STEPPED } from "./stepped";

const OURS = /^_xldudf_GEAR_([A-Z]+)$/i;

/**
 * Rewrites a stored formula so that every worksheet function of ours is a native expression, or the last
 * of several steps that `put` lays down.
 */
export function substitute(formula: string, put: Put): string {
  const tokens = tokenize(formula, { mergeRefs: true });
  let at = 0;
  const upTo = (stops: string[]): string => {
    let text = "";
    let depth = 0;
    for (; at < tokens.length; at++) {
      const token = tokens[at];
      if (!token) break;
      if (depth === 0 && stops.includes(token.value)) return text;
      const ours = OURS.exec(token.value)?.[1];
      if (ours && tokens[at + 1]?.value === "(") {
        at += 2;
        const args: string[] = [];
        while (tokens[at - 1]?.value !== ")") {
          args.push(upTo([",", ")"]));
          at++;
        }
        at--;
        const [native, stepped] = [NATIVES[ours], STEPPED[ours]];
        if (!native && !stepped) throw new Error(`no native expression for GEAR.${ours}`);
        text += `(${native ? native(...args) : stepped?.(put, ...args)})`;
        continue;
      }
      if (token.value === "(") depth++;
      if (token.value === ")") depth--;
      text += token.value;
    }
    return text;
  };
  return upTo([]);
}
