import { asQuantity } from "../lineup/quantityName";
import type { OwnIssue } from "../quantities/plainIssue";
import { FURTHER_KINDS, ITEM_KINDS, KINDS, RECORD_KINDS } from "./kinds";
import { OWN_QUANTITIES } from "./ownQuantities";

/** What a lineup says that does not fit the record kinds: kinds and quantities that there are not, check items that a kind does not take. */
export function checkAgainstKinds(json: unknown): OwnIssue[] {
  const list = (part: string) => itemsOf(fieldOf(json, part));
  return [
    ...list("criteria").flatMap((one, at) =>
      unknown(fieldOf(one, "quantity"), isQuantity, OWN_QUANTITIES, ["criteria", at, "quantity"]),
    ),
    ...list("leaveOut").flatMap((one, at) =>
      unknown(fieldOf(one, "kind"), isKind, RECORD_KINDS, ["leaveOut", at, "kind"]),
    ),
    ...list("furtherRecords").flatMap((one, at) =>
      unknown(fieldOf(one, "kind"), isFurther, FURTHER_KINDS, ["furtherRecords", at, "kind"]),
    ),
    ...list("inspectionPoints").flatMap((one, at) =>
      itemsOf(fieldOf(one, "guards")).flatMap((guard, place) =>
        unknown(guard, isKind, RECORD_KINDS, ["inspectionPoints", at, "guards", place]),
      ),
    ),
    ...list("checkItems").flatMap((one, at) => itemIssues(one, ["checkItems", at])),
  ];
}

/** What is wrong with a check item of the project's: its kind takes none, or it has bounds where it is not measured. */
function itemIssues(item: unknown, path: PropertyKey[]): OwnIssue[] {
  const name = fieldOf(item, "kind");
  const kind = KINDS.find(({ id }) => id === name);
  if (kind?.ownItems === undefined)
    return unknown(name, () => false, ITEM_KINDS, [...path, "kind"]);
  const isBounded = ["least", "most"].some((end) => fieldOf(item, end) !== undefined);
  return isBounded === (kind.ownItems === "measured")
    ? []
    : [
        {
          path,
          message: ({ lineup }) =>
            isBounded ? lineup.notMeasured(kind.id) : lineup.measured(kind.id),
        },
      ];
}

const isFurther = (name: string) => FURTHER_KINDS.includes(name);
const isKind = (name: string) => RECORD_KINDS.includes(name);

/** Whether it is a quantity of a record kind, in whatever unit. */
const isQuantity = (name: string) =>
  OWN_QUANTITIES.some((quantity) => asQuantity(1, name, quantity) !== undefined);

/** What is no text at all is the schema's matter. */
const unknown = (
  name: unknown,
  isKnown: (name: string) => boolean,
  all: readonly string[],
  path: PropertyKey[],
): OwnIssue[] =>
  typeof name !== "string" || name.trim() === "" || isKnown(name.trim())
    ? []
    : [{ path, message: ({ lineup }) => lineup.oneOf(all) }];

const itemsOf = (list: unknown): readonly unknown[] => (Array.isArray(list) ? list : []);

const fieldOf = (holder: unknown, key: string): unknown =>
  typeof holder === "object" && holder !== null
    ? (holder as Record<string, unknown>)[key]
    : undefined;
