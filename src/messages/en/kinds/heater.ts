export const heater = {
  title: "Space heaters",
  purpose:
    "Current of each space heater at the supply as measured against its plate, and the thermostat or hygrostat that switches it.",
  cautions: [
    "Heaters are often fed from elsewhere and alive when the panel is dead: prove dead before touching, and mind hot surfaces.",
    "Clamp the conductor that belongs to the heater, inside the compartment, only as the permit allows. Local code and licensed practice come first.",
  ],
};
