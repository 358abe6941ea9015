export const protection = {
  title: "Protection relays",
  purpose:
    "Each element by secondary injection: its pick-up, then its operating time at each multiple of pick-up against its curve or delay, with the contact that closes and what the relay shows.",
  cautions: [
    "Block trips, inter-tripping, busbar and breaker-failure protection before injecting, by the permit and the relay's own test switches; list what was blocked, and put it back.",
    "Short current transformers' secondaries on their side of the test links before a link is opened: never open a secondary under current. Pull the voltage transformer's fuses so that nothing is fed back.",
    "Many times the pick-up soon overheats a relay's inputs: keep within the maker's short-time rating and let them cool.",
    "Settings come from the approved protection study and are put back as found or as approved. Local code, the maker's instruction and licensed practice come first.",
  ],
};
