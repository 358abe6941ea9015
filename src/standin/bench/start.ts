import { serve } from "./serve";

/** Serves the built bench until it is stopped. */
const { address } = await serve("out/bench", Number(process.env.PORT ?? 4173));
process.stdout.write(`Bench: ${address} (a development and trial tool; Ctrl+C stops it)\n`);
