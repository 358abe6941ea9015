#!/usr/bin/env node
// Starts the command line from its TypeScript sources.
import { register } from "tsx/esm/api";

register();
const { main } = await import("./main.ts");
process.exitCode = await main(process.argv);
