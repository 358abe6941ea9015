/** Sheet row of the table header, from 0: title, purpose and cautions stand above it. */
export const HEADER_ROW = 3;
/** Columns that the title's lines are merged over. */
export const TITLE_WIDTH = 12;
