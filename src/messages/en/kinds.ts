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

/** What the record kinds are called and are for, and their cautions, by their ids. */
export const kinds = {
  arcProtection,
  arrester,
  battery,
  cable,
  contact,
  control: controlWiring,
  currentLoop,
  currentTransformer,
  dimensions,
  dissipation,
  documents,
  earthing,
  energization,
  excitation,
  function: functionTest,
  gas,
  gasQuality,
  handling,
  heater,
  indexCurve,
  inspection,
  installation,
  insulation,
  interrupter,
  mainCircuit,
  mechanism,
  metering,
  motion,
  partialDischarge,
  permits,
  phasing,
  protection,
  rotation,
  settings,
  stability,
  thermography,
  timing,
  torque,
  undervoltage,
  voltageTransformer,
  voltageWinding,
  withstand,
};
