export const timing = {
  title: "Operating times of breakers",
  purpose:
    "Closing and opening time of each pole at rated control voltage against the maker's window, and the time between the poles: three poles of one operation in a row.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system; the breaker is in its test position or out of its panel, with every other supply of it locked off.",
    "A charged spring moves without warning: keep hands and tools out, and discharge it (close, open) before work on the mechanism.",
    "Do not operate the breaker more often or faster than its maker allows; let coils cool.",
    "Block inter-tripping and whatever else its auxiliary contacts would start. The maker's instruction and licensed practice come first.",
  ],
};
