import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

/** Every `@example call // outcome` in the docstrings of these folders, run. */
const FOLDERS = ["engineering", "standards"];

const examples = FOLDERS.flatMap((folder) =>
  readdirSync(`src/${folder}`).flatMap((file) =>
    [...readFileSync(`src/${folder}/${file}`, "utf8").matchAll(/@example (.+?) \/\/ (.+)$/gm)].map(
      ([, call = "", outcome = ""]) => ({ file: `${folder}/${file}`, call, outcome }),
    ),
  ),
);

const unwrap = (found: unknown): unknown => {
  if (typeof found !== "object" || found === null || !("value" in found)) return found;
  return "ok" in found || "source" in found ? unwrap(found.value) : found;
};

const run = (code: string, scope: Record<string, unknown>): unknown =>
  new Function(...Object.keys(scope), `return (${code});`)(...Object.values(scope));

describe("worked examples of the docstrings", () => {
  it("exist", () => expect(examples.length).toBeGreaterThan(50));

  it.each(examples)("$file: $call is $outcome", async ({ file, call, outcome }) => {
    const module: Record<string, unknown> = await import(
      /* @vite-ignore */ `../../src/${file.replace(/\.ts$/, "")}`
    );
    const found = unwrap(run(call, module));
    const wanted = run(outcome, {});
    if (typeof wanted !== "number") return expect(found).toEqual(wanted);
    const decimals = /\.(\d+)$/.exec(outcome)?.[1]?.length ?? 0;
    return expect(found).toBeCloseTo(wanted, decimals);
  });
});
