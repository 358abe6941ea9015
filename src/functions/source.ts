import { answer, refuse } from "../quantities/result";
import { BASES, sourceText } from "../standards/criterion";
import { basisOf, optional } from "./inputs";
import { sources } from "./sources";
import { spill } from "./spill";

/** @customenum {string} */
export enum SourceBasis {
  /** IEC 62271 and companions */
  IEC = "IEC",
  /** ANSI/NETA and IEEE */
  NETA = "NETA",
}

/**
 * The standard, edition and table that a function's numbers come from, and how sure they are.
 * @customfunction SOURCE
 * @param name Name of a function of this add-in, such as "IRMINIMUM"
 * @param [basis] IEC or NETA; both if left out
 * @returns Text
 * @example =GEAR.SOURCE("IRMINIMUM", "NETA") // "NETA: ANSI/NETA ATS-2025, table 100.1 (read: a published copy)"
 * @refuses =GEAR.SOURCE("RATIO")
 */
export function source(name: unknown[][], basis?: SourceBasis): unknown[][] {
  return spill(
    [{ name: "Function", cells: name, read: answer }, optional(basisOf(basis), undefined)],
    (asked, by) => {
      const key = String(asked)
        .trim()
        .toUpperCase()
        .replace(/^GEAR\./, "")
        .replace(/\(.*$/, "");
      const known = Object.hasOwn(sources, key) ? sources[key] : undefined;
      if (!known) return refuse("none", (text) => text.functions.noFunction(Object.keys(sources)));
      if (!("IEC" in known)) return answer(known.map(sourceText).join("; "));
      const bases = by ? [by] : BASES;
      return answer(
        bases.map((one) => `${one}: ${known[one].map(sourceText).join("; ")}`).join(" | "),
      );
    },
  );
}
