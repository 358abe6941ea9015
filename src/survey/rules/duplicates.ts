import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, Entry } from "../find/block";
import type { Cell } from "../read/cells";
import type { Concept } from "../words/words";
import { resultOf } from "./judge";
import { findingAt, findingOn, type SurveyContext, type SurveyRule } from "./rule";

interface Set_ {
  readonly block: Block;
  readonly entries: readonly Entry[];
}

/** The readings of one panel in one test. */
const setsOf = (block: Block): Set_[] =>
  groupBy(
    block.entries
      .filter(({ column }) => column.concept !== "voltage")
      .filter(({ kind }) => kind !== "withstand" && kind !== "inspection" && kind !== "function"),
    ({ kind, panel, stage, operation }) => `${kind} ${panel} ${stage} ${operation}`,
  ).map((entries) => ({ block, entries }));

/** Readings that say something: three or more, not all alike, with at least two figures. */
const signature = ({ entries }: Set_): string | undefined => {
  const texts = entries.flatMap(({ cell }) =>
    cell?.number === undefined ? [] : [String(cell.number)],
  );
  if (texts.length < 2 || texts.length < entries.length || new Set(texts).size < 2)
    return undefined;
  const figures = texts.map((text) => text.replace(/\D|^0[.,]?0*|0+$/g, "").length);
  const telling = figures.filter((count) => count >= 2).length;
  const isRare = texts.length >= 3 || figures.every((count) => count >= 3);
  return isRare && telling >= 2 ? `${entries[0]?.kind} ${texts.join(" ")}` : undefined;
};

/** One set of readings that stands elsewhere too. */
interface Copy {
  readonly set: Set_;
  readonly first: Entry;
  readonly source: Entry;
  readonly from: Block;
}

const copiesIn = (sets: readonly Set_[]): Copy[] => {
  const seen = new Map<string, Set_>();
  return sets.flatMap((set): Copy[] => {
    const key = signature(set);
    const [first] = set.entries;
    if (key === undefined || !first) return [];
    const other = seen.get(key);
    const [source] = other?.entries ?? [];
    if (!other || !source) {
      seen.set(key, set);
      return [];
    }
    // The same record in another table, such as a summary, is no copy.
    const isSame =
      other.block !== set.block && source.panel === first.panel && source.stage === first.stage;
    return isSame ? [] : [{ set, first, source, from: other.block }];
  });
};

/** Copies of one table in another, and their share of its sets, from which on it repeats the other as a whole. */
const [REPEATED, SHARE] = [3, 0.5];

const copies = ({ survey, text }: SurveyContext): Finding[] => {
  const sets = survey.blocks.flatMap(setsOf);
  const groups = groupBy(
    copiesIn(sets),
    ({ set: { block }, from }) => `${block.sheet}!${block.range} ${from.sheet}!${from.range}`,
  );
  return groups.flatMap((group) => {
    const [one] = group;
    const all = sets.filter(({ block }) => block === one?.set.block).length;
    const isWhole =
      one !== undefined &&
      one.from !== one.set.block &&
      group.length >= REPEATED &&
      group.length >= all * SHARE;
    return isWhole
      ? [
          findingOn(
            "survey-copied",
            "query",
            one.set.block,
            text.repeatedTable(group.length, all, `${one.from.sheet} ${one.from.range}`),
          ),
        ]
      : group.map(({ set: { block }, first, source }) =>
          findingAt(
            "survey-copied",
            "query",
            block,
            first,
            first.address,
            text.duplicate(source.address, source.panel),
          ),
        );
  });
};

/** Words of a line, or over it, that make it a repeat on purpose. */
const RETEST =
  /re-?test|repeat|\bagain\b|\bsecond (?:test|try)|after (?:repair|service|servicing|cleaning|drying|adjust|rework)|wiederhol|nachpr[üu]f|nachmess|nach (?:der )?(?:reparatur|instandsetzung|reinigung|trocknung|wartung|nacharbeit)|repet|répét|repite|repit|contre-?essai|nouvel essai|reprise|apr[eè]s (?:la )?(?:r[eé]paration|remise|entretien|nettoyage|s[eé]chage)|re-?ensa[yi]o|nuevo ensayo|novo ensaio|despu[eé]s de(?: la)? (?:repara|limpi|mantenim|ajust|secad)|ap[oó]s (?:o |a )?(?:repar|limpeza|manuten|ajust|secagem)|إعادة/iu;

const isRetestIn = (cell: Cell | undefined): boolean =>
  typeof cell?.value === "string" && RETEST.test(cell.text.slice(0, 200));

/** Whether a line says that it is a repeat, or the last words between the lines above it do. */
const isRetest = (block: Block, line: number): boolean => {
  const cells = (row: number) => block.columns.map(({ at }) => block.at(row, at));
  const lines = new Set(block.lines);
  if (cells(line).some(isRetestIn)) return true;
  for (let row = line - 1; row >= block.span[0]; row--)
    if (!lines.has(row) && cells(row).some((cell) => cell !== undefined))
      return cells(row).some(isRetestIn);
  return false;
};

/** Columns that say how a test went, and not of what it was. */
const OF_THE_TEST: readonly Concept[] = [
  "result",
  "date",
  "time",
  "by",
  "instrument",
  "remarks",
  "serial",
  "discharge",
  "reading",
];

/** What a line says in a column; in one that is filled only here and there, the cell above counts for those below. */
const wordIn = (block: Block, at: number): ((line: number) => string) => {
  const cells = block.lines.map((line) => block.at(line, at));
  const isSparse = cells.filter((cell) => cell !== undefined).length < cells.length * 0.6;
  let last = "";
  const carried = new Map(
    cells.map((cell, index) => {
      last = cell?.text ?? last;
      return [block.lines[index], last];
    }),
  );
  return (line) => {
    if (isSparse) return carried.get(line) ?? "";
    const cell = block.at(line, at);
    return typeof cell?.value === "string" && cell.number === undefined ? cell.text : "";
  };
};

const hasFailed = (entry: Entry | undefined): boolean =>
  entry !== undefined && resultOf(entry) === "Fail";

/** The same panel and connection twice in one table. */
const repeats = (block: Block, { text }: SurveyContext): Finding[] => {
  const named = block.entries.filter(
    ({ panel, position, cell }) => panel !== "" && position !== "" && cell !== undefined,
  );
  const readers = block.columns
    .filter(({ concept }) => concept === undefined || !OF_THE_TEST.includes(concept))
    .map(({ at }) => wordIn(block, at));
  const words = (line: number) => readers.map((read) => read(line)).join("|");
  const groups = groupBy(named, ({ kind, panel, position, stage, operation, column, line }) =>
    [kind, panel, position, stage, operation, column.at, words(line)].join("|"),
  );
  const twice = groups.filter((group) => group.length > 1);
  if (twice.length === 0 || twice.length > groups.length * 0.2) return [];
  return twice.flatMap(([first, ...others]) =>
    others
      // What was tested again after it had failed is a repeat that needs no word.
      .filter(
        ({ line }, index) =>
          !isRetest(block, line) && !hasFailed(index === 0 ? first : others[index - 1]),
      )
      .map((entry) =>
        findingAt(
          "survey-repeated",
          "query",
          block,
          entry,
          entry.address,
          text.repeatedLine(first?.address ?? ""),
        ),
      ),
  );
};

/** Readings that were copied from another panel, and lines that stand twice. */
export const duplicates: SurveyRule = {
  id: "survey-copied",
  find: (context) => [
    ...copies(context),
    ...context.survey.blocks.flatMap((block) => repeats(block, context)),
  ],
};
