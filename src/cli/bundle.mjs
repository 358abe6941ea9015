import { mkdirSync, readdirSync, renameSync, statSync, writeFileSync } from "node:fs";
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

/** Loads a module of the command line, bundled from its sources where one of them is newer than its bundle. */
export async function load(entry) {
  const file = `${ROOT}/${CACHE}/${basename(entry, ".ts")}.mjs`;
  const isFresh = writtenAt(file) > newestBelow(`${ROOT}/src`);
  return import(pathToFileURL(isFresh ? file : bundle(entry)).href);
}

const writtenAt = (file) => statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? 0;

/** When the last of the files below a folder was written, a folder's own time with it: a file may be taken away. */
function newestBelow(folder) {
  let newest = writtenAt(folder);
  for (const one of readdirSync(folder, { withFileTypes: true })) {
    const path = `${folder}/${one.name}`;
    newest = Math.max(newest, one.isDirectory() ? newestBelow(path) : writtenAt(path));
  }
  return newest;
}
