import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { splitReading } from "../../quantities/reading/splitReading";

/** A question mark stands for a sign that an encoding did not have: `G?` for GΩ, `?C` for °C. */
const LOST = /^(?=.*\?)[\p{L}?%·/]{1,6}$/u;
const IN_TITLE = /^(.+?)\s*[([]\s*([^()[\]]+?)\s*[)\]]$/;

/**
 * The name of a title and the unit in its brackets, where signs of the unit were lost.
 *
 * @example lostInTitle("R 1 min (G?)") // { name: "R 1 min", unit: "G?" }
 */
export const lostInTitle = (title: string): { name: string; unit: string } | undefined => {
  const [, name = "", unit = ""] = IN_TITLE.exec(title.slice(0, 200).trim()) ?? [];
  return LOST.test(unit) ? { name, unit } : undefined;
};

/**
 * Why a reading's unit cannot be read, where signs of it were lost in its cell or in its title; the same
 * for every cell.
 *
 * @param right a unit that would be right
 * @example lostUnit("52.5 G?", "R", "MΩ")?.(toldIn("en")) // 'the unit "G?" has lost a sign, …'
 */
export const lostUnit = (text: string, title: string, right: string): Said<Told> | undefined => {
  const own = splitReading(text)?.unit ?? "";
  const reasonOf =
    (unit: string, where?: string): Said<Told> =>
    ({ intake }) =>
      intake.cells.lostUnit(unit, where, right);
  if (own !== "") return LOST.test(own) ? reasonOf(own) : undefined;
  const lost = lostInTitle(title);
  return lost && reasonOf(lost.unit, title);
};
