import { execFileSync } from "node:child_process";
import { mkdirSync, utimesSync } from "node:fs";
import type { TestProject } from "vitest/node";
import { serve } from "../../src/standin/bench/serve";
import { isBuilt, MADE } from "./isBuilt";
import { SHOTS } from "./shots";

declare module "vitest" {
  interface ProvidedContext {
    /** Where the bench is served. */
    bench: string;
  }
}

/** Before the browser's tests: what they look at is built where it is not, and served to all of them. */
export default async function serveBench(project: TestProject): Promise<() => void> {
  mkdirSync(SHOTS, { recursive: true });
  // The bench opens the demo's workbook as its sample.
  if (!isBuilt()) {
    execFileSync("npm", ["run", "-s", "gearproof", "--", "demo"], { stdio: "pipe" });
    for (const script of ["build", "bench:build"])
      execFileSync("npm", ["run", "-s", script, "--", "--stats=errors-only"], { stdio: "pipe" });
    // What came out as it was before is not written again, and is of now all the same.
    for (const file of MADE) utimesSync(file, new Date(), new Date());
  }
  const { server, address } = await serve("out/bench", 0);
  project.provide("bench", address);
  return () => server.close();
}
