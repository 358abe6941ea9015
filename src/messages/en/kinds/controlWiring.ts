export const controlWiring = {
  title: "Insulation and withstand, control wiring",
  purpose:
    "Continuity and ferrules of each control circuit; then, its conductors joined, against earth: insulation resistance first, then the power-frequency withstand test of auxiliary circuits. Nothing is corrected to a temperature.",
  cautions: [
    "Isolate the supplies of every circuit, also those from other panels, and prove dead, under the site's permit system.",
    "Relays, meters, motors, converters and surge suppressors are disconnected or bridged as their makers say; earths of current and voltage transformers are lifted for the test and put back, and their putting back is recorded.",
    "Short-circuit current transformers' secondaries before a circuit is opened.",
    "The test voltage reaches every place that the circuit reaches: warn there too. Discharge afterwards. Local code and licensed practice come first.",
  ],
};
