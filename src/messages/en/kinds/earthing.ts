export const earthing = {
  title: "Continuity of the earthing circuit",
  purpose:
    "Four-wire drop from each earthed part to the earthing point at the test current: enclosure, door across its hinge, breaker frame in the service position, and each section's earth bar to the station's earth.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system; never open a protective earth of gear that is in service.",
    "The test current heats thin paths and loose joints, and flows through whatever lies parallel: say in the remarks what was connected.",
    "Do not open the current circuit under test.",
    "The local code, the maker's instruction and licensed practice come first.",
  ],
};
