/** Says how long something took and how much memory the process came to, as one line of JSON. */
export const report = (start: number, said: string): void => {
  process.stdout.write(
    `${JSON.stringify({
      seconds: (performance.now() - start) / 1000,
      megabytes: process.resourceUsage().maxRSS / 1024,
      said,
    })}\n`,
  );
};
