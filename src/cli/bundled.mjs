import { mkdirSync, renameSync, writeFileSync } from "node:fs";
import { basename } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { buildSync } from "esbuild";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const PLACE = ".cache/cli";
const WORKERS = ["src/cli/checkWorker.ts", "src/cli/readWorker.ts"];

/**
 * Puts a program and the workers of the command line together from their TypeScript sources, as deep in
 * the project as these: a tenth of a second, where loading each source by itself takes more than one.
 *
 * @param {string} entry source of the program, from the project's folder
 * @returns {string} the file of the program
 */
export function bundled(entry) {
  const sources = new Set([...WORKERS, entry]);
  const { outputFiles } = buildSync({
    absWorkingDir: ROOT,
    entryPoints: [...sources].map((source) => ({ in: source, out: basename(source, ".ts") })),
    outdir: PLACE,
    outExtension: { ".js": ".mjs" },
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    packages: "external",
    logLevel: "error",
    write: false,
  });
  mkdirSync(`${ROOT}/${PLACE}`, { recursive: true });
  for (const { path, contents } of outputFiles) {
    // Beside it first, then into its place: another command may be loading it.
    const beside = `${path}.${process.pid}.part`;
    writeFileSync(beside, contents);
    renameSync(beside, path);
  }
  return `${ROOT}/${PLACE}/${basename(entry, ".ts")}.mjs`;
}

/** Loads a module of the command line, put together from its sources. */
export const load = async (entry) => import(pathToFileURL(bundled(entry)).href);
