export const gas = {
  title: "SF6 pressure of breakers",
  purpose:
    "Gas pressure and temperature, brought to 20 °C at constant density, against the plate's filling, alarm and lockout pressures; the monitor's contacts at their points; tightness. Below filling, gas is added; below lockout, the breaker is not to be operated.",
  cautions: [
    "SF6 is heavier than air and displaces it: ventilate, and test the air of pits and cable cellars before entry.",
    "Gas that has seen an arc is poisonous: handle it, and what is left of it, as the maker and the local code say.",
    "SF6 is not to be let out: fill, take samples and recover with closed gear, by people certified for it where the law asks for that.",
    "Do not operate a breaker below its lockout pressure. The maker's instruction comes first.",
  ],
};
