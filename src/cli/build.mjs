// Builds the command line for those who do not have the sources: `npm run build`, and before packing.
import { copyFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { bundle } from "./bundle.mjs";

const FOLDER = "dist/cli";

bundle("src/cli/main.ts", FOLDER);
copyFileSync(
  fileURLToPath(new URL("./built.mjs", import.meta.url)),
  fileURLToPath(new URL(`../../${FOLDER}/gearproof.mjs`, import.meta.url)),
);
