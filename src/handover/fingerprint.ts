import canonicalize from "canonicalize";

const hex = (bytes: ArrayBuffer): string =>
  [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, "0")).join("");

/** SHA-256 of bytes (FIPS 180-4), in hexadecimal. */
export const sha256 = async (bytes: Uint8Array): Promise<string> =>
  hex(await crypto.subtle.digest("SHA-256", new Uint8Array(bytes)));

/**
 * The fingerprint of plain data, of numbers, texts, lists and the like: SHA-256 of its canonical form (RFC 8785), so that neither spaces nor the
 * order of names matter, only what is said.
 */
export const fingerprintOf = (content: unknown): Promise<string> =>
  sha256(new TextEncoder().encode(canonicalize(content)));

/** A fingerprint in groups of eight, to be compared by eye. */
export const inGroups = (fingerprint: string): string =>
  (fingerprint.match(/.{1,8}/g) ?? []).join(" ");

/** Whether what somebody copied from a page is this fingerprint: spaces and capitals do not matter, nor words before it. */
export const isFingerprint = (copied: string, fingerprint: string): boolean =>
  copied.replace(/\s+/g, "").toLowerCase().endsWith(fingerprint);
