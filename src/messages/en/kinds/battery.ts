export const battery = {
  title: "DC supply",
  purpose:
    "Each battery discharged at constant current: its capacity against the maker's or project's, its voltage at the end, earth fault and charger alarms. Trip circuits at reduced voltage are among the coils.",
  cautions: [
    "A battery cannot be switched off: insulated tools, no jewellery, covers on, one pole at a time. It gives hydrogen: ventilate, no flames or sparks.",
    "Acid and lye burn: goggles, gloves, apron, and water to wash with at hand.",
    "While it is discharged the protection has no supply: only with another in its place, under the site's permit system.",
    "An earth put on to try the alarm makes a second one a short circuit or a trip: through a resistor, one pole at a time. The maker's instruction comes first.",
  ],
};
