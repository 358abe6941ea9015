export const metering = {
  title: "Meters and transducers",
  purpose:
    "Each meter at each of its points: what is applied by a reference instrument, what the meter shows, and the error in percent of full scale or of the reading, as its class is.",
  cautions: [
    "Inject on the meter's side of test links only: never open a current transformer's secondary circuit under current, and never feed a voltage transformer from its secondary.",
    "Isolate and prove dead the circuits that are parted, under the site's permit system; close the links again and record it.",
    "Block trips and controls that the meter's outputs would start. Local code, the maker's instruction and licensed practice come first.",
  ],
};
