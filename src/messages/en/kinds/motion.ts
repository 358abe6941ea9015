export const motion = {
  title: "Travel, speed and currents of breakers",
  purpose:
    "What is read off a breaker's travel curve, its contacts and the currents of its coils and motor, against the maker's window; no standard gives one.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system; the breaker is in its test position or out of its panel, with every other supply of it locked off.",
    "A charged spring moves without warning: fit and take off the travel sensor with the spring discharged and blocked as the maker says, and keep hands and tools out while it operates.",
    "Do not operate the breaker more often or faster than its maker allows; let coils and motor cool.",
    "Block inter-tripping and whatever else its auxiliary contacts would start. The maker's instruction and licensed practice come first.",
  ],
};
