#!/usr/bin/env node
import { load } from "./bundle.mjs";

const { main } = await load("src/cli/main.ts");
process.exitCode = await main(process.argv);
