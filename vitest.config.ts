import { defineConfig, type TestProjectInlineConfiguration } from "vitest/config";

/** Which folder of tests is of which project: all others are `unit`, which one runs all day. */
const FOLDERS = {
  host: ["excel", "xlsx", "standin", "pane", "judge", "audits"],
  cli: ["cli", "handover"],
  fuzz: ["fuzz"],
  browser: ["browser"],
};
const files = (folders: readonly string[]) =>
  folders.map((folder) => `tests/${folder}/**/*.test.{ts,tsx}`);

const project = (
  name: string,
  include: string[],
  rest: TestProjectInlineConfiguration["test"] = {},
) => ({
  test: {
    name,
    include,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // What a page shows comes when it comes: on a loaded machine a second is not enough.
    expect: { poll: { timeout: 30_000 } },
    ...rest,
  },
});

export default defineConfig({
  test: {
    // What TypeScript comes to is kept from one run to the next.
    experimental: { fsModuleCache: true, fsModuleCachePath: ".cache/vitest" },
    // As many files at once as there are cores; by itself vitest leaves one of them out.
    maxWorkers: "100%",
    projects: [
      project("unit", ["tests/**/*.test.{ts,tsx}"], {
        exclude: files(Object.values(FOLDERS).flat()),
        isolate: false,
      }),
      project("host", files(FOLDERS.host), { isolate: false }),
      project("cli", files(FOLDERS.cli), { isolate: false }),
      project("fuzz", files(FOLDERS.fuzz), { isolate: false }),
      project("browser", files(FOLDERS.browser), {
        globalSetup: "tests/browser/serveBench.ts",
        hookTimeout: 400_000,
      }),
    ],
  },
});
