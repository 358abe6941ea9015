// Starts the worker where the command line runs from its sources; in the bundle it has this name itself.
import { load } from "./bundled.mjs";

await load("src/cli/checkWorker.ts");
