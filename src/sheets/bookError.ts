import type { Said } from "../messages/reasons";
import { type Told, toldIn } from "../messages/told";

/** What is wrong with a workbook and what would be right, for the person who chose it. */
export class BookError extends Error {
  override name = "BookError";

  /** @param say what is wrong, put into words where it is shown; a log has it in English */
  constructor(
    readonly say: Said<Told>,
    options?: ErrorOptions,
  ) {
    super(say(toldIn("en")), options);
  }
}
