export const currentTransformer = {
  title: "Current transformers",
  purpose:
    "Each core of each phase: ratio and polarity by primary injection, resistance of the secondary winding brought to 75 °C, insulation of the secondary, and the burden that is connected.",
  cautions: [
    "Never open the secondary circuit of a current transformer while primary current flows: the voltage that appears can kill. Short it first, at its own terminals, and short every core not under test.",
    "Isolate, prove dead and earth under the site's permit system. Primary injection sends large currents through joints, earths and neighbouring cores: barrier the whole path, and keep away from conductors that move.",
    "Block trips, busbar protection and inter-tripping that the injected current would start, by the permit and the relay's own test switches; put them back and record it.",
    "Lift the secondary earth for the insulation test only, and put it back at one point. Demagnetize after direct current. Local code, the maker's instruction and licensed practice come first.",
  ],
};
