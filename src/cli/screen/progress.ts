import { Presets, SingleBar } from "cli-progress";
import { shownInLine } from "../../quantities/shown";

/** Steps of a long job, shown as a bar on a terminal and not at all elsewhere. */
export interface Progress {
  step(what: string): void;
  end(): void;
}

export function progress(total: number): Progress {
  if (!process.stderr.isTTY) return { step: () => {}, end: () => {} };
  const bar = new SingleBar(
    {
      format: "{bar} {value}/{total} {what}",
      clearOnComplete: true,
      stream: process.stderr,
      // A terminal is as it was where the command is cut short.
      linewrap: true,
      barsize: 20,
    },
    Presets.shades_classic,
  );
  bar.start(total, 0, { what: "" });
  return {
    step: (what) => {
      bar.increment({ what: shownInLine(what) });
      // The work that follows holds the thread, so the bar is drawn now.
      bar.render();
    },
    end: () => bar.stop(),
  };
}
