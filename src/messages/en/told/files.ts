/** Why a file of JSON or a key is not understood. */
export const files = {
  noPrivateKey:
    'holds no private Ed25519 key in PEM ("BEGIN PRIVATE KEY"); openssl genpkey -algorithm ed25519 makes one',
  noPublicKey:
    'holds no public Ed25519 key in PEM ("BEGIN PUBLIC KEY"); openssl pkey -pubout makes it of a private one',
  twice: (key: string, line: number) =>
    `says ${key} a second time in the same braces, on line ${line}; keep one.`,
  map: {
    noJson: (right: string) => `is not JSON; ${right}`,
    noMap: (place: string | undefined, issue: string, right: string) =>
      `is not a map: at ${place ?? "its top"}: ${issue}; ${right}`,
    right: (example: string) => `write, for example, ${example}, as "gearproof map" writes it.`,
  },
};
