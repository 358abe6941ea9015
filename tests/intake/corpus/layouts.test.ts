import { beforeAll, expect, test } from "vitest";
import { guessMaps } from "../../../src/intake/ownLayout/guessMaps";
import { mappedTables } from "../../../src/intake/ownLayout/mappedTables";
import { keyIds, rowKey } from "../../../src/records/kind";
import { readBook } from "../../../src/xlsx/file";
import { sampleLineup } from "../../support/lineups";
import { madeBook } from "./layouts";

const lineup = sampleLineup();
const corpus = Array.from({ length: 40 }, (_, start) => madeBook(lineup, start));

/** What is read of a workbook by the maps that are guessed for it, nothing corrected. */
async function read(made: (typeof corpus)[number]) {
  const snapshot = { ...(await readBook(await made.file)), lineup };
  const maps = guessMaps(snapshot, lineup).map(({ map }) => map);
  const { tables, problems } = mappedTables(snapshot, lineup, maps);
  const found = tables.flatMap(({ kind, rows }) =>
    rows.flatMap((row) =>
      row.reading === undefined || row.reading === null
        ? []
        : [[`${kind.id} ${rowKey(row, keyIds(kind))}`, row.reading] as const],
    ),
  );
  const wanted = new Map(made.truths.map(({ kind, key, value }) => [`${kind} ${key}`, value]));
  const near = (one: unknown, other: unknown) =>
    Math.abs(Number(one) - Number(other)) <= 1e-9 * Math.abs(Number(other));
  const right = found.filter(([key, value]) => near(value, wanted.get(key)));
  return {
    made,
    wanted: wanted.size,
    right: new Set(right.map(([key]) => key)).size,
    wrong: found.filter(([key, value]) => !near(value, wanted.get(key))),
    problem: problems[0]?.message,
  };
}

let scores: Awaited<ReturnType<typeof read>>[];
beforeAll(async () => {
  scores = await Promise.all(corpus.map(read));
});

test("every sort of layout is among them", () => {
  const ways = new Set(corpus.flatMap(({ ways }) => ways));
  for (const way of [
    ...[
      "en",
      "de",
      "fr",
      "es",
      "long",
      "wide",
      "one",
      "below",
      "beside",
      "joined",
      "written once",
      "sums",
      "notes",
    ],
    ...["units in title", "units in row", "units in cell", "units in column"],
    ...["1 lines of titles", "2 lines of titles"],
  ])
    expect(ways).toContain(way);
});

test("no reading is taken for another record's: precision 100 %", () => {
  expect(scores.flatMap(({ made, wrong }) => wrong.map((one) => [made.name, ...one]))).toEqual([]);
});

test("at least 98 % of the readings are found without asking", () => {
  const right = scores.reduce((sum, one) => sum + one.right, 0);
  const wanted = scores.reduce((sum, one) => sum + one.wanted, 0);
  process.stdout.write(
    `${scores.length} workbooks in layouts of somebody's own: ${right} of ${wanted} readings found (${((100 * right) / wanted).toFixed(2)} %)\n`,
  );
  const missed = scores.filter(({ right, wanted }) => right < wanted);
  expect(
    right / wanted,
    JSON.stringify(
      missed.map(({ made, right, wanted, problem }) => [
        made.name,
        made.ways.join(", "),
        right,
        wanted,
        problem,
      ]),
      null,
      1,
    ),
  ).toBeGreaterThanOrEqual(0.98);
});
