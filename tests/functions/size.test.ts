import { gzipSync } from "node:zlib";
import { expect, it } from "vitest";
import { functions } from "../../src/functions/catalogue";
import { functionFiles, functionsBundle } from "../support/functionsBundle";

it("has every function in a bundle of at most 38 KB, gzipped", async () => {
  expect(functionFiles()).toHaveLength(Object.keys(functions).length);
  const bundle = await functionsBundle();
  const text = new TextDecoder().decode(bundle);
  for (const word of ["IEC 61869-2", "IEEE 400.2", "polarization index"])
    expect(text).toContain(word);
  expect(gzipSync(bundle).length).toBeLessThanOrEqual(38 * 1024);
});
