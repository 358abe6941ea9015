import { useCallback, useRef, useState } from "react";
import { useText } from "../report/text";
import type { Watch } from "./host";

/** One piece of work at a time, with its progress, a way to stop it, what came of it and what went wrong. */
export function useWork() {
  const messages = useText();
  const [busy, setBusy] = useState(false);
  const [progress, setProgress] = useState<{ done: number; total: number }>();
  const [problem, setProblem] = useState<string>();
  const [told, setTold] = useState<string>();
  const stopper = useRef<AbortController>(undefined);

  const run = useCallback(
    async (work: (watch: Watch) => Promise<void>) => {
      stopper.current = new AbortController();
      setBusy(true);
      setProblem(undefined);
      setTold(undefined);
      try {
        await work({
          progress: (done, total) => setProgress({ done, total }),
          signal: stopper.current.signal,
        });
      } catch (error) {
        setProblem(messages.failed((error as Error).message));
      } finally {
        setBusy(false);
        setProgress(undefined);
      }
    },
    [messages],
  );

  const stop = useCallback(() => stopper.current?.abort(), []);
  return { busy, progress, problem, told, setProblem, setTold, run, stop };
}

export type Work = ReturnType<typeof useWork>;
