export const inspection = {
  title: "Inspection points",
  purpose:
    "The points at which the client or his engineer looks on: when the inspection was asked for, when it was held, and whether and by whom it was released.",
  cautions: [
    "A release lets the next activity go ahead under its own permits and cautions; it says nothing about energizing.",
  ],
};
