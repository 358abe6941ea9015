import { STAGE, WITHSTAND } from "../words/readStage";
import { type Sense, sensesOf } from "../words/senses";

/** What names a record kind in a heading, a file's name or a column of tests, by its id. */
const KIND_SENSES: Readonly<Record<string, readonly (readonly Sense[])[]>> = {
  installation: [["installation"], ["installation", "item"]],
  function: [["function"]],
  torque: [["torque"], ["torque", "joint"]],
  earthing: [["earth"], ["earth", "continuity"], ["continuity"]],
  contact: [["contact"], ["contact", "resistance"], ["joint", "resistance"], ["joint"]],
  insulation: [["insulation"], ["insulation", "resistance"]],
  indexCurve: [["polarization"], ["absorption"], ["insulation", "curve"]],
  withstand: [["withstand"]],
  control: [["wiring"], ["wiring", "insulation"], ["control", "insulation"]],
  mechanism: [["mechanism"], ["spring"]],
  timing: [
    ["timing"],
    ["timing", "breaker"],
    ["operation", "time"],
    ["operatingtime"],
    ["operatingtime", "breaker"],
    ["closing", "time"],
    ["opening", "time"],
    ["closing", "held"],
    ["opening", "held"],
  ],
  gas: [["gas"], ["gas", "pressure"]],
  currentTransformer: [["ct"]],
  excitation: [["excitation"], ["excitation", "ct"]],
  voltageTransformer: [["vt"]],
  metering: [["meter"]],
  protection: [["relay"]],
  cable: [["cable"]],
  dimensions: [["level"]],
  mainCircuit: [
    ["maincircuit"],
    ["maincircuit", "resistance"],
    ["maincircuit", "contact", "resistance"],
  ],
  undervoltage: [["undervoltage"], ["uv"]],
  motion: [["motion"], ["travel", "speed"], ["travel"]],
  interrupter: [["interrupter"], ["interrupter", "withstand"]],
  gasQuality: [["gasquality"], ["moisture"], ["moisture", "gas"]],
  battery: [["battery"], ["battery", "discharge"], ["battery", "control"]],
  currentLoop: [
    ["loopcheck"],
    ["loop", "ct"],
    ["loop", "resistance"],
    ["loop", "ct", "resistance"],
  ],
  voltageWinding: [["vtwinding"], ["vt", "winding"], ["vtwinding", "winding", "resistance"]],
  arrester: [["arrester"], ["arrester", "leakage"], ["arrester", "insulation"]],
  settings: [["readback"], ["readback", "relay"], ["readback", "setting"]],
  stability: [["stability"], ["stability", "primary", "applied"], ["stability", "primary"]],
  arcProtection: [["arc"], ["arc", "relay"], ["arc", "sensor"]],
  dissipation: [["tandelta"], ["tandelta", "cable"]],
  heater: [["heating"]],
  phasing: [["phasing"]],
  rotation: [["rotation"]],
  energization: [["energization"]],
  partialDischarge: [["pd"], ["pd", "tev"], ["tev"]],
};

/** A text without the withstand test that a reading is before or after, and without its stage. */
const withoutStage = (text: string): string =>
  STAGE.test(text) ? text.replace(STAGE, " ").replace(WITHSTAND, " ") : text;

/**
 * How much a text speaks of each record kind, by their ids: nothing, or how many of its words together do.
 *
 * @example kindsNamed("Insulation resistance before hipot").get("insulation") // 2
 */
export const kindsNamed = (text: string): ReadonlyMap<string, number> => {
  const { senses } = sensesOf(withoutStage(text.replace(/_/g, " ")));
  return new Map(
    Object.entries(KIND_SENSES).flatMap(([id, ways]): [string, number][] => {
      const most = Math.max(
        0,
        ...ways.map((way) => (way.every((sense) => senses.has(sense)) ? way.length : 0)),
      );
      return most > 0 ? [[id, most]] : [];
    }),
  );
};

/** The one kind that a text speaks of most, where one does. */
export const kindNamed = (text: string, ids: ReadonlySet<string>): string | undefined => {
  const [first, second] = [...kindsNamed(text)]
    .filter(([id]) => ids.has(id))
    .sort(([, one], [, other]) => other - one);
  return first && first[1] > (second?.[1] ?? 0) ? first[0] : undefined;
};
