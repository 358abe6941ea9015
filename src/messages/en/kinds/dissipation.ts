export const dissipation = {
  title: "Dissipation factor of cables",
  purpose:
    "Dissipation factor of each cable phase at 0.5, 1 and 1.5 times U0 at very low frequency, assessed three ways: mean at U0, tip-up, and stability. No action, further study (inconclusive here) or action; the screen from end to end.",
  cautions: [
    "Only by people licensed for high-voltage tests, under the site's permit system; both ends are fenced, warned and watched, with the far end in touch by voice.",
    "Isolate, prove dead, earth; take the cable off gear, voltage transformers and arresters. Raise the voltage step by step and stop where the factor runs away.",
    "A cable keeps its charge: discharge and earth before touching, for as long as the maker and the local rule say.",
    "Cables of mixed insulation, and joints with stress grading that is not linear, read higher: compare with the record at laying. The cable maker's word comes first.",
  ],
};
