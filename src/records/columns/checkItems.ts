import { type Lineup, type Panel, sameName } from "../../lineup/lineup";
import type { CheckItem } from "../../lineup/settings";
import type { CellValue, Column, Row, ShownBy } from "../kind";
import { verdictBy } from "../verdict";
import { answered, closing, NOT_APPLICABLE, NOT_OK, OK, signed } from "./common";

/** An item that is checked by habit, and the panels that have it; all where nothing is said. */
export interface UsualItem {
  readonly item: string;
  readonly of?: (panel: Panel) => boolean;
  /** True for what practice never lets be "Not applicable": every panel is to be clean and dry. */
  readonly always?: true;
}

/** What the project asks for of one record kind, beside what is usual. */
export const ownItems = ({ checkItems }: Lineup, kind: CheckItem["kind"]): CheckItem[] =>
  checkItems.filter((one) => one.kind === kind);

/** Whether an item of the project's own is for this panel. */
export const isFor = (
  { applies, types }: CheckItem,
  { designation, section, type }: Panel,
): boolean =>
  applies || types
    ? (applies?.some((name) => sameName(name, designation) || sameName(name, section)) ?? false) ||
      (types?.includes(type) ?? false)
    : true;

/** Where an item comes from, beside it. */
const PRACTICE = "common practice";

/** Rows of a panel: the usual items, then the project's own, which stand in for a usual one of that name. */
export const itemRows = (panel: Panel, usual: readonly UsualItem[], own: readonly CheckItem[]) => {
  const ours = own.filter((one) => isFor(one, panel));
  return [
    ...usual
      .filter(({ of }) => of?.(panel) ?? true)
      .filter(({ item }) => !ours.some((one) => sameName(one.item, item)))
      .map(
        ({ item, always }): Row => ({
          object: panel.designation,
          part: item,
          document: PRACTICE,
          always: always ? ALWAYS : null,
        }),
      ),
    ...ours.map(({ item, document, applies, types }): Row => {
      const stoodFor = usual.find((one) => sameName(one.item, item));
      return {
        object: panel.designation,
        part: item,
        document,
        // What the project asks of this panel by its name or type does apply to it.
        always: stoodFor?.always || applies || types ? ALWAYS : null,
      };
    }),
  ];
};

/** What stands beside an item that applies to every panel. */
const ALWAYS = "always";

/** By the beginnings of items what shows that their thing is there. */
export type Shown = readonly (readonly [item: RegExp, by: readonly (ShownBy | "lineup")[]])[];

export const shownIn = (
  shown: Shown,
  item: CellValue | undefined,
): readonly (ShownBy | "lineup")[] =>
  shown.flatMap(([of, by]) => (of.test(String(item)) ? by : []));

/** Items of a kind as what shows a thing. */
export const withItem = (kind: string, item: RegExp): readonly ShownBy[] => [
  { kind, of: ({ part }) => item.test(String(part)) },
];

/** Columns of a list of items, each answered by a word. */
export const itemColumns = (object: string, item: string, help: string): Column[] => {
  const columns: Column[] = [
    { id: "object", header: object, role: "key", width: 15 },
    { id: "part", header: item, role: "key", width: 46 },
    { id: "document", header: "Asked for by", role: "given", width: 30 },
    answered("state", "State", [OK, NOT_OK, NOT_APPLICABLE], {
      width: 14,
      need: "reading",
      exempt: NOT_APPLICABLE,
      always: "always",
      help: `${help} Not applicable: say why in the remarks.`,
    }),
    ...signed(),
    { id: "always", header: "Applies", role: "given", width: 8 },
  ];
  return [...columns, verdictBy(columns, [], []), ...closing()];
};
