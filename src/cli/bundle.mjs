import { mkdirSync, renameSync, writeFileSync } from "node:fs";
import { basename } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { buildSync } from "esbuild";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const CACHE = ".cache/cli";
const WORKERS = ["src/cli/checkWorker.ts", "src/cli/readWorker.ts"];

/**
 * Bundles a program and the workers of the command line from their TypeScript sources into a folder two
 * levels below the project's: a tenth of a second, where loading each source by itself takes more than one.
 *
 * @param {string} entry source of the program, from the project's folder
 * @param {string} [folder] where the bundle goes, from the project's folder
 * @returns {string} the file of the program
 */
export function bundle(entry, folder = CACHE) {
  const sources = new Set([...WORKERS, entry]);
  const { outputFiles } = buildSync({
    absWorkingDir: ROOT,
    entryPoints: [...sources].map((source) => ({ in: source, out: basename(source, ".ts") })),
    outdir: folder,
    outExtension: { ".js": ".mjs" },
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    packages: "external",
    logLevel: "error",
    write: false,
  });
  mkdirSync(`${ROOT}/${folder}`, { recursive: true });
  for (const { path, contents } of outputFiles) {
    // Written beside its place and renamed into it: another command may be loading the file.
    const part = `${path}.${process.pid}.part`;
    writeFileSync(part, contents);
    renameSync(part, path);
  }
  return `${ROOT}/${folder}/${basename(entry, ".ts")}.mjs`;
}

/** Loads a module of the command line, bundled from its sources. */
export const load = async (entry) => import(pathToFileURL(bundle(entry)).href);
