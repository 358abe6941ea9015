/**
 * Ids of the record kinds, in the order of the work, by which a lineup names them. The kinds themselves
 * are declared in records/.
 */
export const RECORD_KINDS = [
  "documents",
  "permits",
  "handling",
  "inspection",
  "installation",
  "dimensions",
  "torque",
  "earthing",
  "contact",
  "insulation",
  "indexCurve",
  "withstand",
  "control",
  "mechanism",
  "timing",
  "gas",
  "currentTransformer",
  "excitation",
  "voltageTransformer",
  "metering",
  "protection",
  "cable",
  "function",
] as const;

export type RecordKindId = (typeof RECORD_KINDS)[number];
