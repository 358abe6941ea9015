#!/usr/bin/env node
import { load } from "./bundled.mjs";

const { main } = await load("src/cli/main.ts");
process.exitCode = await main(process.argv);
