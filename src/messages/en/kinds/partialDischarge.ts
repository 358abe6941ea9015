export const partialDischarge = {
  title: "Partial discharge",
  purpose:
    "Transient earth voltage and ultrasound at each panel under voltage, over the background. A survey informs and is compared with the next one; it accepts only where the project says by what. Where maker or project allows a charge in pC, a measurement of it (IEC 60270) has rows of its own, for the gear and for each cable, with the voltage that it was made at.",
  cautions: [
    "A measurement of charge is a high-voltage test: fenced, warned and watched at every end, by people licensed for it, and never above the maker's voltage. Discharge and earth before touching.",
    "The gear is alive: from outside closed and earthed enclosures only, under the site's permit system, by people licensed to be there.",
    "A high level may be a fault about to happen: go back, warn, and ask the one who is responsible before anybody goes near again.",
    "Do not open a cover to hear better. The maker's instruction, the local code and licensed practice come first.",
  ],
};
