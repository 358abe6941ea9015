import { bare, type Lineup } from "../lineup/lineup";
import { memoizeFor } from "../quantities/memoizeFor";
import { LINEUP } from "../records/columns/common";

/** The panels that a record is about: a panel, those of a section, or all of the lineup. */
export const panelsOf = (lineup: Lineup, object: string): readonly string[] => {
  const { all, named, asked } = panelsIn(lineup);
  if (object === LINEUP) return all;
  const before = asked.get(object);
  if (before) return before;
  const panels = named.get(bare(object)) ?? [];
  asked.set(object, panels);
  return panels;
};

/** The panels of a lineup by their own names and those of their sections, and what was asked for before. */
const panelsIn = memoizeFor(({ panels }: Lineup) => {
  const named = new Map<string, string[]>();
  for (const { designation, section } of panels)
    for (const name of new Set([bare(designation), bare(section)])) {
      const some = named.get(name);
      if (some) some.push(designation);
      else named.set(name, [designation]);
    }
  return {
    all: panels.map(({ designation }) => designation),
    named,
    asked: new Map<string, readonly string[]>(),
  };
});
