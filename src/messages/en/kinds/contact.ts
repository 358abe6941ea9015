export const contact = {
  title: "Contact resistance, breakers and busbar joints",
  purpose:
    "Four-wire DC resistance of each closed breaker pole and of each busbar joint, brought to 20 °C, judged against the maker's value; poles or joints that stand out from their neighbours ask for investigation.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system; racking and closing a breaker can move and crush.",
    "The test current flows through every closed path: keep current transformers' secondaries closed and protection blocked where the maker says so.",
    "Do not open the current circuit under test: an inductive circuit arcs.",
    "The maker's instruction and the local code come first.",
  ],
};
