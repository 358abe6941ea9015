import type { Criterion, Source } from "./criterion";

const source: Source = {
  document: "IEC 62271-100",
  edition: "2021",
  place: "simultaneity of poles, where the maker says nothing",
  certainty: "signed",
};

/** Part of a cycle that the poles of one operation may differ by. */
export const poleSpreadCycles: Readonly<Record<"closing" | "opening", Criterion>> = {
  closing: { value: 1 / 4, source },
  opening: { value: 1 / 6, source },
};
