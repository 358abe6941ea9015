import { useCallback, useState } from "react";

/** What was kept under a name; undefined where nothing is, or this browser keeps nothing. */
function kept(name: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(name) ?? "null");
  } catch {
    return undefined;
  }
}

/**
 * A choice that is remembered from one opening of the pane to the next, on this machine: what was kept of
 * it, over what it is where nothing was.
 */
export function useKept<T extends { readonly [K in keyof T]: string }>(
  name: string,
  start: T,
): [T, (next: T) => void] {
  const [value, setValue] = useState<T>(() => {
    const found = kept(name);
    if (typeof found !== "object" || found === null) return start;
    const same = Object.entries(found).filter(
      ([key, one]) => key in start && typeof one === "string",
    );
    return { ...start, ...Object.fromEntries(same) };
  });
  const set = useCallback(
    (next: T) => {
      setValue(next);
      try {
        localStorage.setItem(name, JSON.stringify(next));
      } catch {
        // Where nothing can be kept, the choice holds until the pane is closed.
      }
    },
    [name],
  );
  return [value, set];
}
