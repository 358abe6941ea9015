export const arrester = {
  title: "Surge arresters",
  purpose:
    "Each surge arrester: insulation resistance, leakage current at the maker's voltage, its earth lead and its counter. What neither maker nor project limits is recorded and not judged.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system; the area is fenced and watched while voltage is on.",
    "Never above the maker's voltage: an arrester that conducts can burst.",
    "Arresters are disconnected for withstand tests of the gear and of cables, and are back before it is energized: record both.",
    "Discharge after direct voltage before touching. The maker's instruction and the local code come first.",
  ],
};
