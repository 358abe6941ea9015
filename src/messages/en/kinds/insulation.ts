export const insulation = {
  title: "Insulation resistance, main circuit",
  purpose:
    "One-minute insulation resistance of busbars, circuits and open breaker poles, brought to the base temperature and judged against the least acceptable value, before and after the withstand test.",
  cautions: [
    "Isolate, prove dead and earth before connecting; remove earths only for the test, under the site's permit system.",
    "The test voltage is on every part connected: barrier, warn, and keep others away.",
    "Disconnect or short what the test would damage: voltage transformers, surge arresters, sensors, control gear.",
    "Discharge and earth for at least four times the test's duration before touching: insulation holds its charge (common practice; the maker's or local rule comes first).",
  ],
};
