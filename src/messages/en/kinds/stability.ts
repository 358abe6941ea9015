export const stability = {
  title: "Primary injection and stability",
  purpose:
    "Scheme by scheme from the primary: what relays and meters show of the injected current, polarity end to end, stable for a current through the zone, tripping through to the breaker for one within it.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system; the earths that close the injected circuit are the permit's business. Barrier the whole path: conductors move and joints warm.",
    "Never open the secondary circuit of a current transformer while primary current flows: the voltage that appears can kill.",
    "Say beforehand what will trip. Block what reaches other gear, list it, and put it back.",
    "The scheme's manual, the protection study, the local code and licensed practice come first.",
  ],
};
