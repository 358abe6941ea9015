import type { Told } from "../messages/told";
import { answer, type Result, refuse } from "../quantities/result";

/** Ed25519 (RFC 8032), as Web Crypto names it. */
const ALGORITHM = "Ed25519";

/** The bytes of a PEM block (RFC 7468) with this label; undefined where the text has none. */
function pemBytes(text: string, label: string): Uint8Array<ArrayBuffer> | undefined {
  const block = new RegExp(`-----BEGIN ${label}-----([A-Za-z0-9+/=\\s]+)-----END ${label}-----`);
  const [, base64] = block.exec(text) ?? [];
  if (base64 === undefined) return undefined;
  try {
    return Uint8Array.from(atob(base64.replace(/\s/g, "")), (char) => char.charCodeAt(0));
  } catch {
    return undefined;
  }
}

const KEYS = {
  sign: { label: "PRIVATE KEY", form: "pkcs8" },
  verify: { label: "PUBLIC KEY", form: "spki" },
} as const;

async function keyOf(pem: string, use: keyof typeof KEYS): Promise<CryptoKey | undefined> {
  const { label, form } = KEYS[use];
  const bytes = pemBytes(pem, label);
  if (!bytes) return undefined;
  return crypto.subtle.importKey(form, bytes, ALGORITHM, false, [use]).catch(() => undefined);
}

/**
 * A detached signature of bytes, 64 bytes long.
 *
 * @param pem the private key: PKCS #8 in PEM, as `openssl genpkey -algorithm ed25519` writes it
 * @returns a refusal where the text holds no such key
 */
export async function signatureOf(
  bytes: Uint8Array,
  pem: string,
): Promise<Result<Uint8Array, Told>> {
  const key = await keyOf(pem, "sign");
  return key
    ? answer(new Uint8Array(await crypto.subtle.sign(ALGORITHM, key, new Uint8Array(bytes))))
    : refuse("wrong", ({ files }: Told) => files.noPrivateKey);
}

/**
 * Whether a signature is of these bytes and by the owner of a public key.
 *
 * @param pem the public key: SPKI in PEM, as `openssl pkey -pubout` writes it
 * @returns a refusal where the text holds no such key
 */
export async function isSignedBy(
  bytes: Uint8Array,
  signature: Uint8Array,
  pem: string,
): Promise<Result<boolean, Told>> {
  const key = await keyOf(pem, "verify");
  return key
    ? answer(
        await crypto.subtle.verify(
          ALGORITHM,
          key,
          new Uint8Array(signature),
          new Uint8Array(bytes),
        ),
      )
    : refuse("wrong", ({ files }: Told) => files.noPublicKey);
}
