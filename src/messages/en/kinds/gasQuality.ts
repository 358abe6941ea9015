export const gasQuality = {
  title: "SF6 quality",
  purpose:
    "Moisture and purity of the gas in each breaker against the maker's or project's values. A compartment that is sealed for life is not opened for it: its pressure or indicator stands among the gas records, as does a leak rate.",
  cautions: [
    "SF6 is heavier than air and displaces it: ventilate, and test the air of pits and cable cellars before entry.",
    "Gas that has seen an arc is poisonous: handle it, and what is left of it, as the maker and the local code say.",
    "SF6 is not to be let out: sample with closed gear that returns the gas, by people certified for it where the law asks for that, and read the pressure again afterwards.",
    "Wait after filling as long as the maker says: moisture comes out of the insulation. The maker's instruction comes first.",
  ],
};
