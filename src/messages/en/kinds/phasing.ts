export const phasing = {
  title: "Phasing",
  purpose:
    "Both sides of each open coupler and incomer compared phase by phase at the secondaries of voltage transformers: next to nothing between like phases, the line voltage between unlike ones.",
  cautions: [
    "Both sides are alive: only under the site's permit system or switching order, by people licensed for it, at secondary terminals with their fuses in. Phasing at the primary is done with rated phasing sticks by those who are trained for it.",
    "The breaker between the sides stays open and its closing blocked until this has passed and the one who is responsible releases it.",
    "Nothing between like phases proves something only where the voltage between unlike ones shows that both sides are alive and from different sources.",
    "The local code, the switching order and licensed practice come first; this record does not say that sources may be paralleled.",
  ],
};
