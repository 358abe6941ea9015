import { sameName } from "../../lineup/lineup";
import type { FindingsText, RuleId } from "../../messages/messages";
import { serialDay } from "../../quantities/dates";
import type { Row } from "../../records/kind";
import { type Context, dayOf } from "../context";
import type { Finding } from "../findings/finding";

/** Findings of safety on site, which a word accepts of nobody: a hold point, a permit, insulation before high voltage. */
const NEVER: ReadonlySet<string> = new Set<RuleId>([
  "hold-not-released",
  "permit-lacking",
  "withstand-before-insulation",
]);

/** Words that give no reason. */
const HOLLOW =
  /^(?:ok(?:ay)?|accepted|approved|agreed|fine|good|pass(?:ed)?|none|n\/?a|tbc|tbd|yes|see (?:above|below|remarks?)|as (?:agreed|discussed|is)|no (?:problem|issue|comment)s?|akzeptiert|accepte|aceptado|aceito|مقبول)$/;

type Unsound = FindingsText["rules"]["concession-unsound"]["reasons"];

/**
 * Why a concession of a finding accepts nothing, and its column; undefined where it is sound: a reason in
 * words, by somebody else than who tested, on the day of the record or later, of something that may be
 * conceded.
 */
export function unsoundConcession(
  concession: Row,
  finding: Finding,
  { tables, text }: Pick<Context, "tables" | "text">,
): { readonly id: string; readonly why: string } | undefined {
  const says: Unsound = text.rules["concession-unsound"].reasons;
  if (NEVER.has(finding.rule) || isDischarge(finding, tables))
    return { id: "rule", why: says.never };
  if (!isReason(String(concession.reason))) return { id: "reason", why: says.noWords };
  const record = recordOf(finding, tables);
  if (!record) return undefined;
  const by = String(record.by ?? "").trim();
  if (by !== "" && sameName(plain(by), plain(String(concession.name))))
    return { id: "name", why: says.tester(by) };
  const [day, granted] = [dayOf(record.date), dayOf(concession.date)];
  return day !== undefined && granted !== undefined && Math.floor(granted) < Math.floor(day)
    ? { id: "date", why: says.early(serialDay(day)) }
    : undefined;
}

/** At least two words, of which one is more than a nod. */
const isReason = (reason: string): boolean => {
  const words = reason
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .trim()
    .replace(/[.!]+$/, "");
  return !HOLLOW.test(words) && (words.match(/[\p{L}\p{N}]{2,}/gu) ?? []).length >= 2;
};

/** A name without what stands in brackets behind it. */
const plain = (name: string): string => name.replace(/\([^)]*\)/g, "").trim() || name;

const tableOf = ({ sheet, record }: Finding, tables: Context["tables"]) =>
  tables.find(({ kind, table }) => table.sheet === sheet && kind.id === record);

const recordOf = (finding: Finding, tables: Context["tables"]): Row | undefined => {
  const table = tableOf(finding, tables);
  const at = table?.keys.indexOf(finding.row ?? "") ?? -1;
  return table?.rows[at];
};

/** Whether a finding is of a test that broke down, as its row says or a remark beside it. */
const isDischarge = (finding: Finding, tables: Context["tables"]): boolean => {
  const column = tableOf(finding, tables)?.kind.columns.find(
    ({ header }) => header === finding.column,
  );
  return (
    (column?.id === "discharge" && finding.rule === "out-of-limits") ||
    (finding.rule === "remark-contradicts" && finding.weight === "stop")
  );
};
