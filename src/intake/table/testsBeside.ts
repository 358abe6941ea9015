import type { TextRow } from "../text/delimited";
import { kindsNamed } from "../understand/kindWords";
import { operationIn } from "../words/operationIn";
import { sensesOf } from "../words/senses";
import type { Block, Fact } from "./facts";

/** A table of which each line names its own test, and the lines of each test as a block of their own. */
export interface TestsBeside {
  /** The column that names the test. */
  readonly index: number;
  /** The table as a whole. */
  readonly table: Block;
  /** The block of each test that was met, by its name as it is written. */
  readonly blocks: Map<string, Block>;
}

/** Of the names under a title such as "Test", so many are those of tests. */
const MOST = 0.7;
/** A log of more different tests is read by its titles alone. */
const MOST_TESTS = 40;

/** The column that names the test of each line, where a table's first lines are of several. */
export const testColumn = (
  titles: readonly string[],
  sample: Block["sample"],
): number | undefined => {
  const index = titles.findIndex((title, at) => {
    const { senses } = sensesOf(title);
    if (!senses.has("test") || senses.has("item")) return false;
    const names = new Set(sample.flatMap((cells) => cells[at]?.trim() || []));
    const kinds = [...names].map((name) => [...kindsNamed(name).keys()].join());
    const known = kinds.filter((kind) => kind !== "");
    return new Set(known).size > 1 && known.length >= MOST * names.size;
  });
  return index < 0 ? undefined : index;
};

/** A table whose lines are of several tests, to be read by these. */
export const testsBeside = (table: Block): TestsBeside | undefined => {
  const index = testColumn(table.head.texts.at(-1) ?? [], table.sample);
  return index === undefined ? undefined : { index, table, blocks: new Map() };
};

/** What the name of a test says of its lines: the test, and the operation that it is of: `Tempo di apertura`. */
const testFacts = (line: number, name: string): readonly Fact[] => [
  { line, key: "Test", value: name },
  ...(operationIn(name) === undefined ? [] : [{ line, key: "Operation", value: name }]),
];

/** The block of the test that a line names, made where it is met first. */
export const blockOfTest = (
  { index, table, blocks }: TestsBeside,
  { line, cells }: TextRow,
  ahead: () => Block["sample"],
): Block => {
  const name = cells[index]?.trim() ?? "";
  const known = blocks.get(name);
  if (known) return known;
  if (blocks.size >= MOST_TESTS) return table;
  const isSame = (other: readonly string[]) => other[index]?.trim() === name;
  const block: Block = {
    ...table,
    facts: [...table.facts, ...testFacts(line, name)],
    headings: [...table.headings, name],
    sample: [cells, ...ahead().filter(isSame)],
  };
  blocks.set(name, block);
  return block;
};
