import { plainWords } from "./fields";

/** What a test is called besides the name of its record kind. */
const OTHER_NAMES: Readonly<Record<string, RegExp>> = {
  insulation: /\b(?:ir|megohm)\b/,
  withstand: /\b(?:hi ?pot|hv|high voltage|power frequency|dielectric|ac test)\b/,
  earthing: /\b(?:earth(?: bond| continuity)?|bonding)\b/,
  torque: /\b(?:bolts?|tightening)\b/,
  control: /\b(?:auxiliary|secondary) (?:wiring|circuits?)\b/,
  timing: /\b(?:operating times?|closing times?|opening times?|breaker times?)\b/,
  gas: /\bsf6\b/,
  excitation: /\b(?:magneti[sz]ing|excitation|magneti[sz]ation) curve\b/,
  indexCurve: /\b(?:polari[sz]ation index|absorption ratio)\b/,
  currentTransformer: /\b(?:current transformers?|cts?)\b/,
  voltageTransformer: /\b(?:voltage transformers?|potential transformers?|vts?|pts?)\b/,
  metering: /\bmeters?\b/,
  protection: /\b(?:relays?|secondary injection)\b/,
  contact: /\b(?:joints?|micro ?ohm|crm|pole resistance)\b/,
};

/**
 * The record kind that a test's name speaks of: the one named first, so that "insulation after
 * withstand" is an insulation test.
 *
 * @param ids of the record kinds there are
 * @example kindOfTest("Hi-pot", ["contact", "insulation", "withstand"]) // "withstand"
 */
export const kindOfTest = (text: string, ids: readonly string[]): string | undefined => {
  const words = plainWords(text.slice(0, 200));
  const starts = ids.flatMap((id) => {
    const at = [words.indexOf(id), OTHER_NAMES[id]?.exec(words)?.index ?? -1].filter((n) => n >= 0);
    return at.length > 0 ? [{ id, at: Math.min(...at) }] : [];
  });
  return starts.sort((one, other) => one.at - other.at)[0]?.id;
};
