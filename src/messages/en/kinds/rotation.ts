export const rotation = {
  title: "Rotation, phases of cables and synchronizing check",
  purpose:
    "Rotation at the secondaries of voltage transformers, phases of cables from end to end, and the synchronizing check in the cases that it permits and in those that it refuses.",
  cautions: [
    "Rotation is tried with the gear alive: only under the site's permit system or switching order, at secondary terminals, by people licensed for it.",
    "Cables are identified dead, isolated and proved so at both ends, with the far end agreed by voice; earths are taken off and put back as the permit says.",
    "The synchronizing check is tried with voltages that are injected, its closing contact away from the breaker, before it is trusted with sources.",
    "The local code and licensed practice come first; this record does not say that sources may be paralleled.",
  ],
};
