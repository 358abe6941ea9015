export const excitation = {
  title: "Excitation curves of current transformers",
  purpose:
    "Exciting current of each protective core against secondary voltage, primary open, and the knee point that the curve shows. The row goes with the one of the same panel, core and phase among the current transformers.",
  cautions: [
    "The voltage at the secondary terminals is dangerous, and the primary takes part in it: keep the primary open and clear of people, and every other core shorted.",
    "Isolate, prove dead and earth the primary circuit under the site's permit system before the secondary is disconnected; never open a secondary while primary current can flow.",
    "Do not pass the maker's greatest voltage. Go up without stepping back, and bring the voltage slowly down to zero so that the core is left demagnetized.",
    "Disconnect relays and meters from the core. Local code, the maker's instruction and licensed practice come first.",
  ],
};
