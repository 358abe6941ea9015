import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, Entry } from "../find/block";
import { findingAt, type SurveyContext, type SurveyRule } from "./rule";

/** Letters that are taken for digits, and what parts the words of a name. */
const ALIKE: readonly (readonly [RegExp, string])[] = [
  [/(?<!\d)[\s._/–-]|[\s._/–-](?!\d)/g, ""],
  [/O/g, "0"],
  [/[IL|]/g, "1"],
  [/S/g, "5"],
  [/B/g, "8"],
  [/Z/g, "2"],
];

/** A name without what is easily mistaken in it. */
const bare = (name: string): string =>
  ALIKE.reduce((text, [form, one]) => text.replace(form, one), name.toUpperCase());

/** Whether two names differ by one character: one more, one less, another, or two that changed places. */
const isOneOff = (one: string, other: string): boolean => {
  if (Math.abs(one.length - other.length) > 1) return false;
  let start = 0;
  while (start < one.length && one[start] === other[start]) start += 1;
  const [left, right] = [one.slice(start), other.slice(start)];
  return (
    left.slice(1) === right.slice(1) ||
    left.slice(1) === right ||
    left === right.slice(1) ||
    (left[0] === right[1] && left[1] === right[0] && left.slice(2) === right.slice(2))
  );
};

interface Named {
  readonly block: Block;
  readonly name: string;
  readonly first: Entry;
}

const namesOf = (block: Block): Named[] =>
  groupBy(
    block.entries.filter(({ panel, cell }) => panel !== "" && cell !== undefined),
    ({ panel }) => panel,
  ).flatMap(([first]) => (first ? [{ block, name: first.panel, first }] : []));

/** Names that two tables have to share for the one to show what is meant in the other. */
const SHARED = 3;

/** The name that is meant by one which no other table has: the one that its own table lacks. Of two tables alone the later is told. */
const meant = ({ block, name }: Named, tables: readonly Named[][]): string | undefined => {
  const own = tables.findIndex((table) => table[0]?.block === block);
  const has = new Set(tables[own]?.map((one) => one.name));
  const others = tables.flatMap((table, index) =>
    index === own ? [] : [{ index, names: table.map((one) => one.name) }],
  );
  if (others.some(({ names }) => names.includes(name))) return undefined;
  const lacking = others
    .filter(({ names }) => names.filter((one) => has.has(one)).length >= SHARED)
    .flatMap(({ index, names }) => {
      const lacked = names.filter((one) => !has.has(one));
      return lacked.length === 1 ? [{ index, name: lacked[0] ?? "" }] : [];
    });
  const [first] = lacking;
  const isAgreed =
    first !== undefined &&
    lacking.every((other) => other.name === first.name) &&
    (lacking.length > 1 || first.index < own);
  return isAgreed && isOneOff(name, first.name) ? first.name : undefined;
};

/** A name that is written twice in one table, once with a letter for a digit. */
const mistaken = (named: Named, all: readonly Named[]): string | undefined => {
  const lines = (name: string) => named.block.entries.filter(({ panel }) => panel === name).length;
  return all.find(
    ({ block, name }) =>
      block === named.block &&
      name !== named.name &&
      bare(name) === bare(named.name) &&
      lines(name) > lines(named.name),
  )?.name;
};

/** A name in one line or two whose places are just those that another panel lacks: "P14" once, and P4 a line short. */
const strayed = ({ block, name }: Named): string | undefined => {
  const places = groupBy(
    block.entries.filter(({ panel }) => panel !== ""),
    ({ panel }) => panel,
  ).map((group) => ({
    name: group[0]?.panel ?? "",
    places: new Set(group.map(({ kind, position }) => `${kind} ${position}`)),
  }));
  const own = places.find((one) => one.name === name);
  const all = new Set(places.flatMap((one) => [...one.places]));
  if (!own || places.length < SHARED || own.places.size > all.size / 3) return undefined;
  return places.find(
    (one) =>
      one !== own &&
      isOneOff(name, one.name) &&
      one.places.size + own.places.size === all.size &&
      [...own.places].every((place) => !one.places.has(place)),
  )?.name;
};

const find = ({ survey, text }: SurveyContext): Finding[] => {
  const tables = survey.blocks.map(namesOf);
  return tables.flat().flatMap((named) => {
    const other = mistaken(named, tables.flat()) ?? strayed(named) ?? meant(named, tables);
    if (other === undefined) return [];
    const { block, first } = named;
    const address = first.beside.panel?.address ?? first.address;
    return [
      findingAt("survey-name", "query", block, first, address, text.otherName(first.panel, other), {
        found: first.panel,
        expected: other,
      }),
    ];
  });
};

/** A panel that is called otherwise than everywhere else in the workbook. */
export const names: SurveyRule = { id: "survey-name", find };
