export const indexCurve = {
  title: "Insulation over time",
  purpose:
    "Insulation resistance over ten minutes at a steady voltage, with the absorption ratio and the polarization index. Both come from windings: on switchgear they inform and do not accept; here they are judged by the project's own criterion alone, and a reading too high for an index to mean anything stays inconclusive.",
  cautions: [
    "Isolate, prove dead and earth before connecting; remove earths only for the test, under the site's permit system.",
    "The test voltage is on every part connected for ten minutes: barrier, warn and watch.",
    "Discharge and earth for at least four times the test's duration before touching: after ten minutes the insulation holds far more charge than after one (common practice; the maker's or local rule comes first).",
    "Disconnect or short what the test would damage. Local code and licensed practice come first.",
  ],
};
