export const withstand = {
  title: "Withstand voltage, main circuit",
  purpose:
    "Power-frequency (or DC) withstand test on site of each phase against the other two and earth; no disruptive discharge may occur at the required voltage for the required time.",
  cautions: [
    "Only by people licensed for high-voltage tests, under the site's permit system, with the test area fenced, warned and watched.",
    "Isolate, prove dead, earth; disconnect cables, voltage transformers, surge arresters and whatever the test would damage.",
    "Insulation must have passed first, and every surface must be warmer than the dew point.",
    "After the test, earth and discharge before touching, for DC tests for as long as the maker and the local rule say.",
  ],
};
