export const handling = {
  title: "Receipt, lifting and moving",
  purpose:
    "Mass of each panel against the capacity of the gear that lifted or moved it, the gear's own inspection, and the condition in which the panel arrived.",
  cautions: [
    "Lift only at the points and angles that the maker gives, by people trained and appointed for it; nobody stands under or beside a load that can tip.",
    "Panels are top-heavy: keep them upright, and do not take off braces before they stand on their foundation.",
    "Breakers travel and are lifted as the maker says, springs discharged. Local code and the site's lifting plan come first.",
  ],
};
