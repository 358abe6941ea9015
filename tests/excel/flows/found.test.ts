import { expect, test } from "vitest";
import type { StandInBook } from "../../../src/standin/book";
import { again, type Disturbance, disturbed, fileFor, type Known } from "./model";
import { withoutWaiting } from "./runs";
import type { Pane } from "./steps";
import { builtBook, FREE_SERIAL, hostOf, lightBook, ownBook } from "./world";

withoutWaiting();

interface Found {
  readonly what: string;
  readonly make: () => Promise<StandInBook>;
  readonly steps: readonly (Partial<Disturbance> & {
    readonly what: string;
    readonly mask: number;
    readonly replace?: boolean;
    readonly panels?: number;
  })[];
}

const doing = (batch: number, what: string, of = 0, to = 0) => ({ batch, act: { what, of, to } });
const shutFrom = (batch: number) =>
  ({ batch, when: "before", share: 0, code: "GeneralException", times: 6 }) as const;

/** Sequences that were found to lose a reading, or to leave one on another row. */
const FOUND: readonly Found[] = [
  {
    what: "a record that has moved is written only where it holds what it held when it was placed",
    make: ownBook,
    steps: [
      {
        ...{ what: "bring in", mask: 4 },
        acts: [
          doing(6, "lets two rows change places", 9),
          doing(6, "another pane brings a file in"),
        ],
      },
    ],
  },
  {
    what: "so is one whose column has moved",
    make: ownBook,
    steps: [
      {
        ...{ what: "bring in", mask: 230 },
        acts: [doing(4, "puts a column in"), doing(6, "types a reading for another record")],
      },
    ],
  },
  {
    what: "so is one whose row another pane has filled meanwhile",
    make: ownBook,
    steps: [
      {
        ...{ what: "bring in", mask: 24 },
        acts: [doing(6, "takes a sheet row out", 0, 14), doing(6, "another pane brings a file in")],
      },
    ],
  },
  {
    what: "what was typed, written over and then blanked is told",
    make: lightBook,
    steps: [
      {
        ...{ what: "type into a row", mask: 202 },
        acts: [doing(5, "types a reading", 1), doing(6, "blanks a reading", 19)],
      },
    ],
  },
  {
    what: "a column put in while a table is read is noticed",
    make: lightBook,
    steps: [
      {
        ...{ what: "bring in", mask: 1, replace: true },
        acts: [doing(3, "puts a column in", 0, 17)],
      },
    ],
  },
  {
    what: "what cannot be put back is told, cell by cell, where rows were sorted",
    make: builtBook,
    steps: [
      { what: "build", mask: 1, acts: [doing(1, "another pane brings a file in")] },
      { what: "take back", mask: 1, acts: [doing(5, "sorts")], fault: shutFrom(6) },
    ],
  },
  {
    what: "what cannot be put back is told with its number as it stands in a layout",
    make: ownBook,
    steps: [
      { what: "bring in", mask: 1, replace: true },
      { what: "take back", mask: 1, acts: [doing(7, "types a reading")], fault: shutFrom(8) },
    ],
  },
  {
    what: "taking back after another pane's file leaves in the history what stands nowhere else",
    make: builtBook,
    steps: [
      {
        ...{ what: "bring in", mask: 16, replace: true },
        acts: [doing(6, "another pane brings a file in")],
      },
      { what: "take back", mask: 1 },
    ],
  },
  {
    what: "so does taking back while another pane brings a file in",
    make: builtBook,
    steps: [
      { what: "bring in", mask: 160 },
      {
        ...{ what: "take back", mask: 1 },
        acts: [doing(5, "types a reading", 23), doing(7, "another pane brings a file in")],
      },
    ],
  },
  {
    what: "a history that was begun and cut short is gone on with",
    make: lightBook,
    steps: [
      {
        ...{ what: "bring in", mask: 254, replace: true },
        acts: [doing(4, "types a reading", 1)],
        fault: { batch: 5, when: "midway", share: 0.2, code: "GeneralException", times: 1 },
      },
    ],
  },
  {
    what: "what is typed while a build is undone is put back",
    make: builtBook,
    steps: [
      { what: "build", mask: 1, panels: 3 },
      { what: "undo the build", mask: 1, acts: [doing(5, "types a reading", 6)] },
    ],
  },
  {
    what: "so are rows that were sorted while a build was undone",
    make: builtBook,
    steps: [
      { what: "build", mask: 1, panels: 3 },
      { what: "undo the build", mask: 1, acts: [doing(5, "sorts")] },
    ],
  },
];

test.each(FOUND)("$what", async ({ make, steps }) => {
  const known: Known = {
    ...{ serial: FREE_SERIAL, files: 0 },
    ...{ unknowable: 0, steps: 0, acts: 0, faults: 0 },
  };
  const pane: Pane = { host: hostOf(await make()) };
  for (const { acts = [], fault, mask, replace = false, panels = 2, what } of steps) {
    const step = { what, replace, panels, limit: 50, file: fileFor(known, mask) };
    const error = await disturbed(pane, known, step, { acts, fault });
    if (error) await again(pane, known, step);
  }
  expect(known.acts).toBeGreaterThan(0);
});
