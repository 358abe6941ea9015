import { longBook } from "./longBook";

const t = performance.now();
console.log(
  await longBook(Number(process.argv[2])),
  ((performance.now() - t) / 1000).toFixed(1),
  process.resourceUsage().maxRSS / 1e6,
);
