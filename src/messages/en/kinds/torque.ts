export const torque = {
  title: "Torque of bolted joints",
  purpose:
    "Each group of joints tightened to the maker's torque with a calibrated wrench, marked and re-checked. Where neither maker nor project gives one, the joint is not accepted by a computed one.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system before a compartment is opened.",
    "The maker's torque, washers, lubrication and sequence come first: a computed torque knows nothing of soft conductors, plating or cast inserts.",
    "Do not tighten again a joint that the maker says to leave; renew what the maker says not to use twice.",
    "Count tools, bolts and washers out again before closing.",
  ],
};
