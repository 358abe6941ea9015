export const dimensions = {
  title: "Level, alignment and clearances",
  purpose:
    "Clearances around the lineup, and level and alignment of each panel, in mm, against the approved drawing or the maker's manual. No standard's figure stands in for theirs.",
  cautions: [
    "Measure from earthed enclosures only; a rule or tape is never brought near parts that can be alive.",
    "Escape routes and the space that pressure relief needs are the drawing's and the local code's to say.",
  ],
};
