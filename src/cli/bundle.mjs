import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
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
 * @param {string} [folder] where the bundle goes, from the folder `root`
 * @param {string} [root] the project's folder, or one that has all that stands in it
 * @returns {string} the file of the program
 */
export function bundle(entry, folder = CACHE, root = ROOT) {
  const sources = new Set([...WORKERS, entry]);
  const { outputFiles } = buildSync({
    absWorkingDir: ROOT,
    entryPoints: [...sources].map((source) => ({ in: source, out: basename(source, ".ts") })),
    outdir: join(root, folder),
    outExtension: { ".js": ".mjs" },
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    packages: "external",
    logLevel: "error",
    write: false,
  });
  mkdirSync(join(root, folder), { recursive: true });
  for (const { path, contents } of outputFiles) {
    // Written beside its place and renamed into it: another command may be loading the file.
    const part = `${path}.${process.pid}.part`;
    writeFileSync(part, contents);
    renameSync(part, path);
  }
  return join(root, folder, `${basename(entry, ".ts")}.mjs`);
}

/** Where the project's folder is not to be written to: the same bundle in a folder of the system's, which leads to all the rest. */
export function bundleElsewhere(entry) {
  const root = mkdtempSync(join(tmpdir(), "gearproof-program-"));
  for (const name of readdirSync(ROOT))
    if (name !== ".cache") symlinkSync(join(ROOT, name), join(root, name));
  process.on("exit", () => rmSync(root, { recursive: true, force: true }));
  return bundle(entry, CACHE, root);
}

const isUnwritable = ({ code }) => ["EACCES", "EROFS", "EPERM", "ENOTDIR"].includes(code);

/** The bundle in the project's folder, else elsewhere. */
function bundleSomewhere(entry) {
  try {
    return bundle(entry);
  } catch (error) {
    if (!isUnwritable(error)) throw error;
    return bundleElsewhere(entry);
  }
}

/** Loads a module of the command line, bundled from its sources where one of them is newer than its bundle. */
export async function load(entry) {
  const file = `${ROOT}/${CACHE}/${basename(entry, ".ts")}.mjs`;
  const isFresh = writtenAt(file) > newestBelow(`${ROOT}/src`);
  return import(pathToFileURL(isFresh ? file : bundleSomewhere(entry)).href);
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
