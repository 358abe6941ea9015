import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";

const FOLDER = "src/functions";

/** The files that declare a worksheet function, as the build takes them. */
export const functionFiles = (): string[] =>
  readdirSync(FOLDER)
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(FOLDER, name))
    .filter((file) => readFileSync(file, "utf8").includes("@customfunction"));

/** Every worksheet function with all that it needs, bundled and minified as the build does. */
export async function functionsBundle(): Promise<Uint8Array> {
  const imports = functionFiles().map((file, i) => `import * as f${i} from "./${file}";`);
  const kept = functionFiles().map((_, i) => `f${i}`);
  const { outputFiles } = await build({
    stdin: {
      contents: `${imports.join("\n")}\nglobalThis.gearFunctions = [${kept.join(",")}];`,
      resolveDir: process.cwd(),
      loader: "ts",
    },
    bundle: true,
    minify: true,
    format: "iife",
    target: "es2022",
    write: false,
  });
  return outputFiles[0]?.contents ?? new Uint8Array();
}
