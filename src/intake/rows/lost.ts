import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { type Refusal, refuse } from "../../quantities/result";
import type { Asked, Suggestion } from "../place/placement";
import { similar } from "../words/similar";

/** A refusal that may know which names come nearest to one that no row has. */
export interface Lost extends Refusal<Told> {
  /** The word that is not understood, where there is one. */
  readonly asked?: Pick<Suggestion, "field" | "written">;
  /** With it the names that come nearest, where some do. */
  readonly suggestion?: Omit<Suggestion, "lines">;
}

/** A refusal with the word that is not understood, and the names that come nearest. */
export const lost = (
  field: Asked,
  written: string,
  names: readonly string[],
  reason: Said<Told>,
): Lost => {
  const candidates = [...new Set(names)]
    .map((name) => ({ name, score: Math.round(100 * similar(written, name)) / 100 }))
    .filter(({ name, score }) => name !== "" && score >= LEAST_ALIKE)
    .sort((one, other) => other.score - one.score)
    .slice(0, MAX_SUGGESTED);
  const asked = { field, written };
  return {
    ...refuse("none", reason),
    asked,
    ...(candidates.length > 0 && { suggestion: { ...asked, candidates } }),
  };
};

const LEAST_ALIKE = 0.4;
const MAX_SUGGESTED = 5;

/** Names once each, the middle left out where they are many. */
export const someNames = (names: readonly string[]): string => {
  const distinct = [...new Set(names)].filter((name) => name !== "");
  return distinct.length <= 16
    ? distinct.join(", ")
    : `${distinct.slice(0, 8).join(", ")} … ${distinct.slice(-4).join(", ")}`;
};
