export const energization = {
  title: "First energization",
  purpose:
    "What was put back before voltage, who released what, and what was seen and read under voltage and load. It records what others decided: it never says that the lineup may be energized. That is decided by the one whom the site's permit system or switching order names.",
  cautions: [
    "Nothing on this sheet releases anything: switching is done on the switching order, by those who are licensed for it, and on nobody's word from this record.",
    "From the first voltage on every part is alive until it is isolated, proved dead and earthed again.",
    "Nobody stands before the gear at the first closing: operate from remote, with the arc flash boundary kept.",
    "The local code, the site's permit system, the maker's instruction and licensed practice come first.",
  ],
};
