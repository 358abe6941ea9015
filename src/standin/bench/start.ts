import { serve } from "./serve";

/** Serves the built bench until it is stopped. */
const { address } = await serve("out/bench", Number(process.env.PORT ?? 4173));
process.stdout.write(`
Bench: ${address} (the workbook with the add-in's pane; a trial tool; Ctrl+C stops it)
Page: out/harbour-substation.html (findings by panel and plots, for any browser)
Hand-over: out/handover/report.pdf (NOT FINAL on each page, since stops are open)
`);
