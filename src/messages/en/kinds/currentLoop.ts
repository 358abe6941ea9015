export const currentLoop = {
  title: "Current transformer circuits as left",
  purpose:
    "Each secondary circuit as it is left for service: its resistance as a burden on the core's plate, earthed at one point, the core demagnetized, links and shorting as drawn.",
  cautions: [
    "Never open the secondary circuit of a current transformer while primary current flows: the voltage that appears can kill. This record is the last look before that current flows.",
    "Isolate, prove dead and earth under the site's permit system; short each core at its own terminals before a link is opened.",
    "Whoever opens a link writes it down and closes it himself. The drawing, the local code and licensed practice come first.",
  ],
};
