export const arcProtection = {
  title: "Arc protection",
  purpose:
    "Each light sensor lit by itself: seen by its unit, the breakers tripped that are drawn, the time from light to trip contact, and the fault shown when it is taken off.",
  cautions: [
    "With the main circuit isolated, proved dead and earthed, under the site's permit system; breakers are in their test position and move without warning.",
    "A trip may reach incomers and gear upstream: block what must not move, list it, and put it back.",
    "Strong flashes harm eyes: do not look into the light.",
    "Arc protection shortens an arc and does not make work beside live parts safe. The maker's instruction and licensed practice come first.",
  ],
};
