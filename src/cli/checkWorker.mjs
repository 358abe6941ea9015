// Starts the worker where the command line runs from its sources; in the bundle it has this name itself.
import { load } from "./bundle.mjs";

await load("src/cli/checkWorker.ts");
