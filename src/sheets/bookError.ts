/** What is wrong with a workbook and what would be right, for the person who chose it. */
export class BookError extends Error {
  override name = "BookError";
}
