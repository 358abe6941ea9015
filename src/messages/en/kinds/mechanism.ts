export const mechanism = {
  title: "Coils, spring and counter of breakers",
  purpose:
    "Closing coil and opening releases at the voltages that they have to work at, the time that the motor takes to charge the spring, and the operation counter against the operations made.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system; the breaker is in its test position or out of its panel, with every other supply of it locked off.",
    "A charged spring moves without warning: keep hands and tools out, and discharge it (close, open) before work on the mechanism.",
    "Raise the voltage no higher and leave it on no longer than the maker allows; let coils cool.",
    "Block inter-tripping and whatever else its auxiliary contacts would start. The maker's instruction and licensed practice come first.",
  ],
};
