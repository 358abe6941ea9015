export const installation = {
  title: "Installation of panels",
  purpose:
    "Each panel looked at, item by item, against drawing and erection manual. What a panel does not have is not applicable, and the remarks say why.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system before a compartment is opened; neighbouring panels may be alive.",
    "Springs are discharged and supplies of mechanisms locked off before hands go in; shutters and trucks crush.",
    "The maker's erection manual and the approved drawing come before this list.",
  ],
};
