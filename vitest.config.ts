import { defineConfig } from "vitest/config";

/** Which folder of tests is of which project: `npm test -- --project unit` is what one runs all day. */
const HOST = ["excel", "xlsx", "standin", "pane", "judge"];
const OTHER = [...HOST, "cli", "browser", "bench"];
const files = (folders: readonly string[]) =>
  folders.map((folder) => `tests/${folder}/**/*.test.{ts,tsx}`);

const project = (name: string, include: string[], exclude: string[] = [], isolate = true) => ({
  test: { name, include, exclude, isolate, testTimeout: 60_000, hookTimeout: 120_000 },
});

export default defineConfig({
  test: {
    projects: [
      project("unit", ["tests/**/*.test.{ts,tsx}"], files(OTHER), false),
      project("host", files(HOST)),
      project("cli", files(["cli"])),
      project("browser", files(["browser"])),
    ],
  },
});
