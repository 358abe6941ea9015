export const undervoltage = {
  title: "Undervoltage releases",
  purpose:
    "Each undervoltage release by itself: the voltage from which it holds, and the voltage at which it lets go and trips, against the maker's or the standard's.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system; the breaker is in its test position or out of its panel, with every other supply of it locked off.",
    "The breaker trips when the release lets go: keep hands and tools out of the mechanism, and warn before each trial.",
    "Raise the voltage no higher and leave it on no longer than the maker allows. The maker's instruction and licensed practice come first.",
  ],
};
