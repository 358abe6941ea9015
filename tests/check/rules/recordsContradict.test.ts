import type { Lineup } from "../../../src/lineup/lineup";
import { filledPlan, SOUND } from "../../support/fill";
import { equippedInFull, longLineup } from "../../support/lineups";
import { memoryBook } from "../../support/memoryBook";
import { finds, keepsQuiet, rowOf } from "../support";

const FURTHER = ["mainCircuit", "currentLoop", "energization"].map((kind) => ({ kind }));

/** Two panels with relays, transformers and main circuits, soundly tested; settings of the relay as they are tested. */
const book = (changes: Partial<Lineup["panels"][number]> = {}) => {
  const whole = equippedInFull(longLineup(2, { basis: "IEC" }));
  const lineup: Lineup = {
    ...whole,
    furtherRecords: FURTHER,
    panels: whole.panels.map((panel) => ({
      ...panel,
      relaySettings: [
        { relay: "F1", parameter: "51 pick-up", value: "1.2", unit: "A", tolerancePercent: 2 },
        { relay: "F1", parameter: "51 multiplier", value: "0.2" },
        { relay: "F1", parameter: "51 curve", value: "IEC standard" },
      ],
      ...changes,
    })),
  };
  return memoryBook(filledPlan(lineup, 11, SOUND));
};
const ENERGIZATION = "GearEnergization";
const AS_ORDERED = "Before: settings as left are the order's";
const SETTINGS = "GearSettingsHeld";
const row = (table: string, ...words: string[]) => rowOf(book(), table, "=K0001", ...words);
/** The order was revised after the test, and the relay set by it. */
const revise = (one: ReturnType<typeof book>, parameter: string, to: number) => {
  one.set(SETTINGS, row(SETTINGS, parameter), "Ordered", to);
  one.set(SETTINGS, row(SETTINGS, parameter), "As left", to);
};
const ordered = (value: string) =>
  book({ relaySettings: [{ relay: "F1", parameter: "51 pick-up", value, unit: "A" }] });

finds("records-contradict", [
  {
    name: "a pick-up left otherwise than it was tested",
    spoil: (one) => revise(one, "51 pick-up", 1.4),
    table: SETTINGS,
    row: row(SETTINGS, "51 pick-up"),
    header: "As left",
    weight: "stop",
    says: /left at 1\.4 A, and tested at 1\.2 A \("Protection, =K0001 · F1 51 · Pick-up"\)/,
    book,
  },
  {
    name: "a multiplier left otherwise than it was tested",
    spoil: (one) => revise(one, "51 multiplier", 0.3),
    table: SETTINGS,
    row: row(SETTINGS, "51 multiplier"),
    header: "As left",
    weight: "stop",
    says: /left at 0\.3, and tested at 0\.2/,
    book,
  },
  {
    name: "a main circuit that resists less than its breaker's pole",
    spoil: (one) => one.set("GearCircuit", row("GearCircuit", "Main circuit", "L2"), "R µΩ", 20),
    table: "GearCircuit",
    row: row("GearCircuit", "Main circuit", "L2"),
    header: "R at 20 °C µΩ",
    weight: "query",
    says: /A part cannot resist more than the whole/,
    book,
  },
  {
    name: "settings confirmed of which one is not the order's",
    spoil: (one) => {
      one.set(SETTINGS, row(SETTINGS, "51 curve"), "As left", "IEC inverse");
      one.set(ENERGIZATION, row(ENERGIZATION, AS_ORDERED), "State", "OK");
    },
    table: ENERGIZATION,
    row: row(ENERGIZATION, AS_ORDERED),
    header: "State",
    weight: "stop",
    says: /seen to as OK, and "Relay settings, =K0001 · F1 · 51 curve" is not as ordered/,
    book,
  },
  {
    name: "a burden below what its loop takes",
    spoil: (one) => one.set("GearCurrentLoop", row("GearCurrentLoop", "L1"), "Loop Ω", 7.5),
    table: "GearCurrentLoop",
    row: row("GearCurrentLoop", "L1"),
    header: "Loop VA",
    weight: "query",
    says: /the loop takes 7\.5 VA, and the burden was measured as 5 VA/,
    book,
  },
]);

keepsQuiet("records-contradict", [
  [
    "a relay that is not left as ordered, which its own result tells",
    (one) => {
      one.set(ENERGIZATION, row(ENERGIZATION, AS_ORDERED), "State", null);
      one.set(SETTINGS, row(SETTINGS, "51 pick-up"), "As left", "1.4 A");
    },
    book,
  ],
  ["the same in another unit", (one) => one.set(SETTINGS, 0, "As left", "1200 mA"), book],
  ["a setting in primary amperes", () => {}, () => ordered("720")],
  [
    "a test that was not begun",
    (one) => {
      revise(one, "51 pick-up", 1.4);
      one.set("GearProtection", row("GearProtection", "F1 51", "Pick-up"), "Measured", null);
    },
    book,
  ],
  [
    "a main circuit a hair below the pole in it",
    (one) => one.set("GearCircuit", 0, "R µΩ", 36),
    book,
  ],
  [
    "a loop without a burden",
    (one) => one.set("GearCurrentTransformers", 0, "Burden VA", null),
    book,
  ],
]);
