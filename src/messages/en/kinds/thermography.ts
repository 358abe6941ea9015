export const thermography = {
  title: "Thermographic survey under load",
  purpose:
    "The hottest spot of each place that carries current, under load, against a similar one and against the air. A cool spot at a small load proves nothing.",
  cautions: [
    "The gear is alive and loaded: look through fitted windows, or with covers off only as the site's permit system and the arc flash study allow, by people licensed to be there.",
    "A major discrepancy is reported at once to the one who is responsible; nobody opens or tightens anything under voltage.",
    "Bare metal reflects: what looks cool may be hot. The maker's instruction, the local code and licensed practice come first.",
  ],
};
