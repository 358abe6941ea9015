import { lossesOf, lossWords } from "../xlsx/losses";
import { named, UsageError } from "./files";

/**
 * Before a workbook is saved: refuses where that would lose something of it, unless the user accepts.
 *
 * @throws {UsageError} that says what would be lost, by sheet
 */
export async function refuseLoss(book: string, bytes: Uint8Array, accepted = false): Promise<void> {
  if (accepted) return;
  const losses = await named(book, () => lossesOf(bytes));
  if (losses.length > 0) throw new UsageError(({ files }) => files.losses(book, lossWords(losses)));
}
