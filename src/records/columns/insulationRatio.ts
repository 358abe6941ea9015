import { type absorptionRatio, ratioOrReason } from "../../engineering/ratios";
import { storedWords } from "../../messages/told";
import { figure } from "../figure";
import { type CellValue, isBlank, type Row } from "../kind";
import { quantity } from "../quantity";

/** The value of a column that holds the ratio of two resistances: a number, or why there is none. */
export const ratio =
  (find: typeof absorptionRatio, from: string, to: string) =>
  (row: Row): CellValue => {
    if (isBlank(row[from]) || isBlank(row[to])) return null;
    const [first, last] = [quantity(row[from], "MΩ"), quantity(row[to], "MΩ")];
    const found = first && last && ratioOrReason(find, storedWords())(first, last);
    return found?.ok ? found.value : "n/a";
  };

/** The same as written on paper. */
export const ratioWorking =
  (id: string, from: string, to: string) =>
  (row: Row): string =>
    typeof row[id] === "number"
      ? `${figure(quantity(row[to], "MΩ")?.value)} MΩ ÷ ${figure(quantity(row[from], "MΩ")?.value)} MΩ = ${figure(row[id])}`
      : "";
