import type { RecordKind } from "./kind";
import { arcProtection } from "./kinds/arcProtection";
import { arrester } from "./kinds/arrester";
import { battery } from "./kinds/battery";
import { cable } from "./kinds/cable";
import { contact } from "./kinds/contact";
import { controlWiring } from "./kinds/controlWiring";
import { currentLoop } from "./kinds/currentLoop";
import { currentTransformer } from "./kinds/currentTransformer";
import { dimensions } from "./kinds/dimensions";
import { dissipation } from "./kinds/dissipation";
import { documents } from "./kinds/documents";
import { earthing } from "./kinds/earthing";
import { energization } from "./kinds/energization";
import { excitation } from "./kinds/excitation";
import { functionTest } from "./kinds/function";
import { gas } from "./kinds/gas";
import { gasQuality } from "./kinds/gasQuality";
import { handling } from "./kinds/handling";
import { heater } from "./kinds/heater";
import { indexCurve } from "./kinds/indexCurve";
import { inspection } from "./kinds/inspection";
import { installation } from "./kinds/installation";
import { insulation } from "./kinds/insulation";
import { interrupter } from "./kinds/interrupter";
import { mainCircuit } from "./kinds/mainCircuit";
import { mechanism } from "./kinds/mechanism";
import { metering } from "./kinds/metering";
import { motion } from "./kinds/motion";
import { partialDischarge } from "./kinds/partialDischarge";
import { permits } from "./kinds/permits";
import { phasing } from "./kinds/phasing";
import { protection } from "./kinds/protection";
import { rotation } from "./kinds/rotation";
import { settings } from "./kinds/settings";
import { stability } from "./kinds/stability";
import { thermography } from "./kinds/thermography";
import { timing } from "./kinds/timing";
import { torque } from "./kinds/torque";
import { undervoltage } from "./kinds/undervoltage";
import { voltageTransformer } from "./kinds/voltageTransformer";
import { voltageWinding } from "./kinds/voltageWinding";
import { withstand } from "./kinds/withstand";

/** Every record kind, in the order in which the work is done. A new kind is added here. */
const INDEX = [
  documents,
  permits,
  handling,
  inspection,
  installation,
  dimensions,
  torque,
  earthing,
  contact,
  mainCircuit,
  insulation,
  indexCurve,
  withstand,
  controlWiring,
  mechanism,
  undervoltage,
  timing,
  motion,
  interrupter,
  gas,
  gasQuality,
  battery,
  currentTransformer,
  excitation,
  currentLoop,
  voltageTransformer,
  voltageWinding,
  arrester,
  metering,
  settings,
  protection,
  stability,
  arcProtection,
  cable,
  dissipation,
  heater,
  functionTest,
  phasing,
  rotation,
  energization,
  partialDischarge,
  thermography,
] as const;

/** Id of a record kind. */
export type KindId = (typeof INDEX)[number]["id"];

export const KINDS: readonly RecordKind<KindId>[] = INDEX;

/** Ids of the record kinds, in the order of the work, by which a lineup names them. */
export const RECORD_KINDS: readonly string[] = KINDS.map(({ id }) => id);

/** Those that are kept only where the project asks for them. */
export const FURTHER_KINDS: readonly string[] = KINDS.flatMap(({ id, onRequest }) =>
  onRequest ? id : [],
);

/** Those that take check items of the project's own. */
export const ITEM_KINDS: readonly string[] = KINDS.flatMap(({ id, ownItems }) =>
  ownItems ? id : [],
);
