export const settings = {
  title: "Relay settings against the order",
  purpose:
    "The settings order, parameter by parameter, against what the device holds as it is left, with the firmware and the file that was kept. Numbers are compared in the order's unit and tolerance, words letter by letter.",
  cautions: [
    "Block trips before settings are written: a device may trip while it takes them. List what was blocked, and put it back.",
    "Settings come from the approved protection study. A device is never made to agree with an order that looks wrong: ask the one who signed it.",
    "A setting that agrees is not a setting that was tested: see the protection records.",
  ],
};
