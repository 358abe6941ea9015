import { filledPlan, SOUND } from "../../support/fill";
import { equippedInFull, longLineup } from "../../support/lineups";
import { memoryBook } from "../../support/memoryBook";
import { finds, keepsQuiet, rowOf } from "../support";

const SETTINGS = "GearSettingsHeld";
const FIRMWARE = "Firmware";

/** Four panels with the same relay of two settings. */
const book = () => {
  const whole = equippedInFull(longLineup(4, { basis: "IEC" }));
  const panels = whole.panels.map((panel) => ({
    ...panel,
    relaySettings: [
      { relay: "F1", parameter: "51 pick-up", value: "1.2", unit: "A", tolerancePercent: 2 },
      { relay: "F1", parameter: "51 multiplier", value: "0.2" },
    ],
  }));
  return memoryBook(filledPlan({ ...whole, panels }, 11, SOUND));
};
const at = (panel: string, parameter = "51 pick-up") => rowOf(book(), SETTINGS, panel, parameter);
const show = (one: ReturnType<typeof book>, ...versions: readonly (string | null)[]) => {
  for (const [panel, version] of versions.entries())
    one.set(SETTINGS, at(`=K000${panel + 1}`), FIRMWARE, version);
};

finds("versions-differ", [
  {
    name: "a relay of another firmware than its like",
    spoil: (one) => show(one, "V4.12", "V4.12", "V4.09", "V4.12"),
    table: SETTINGS,
    row: at("=K0003"),
    header: FIRMWARE,
    weight: "query",
    says: /firmware V4\.09, and 3 others with the same settings show V4\.12/,
    book,
  },
  {
    name: "two versions of one relay",
    spoil: (one) => {
      show(one, "V4.12");
      one.set(SETTINGS, at("=K0001", "51 multiplier"), FIRMWARE, "V4.13");
    },
    table: SETTINGS,
    row: at("=K0001", "51 multiplier"),
    header: FIRMWARE,
    weight: "query",
    says: /another row of the same relay shows V4\.12/,
    book,
  },
]);

keepsQuiet("versions-differ", [
  ["two relays alone", (one) => show(one, "V4.12", "V4.09", null, null), book],
  ["two of each", (one) => show(one, "V4.12", "V4.09", "V4.09", "V4.12"), book],
]);
