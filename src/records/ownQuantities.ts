import { KINDS } from "./kinds";

/** What a project or maker can set a limit of its own for, as the limits of the record kinds declare it. */
export const OWN_QUANTITIES: readonly string[] = [
  ...new Set(
    KINDS.flatMap(({ columns }) =>
      columns.flatMap(({ own }) => own?.quantities?.map(({ name }) => name) ?? []),
    ),
  ),
];
