/** Says how long something took on the clock and of the processors since the process began, and how much memory the process came to, as one line of JSON. */
export const report = (start: number, said: string): void => {
  process.stdout.write(
    `${JSON.stringify({
      seconds: (performance.now() - start) / 1000,
      processor: process.cpuUsage().user / 1e6 + process.cpuUsage().system / 1e6,
      megabytes: process.resourceUsage().maxRSS / 1024,
      said,
    })}\n`,
  );
};
