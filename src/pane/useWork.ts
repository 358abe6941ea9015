import { useCallback, useEffect, useRef, useState } from "react";
import { useText } from "../report/text";
import type { Watch } from "./host";

/** What came of a piece of work, where the person was when it began. */
interface Said {
  readonly place: string;
  readonly told?: string;
  readonly problem?: string;
}

/**
 * One piece of work at a time, with its progress, a way to stop it, what came of it and what went wrong.
 * What is said belongs to the place where the work began, and goes when that is left.
 *
 * @param place the step that is shown
 */
export function useWork(place: string) {
  const messages = useText();
  const [busy, setBusy] = useState(false);
  const [progress, setProgress] = useState<{ done: number; total: number }>();
  const [said, setSaid] = useState<Said>();
  const stopper = useRef<AbortController>(undefined);
  const here = useRef(place);
  const begun = useRef<string>(undefined);

  const say = useCallback(
    (words: Omit<Said, "place">) => setSaid({ place: begun.current ?? here.current, ...words }),
    [],
  );
  const setTold = useCallback((told: string) => say({ told }), [say]);
  const setProblem = useCallback((problem: string) => say({ problem }), [say]);
  const hush = useCallback(() => setSaid(undefined), []);

  useEffect(() => {
    if (here.current === place) return;
    here.current = place;
    // What a work that still goes on has to say is kept for its own place.
    if (begun.current === undefined) hush();
  }, [place, hush]);

  const run = useCallback(
    async (work: (watch: Watch) => Promise<void>) => {
      stopper.current = new AbortController();
      begun.current = here.current;
      setBusy(true);
      hush();
      try {
        await work({
          progress: (done, total) => setProgress({ done, total }),
          signal: stopper.current.signal,
        });
      } catch (error) {
        setProblem(messages.failed(await whyNot(error, messages.language)));
      } finally {
        begun.current = undefined;
        setBusy(false);
        setProgress(undefined);
      }
    },
    [messages, hush, setProblem],
  );

  const stop = useCallback(() => stopper.current?.abort(), []);
  const { told, problem } = said?.place === place ? said : {};
  return { busy, progress, problem, told, setProblem, setTold, hush, run, stop };
}

export type Work = ReturnType<typeof useWork>;

/** Why a work failed. What that is told in is loaded then; without a connection it stands in English. */
async function whyNot(error: unknown, language: string): Promise<string> {
  const loaded = await Promise.all([
    import("../sheets/bookError"),
    import("../messages/told"),
  ]).catch(() => undefined);
  const [{ BookError }, { toldIn }] = loaded ?? [{}, {}];
  return BookError && error instanceof BookError && toldIn
    ? error.say(toldIn(language))
    : (error as Error).message;
}
