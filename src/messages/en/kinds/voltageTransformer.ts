export const voltageTransformer = {
  title: "Voltage transformers",
  purpose:
    "Each winding of each phase: ratio and polarity with voltage on the primary, insulation of the secondary, fuses, the one earth of the secondary circuit, and the burden that is connected.",
  cautions: [
    "A voltage transformer fed from its secondary puts full voltage on the primary: pull the secondary fuses and lock them out before anybody touches the primary, and never supply a secondary circuit that is not parted from its transformer.",
    "Isolate, prove dead and earth under the site's permit system; barrier the primary while voltage is on it.",
    "Never short the secondary. Keep an unloaded residual winding's damping as the maker says.",
    "Lift the earths of secondary and primary neutral for the insulation test only, and put them back. Local code, the maker's instruction and licensed practice come first.",
  ],
};
