import type { Basis } from "../standards/criterion";

/**
 * What a breaker is called where nobody says it: Q0 (IEC 81346-2), or its device number 52 on American
 * drawings (IEEE C37.2).
 *
 * @example breakerName("NETA") // "52"
 */
export const breakerName = (basis: Basis | undefined): string => (basis === "NETA" ? "52" : "Q0");
