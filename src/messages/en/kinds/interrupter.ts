export const interrupter = {
  title: "Vacuum interrupter integrity",
  purpose:
    "Voltage across the open contacts of each pole at the maker's level, AC for one minute. Pass: the gap held this voltage on this day, so that there is vacuum enough. It does not tell how long the vacuum will last, nor how far the contacts are worn, and a leakage current is not compared.",
  cautions: [
    "Voltage across a vacuum gap makes X-rays, the more the higher the voltage and the smaller the gap: full gap, never above the maker's level, nobody nearer than the maker's distance.",
    "Never with a half-wave rectified set: its peaks are far above what it shows.",
    "The interrupter's shield keeps a charge after the test: discharge it and every terminal with an earthing stick before touching.",
    "Only by people licensed for high-voltage tests, under the site's permit system, with the area fenced, warned and watched; the breaker is out of its panel or isolated, proved dead, and its spring discharged once it is open.",
    "The maker's instruction and the local code come first.",
  ],
};
