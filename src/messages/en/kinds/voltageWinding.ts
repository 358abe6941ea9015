export const voltageWinding = {
  title: "Voltage transformers: primary insulation and windings",
  purpose:
    "Insulation of each voltage transformer's primary, and resistance of its windings at 20 °C against what the maker measured: a broken wire or a shorted turn shows there before it shows in the ratio.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system; draw the primary and secondary fuses. A voltage transformer fed from its secondary makes high voltage at its primary.",
    "Wait until the reading is still, and do not open the circuit under current: the winding's energy arcs. Discharge it before touching.",
    "Earths that were lifted for the test are put back at one point, and the remarks say so. The maker's instruction and the local code come first.",
  ],
};
