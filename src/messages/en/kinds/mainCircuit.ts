export const mainCircuit = {
  title: "Resistance of main circuits and earthing switches",
  purpose:
    "Four-wire DC resistance of each pole from busbar through the racking contacts and the closed breaker to the cable terminals, and of each closed earthing switch, brought to 20 °C, against the maker's value and its like.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system. The measurement asks for earths to be taken off for a moment: only as the permit says, by the one whom it names, and put back at once.",
    "Racking, closing and an earthing switch's spring move and crush: warn and keep clear.",
    "The test current flows through every closed path: keep current transformers' secondaries closed and protection blocked where the maker says so; do not open the circuit under current.",
    "The maker's instruction and the local code come first.",
  ],
};
