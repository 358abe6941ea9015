import { defineConfig, type TestProjectInlineConfiguration } from "vitest/config";

/** Which folder of tests is of which project: `npm test -- --project unit` is what one runs all day. */
const HOST = ["excel", "xlsx", "standin", "pane", "judge"];
const OTHER = [...HOST, "cli", "browser", "bench"];
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
    // As many files at once as there are cores; by itself vitest leaves one of them out.
    maxWorkers: "100%",
    projects: [
      project("unit", ["tests/**/*.test.{ts,tsx}"], { exclude: files(OTHER), isolate: false }),
      project("host", files(HOST), { isolate: false }),
      project("cli", files(["cli"]), { isolate: false }),
      project("browser", files(["browser"]), {
        globalSetup: "tests/browser/serveBench.ts",
        hookTimeout: 400_000,
      }),
    ],
  },
});
