export const documents = {
  title: "Drawings and specification",
  purpose:
    "Each document that the work is done from, at its latest approved revision. Add a row for any further one.",
  cautions: [
    "Work from a superseded drawing is done again: withdraw old copies, and have changes on site approved before they are built.",
  ],
};
