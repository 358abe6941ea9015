#!/usr/bin/env node
// The built command line, `dist/cli/gearproof.mjs`.
import { main } from "./main.mjs";

process.exitCode = await main(process.argv);
