import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, Entry } from "../find/block";
import type { Cell } from "../read/cells";
import { dayOf } from "../understand/dayOf";
import { stageIn } from "../understand/stageIn";
import { isWord } from "../words/sheetWords";
import { findingAt, middleOf, type SurveyContext, type SurveyRule, writtenDay } from "./rule";

interface Dated {
  readonly entry: Entry;
  readonly cell: Cell;
  readonly day: number;
}

const datedOf = (block: Block): Dated[] =>
  groupBy(
    block.entries.flatMap((entry): Dated[] => {
      const { date } = entry.beside;
      const day = date && dayOf(date);
      return date && day !== undefined ? [{ entry, cell: date, day }] : [];
    }),
    ({ cell }) => cell.address,
  ).flatMap(([first]) => first ?? []);

/** The day of a cell; a day to come is told for itself, and puts no other out of order. */
const pastDay = (date: Cell | undefined, today: number): number | undefined => {
  const day = date && dayOf(date);
  return day !== undefined && day <= today ? day : undefined;
};

/** Days by which a date may differ from the middle of its table. */
const FAR = 250;

const inBlock = (block: Block, { today, text }: SurveyContext): Finding[] => {
  const dated = datedOf(block);
  const middle = middleOf(dated.map(({ day }) => day));
  const unread = block.entries.filter(
    ({ beside }) =>
      beside.date &&
      dayOf(beside.date) === undefined &&
      !isWord(beside.date.text, "notApplicable") &&
      !/^[-–—]+$/.test(beside.date.text),
  );
  const words = dated.length < 4 || unread.length > dated.length * 0.2 ? [] : unread;
  return [
    ...dated.flatMap(({ entry, cell, day }) => {
      if (day > today)
        return [
          findingAt(
            "survey-future",
            "stop",
            block,
            entry,
            cell.address,
            text.future(writtenDay(day)),
            { found: cell.text },
          ),
        ];
      return dated.length >= 4 && Math.abs(day - middle) > FAR
        ? [
            findingAt(
              "survey-far-date",
              "query",
              block,
              entry,
              cell.address,
              text.farDate(writtenDay(day), writtenDay(middle)),
              { found: cell.text },
            ),
          ]
        : [];
    }),
    ...words.map((entry) =>
      findingAt(
        "survey-no-date",
        "query",
        block,
        entry,
        entry.beside.date?.address ?? entry.address,
        text.notADate(entry.beside.date?.text ?? ""),
      ),
    ),
    ...banners(block, today, text),
  ];
};

/** Days that a heading between the lines tells. */
const banners = (block: Block, today: number, text: SurveyContext["text"]): Finding[] =>
  groupBy(
    block.entries.filter(
      // A day without an address is that of a label, which is told for itself.
      ({ facts, beside }) =>
        !beside.date &&
        facts.dayAddress !== undefined &&
        facts.day !== undefined &&
        facts.day > today,
    ),
    ({ facts }) => String(facts.dayAddress),
  ).flatMap(([first]) =>
    first
      ? [
          findingAt(
            "survey-future",
            "stop",
            block,
            first,
            first.facts.dayAddress ?? first.address,
            text.future(writtenDay(first.facts.day ?? 0)),
          ),
        ]
      : [],
  );

/** The tests after the withstand test are later than those before it. */
const stages = ({ survey, today, text }: SurveyContext): Finding[] => {
  const all = survey.blocks.flatMap((block) => block.entries.map((entry) => ({ block, entry })));
  const told = new Set<string>();
  return groupBy(
    all.filter(({ entry }) => entry.stage !== undefined && entry.beside.date),
    ({ entry }) => `${entry.kind} ${entry.panel}`,
  ).flatMap((group) => {
    const before = Math.max(
      ...group
        .filter(({ entry }) => entry.stage === "before")
        .map(({ entry }) => pastDay(entry.beside.date, today) ?? Number.NEGATIVE_INFINITY),
    );
    return group.flatMap(({ block, entry }) => {
      const { date } = entry.beside;
      const day = entry.stage === "after" && date ? dayOf(date) : undefined;
      if (day === undefined || !date || day >= before || told.has(block.sheet + date.address))
        return [];
      told.add(block.sheet + date.address);
      return [
        findingAt(
          "survey-stage-order",
          "query",
          block,
          entry,
          date.address,
          text.beforeStage(writtenDay(day), writtenDay(before)),
          { found: date.text },
        ),
      ];
    });
  });
};

/** Dates of forms. */
const labels = ({ survey, today, text }: SurveyContext): Finding[] =>
  survey.labels.flatMap(({ sheet, concept, value }): Finding[] => {
    const day = concept === "date" && value ? dayOf(value) : undefined;
    return day !== undefined &&
      day > today &&
      value &&
      survey.blocks.some((block) => block.sheet === sheet)
      ? [
          {
            rule: "survey-future",
            weight: "stop",
            sheet,
            address: value.address,
            message: text.future(writtenDay(day)),
            found: value.text,
          },
        ]
      : [];
  });

/** The withstand test of a panel comes after the insulation test before it, and before the one after it. */
const orderOfTests = ({ survey, today, text }: SurveyContext): Finding[] => {
  const dated = survey.blocks.flatMap((block) =>
    block.entries.flatMap((entry) => {
      const { date } = entry.beside;
      const day = pastDay(date, today);
      return date && day !== undefined ? [{ block, entry, date, day }] : [];
    }),
  );
  return groupBy(dated, ({ entry }) => entry.panel).flatMap((group) => {
    const ofStage = (stage: "before" | "after") =>
      group.filter(({ entry }) => entry.kind === "insulation" && entry.stage === stage);
    const first = ofStage("before");
    const before = Math.max(...first.map(({ day }) => day), Number.NEGATIVE_INFINITY);
    // One date for both sides of a line is that of either.
    const cellOf = ({ block, date }: (typeof group)[number]) => `${block.sheet}!${date.address}`;
    const shared = new Set(first.map(cellOf));
    // A test after that is dated before the one before is told for itself.
    const after = Math.min(
      ...ofStage("after").flatMap((one) =>
        one.day >= before && !shared.has(cellOf(one)) ? [one.day] : [],
      ),
      Number.POSITIVE_INFINITY,
    );
    const wrong = group.filter(
      ({ entry, day }) => entry.kind === "withstand" && (day < before || day > after),
    );
    return groupBy(wrong, ({ date }) => date.address).flatMap(([first]) =>
      first
        ? [
            findingAt(
              "survey-stage-order",
              "query",
              first.block,
              first.entry,
              first.date.address,
              text.outOfOrder(
                writtenDay(first.day),
                writtenDay(first.day < before ? before : after),
              ),
              { found: first.date.text },
            ),
          ]
        : [],
    );
  });
};

/** Where no stage is said: most panels were insulation-tested first, and one was not. */
const oddOrder = ({ survey, today, text }: SurveyContext): Finding[] => {
  const unstaged = survey.blocks.flatMap((block) =>
    block.entries.flatMap((entry) => {
      const day = entry.stage === undefined ? pastDay(entry.beside.date, today) : undefined;
      return day === undefined ? [] : [{ block, entry, day }];
    }),
  );
  const panels = groupBy(unstaged, ({ entry }) => entry.panel).flatMap((group) => {
    const tested = group.filter(({ entry }) => entry.kind === "insulation").map(({ day }) => day);
    const stressed = group.filter(({ entry }) => entry.kind === "withstand");
    return tested.length > 0 && stressed.length > 0
      ? [{ first: Math.min(...tested), stressed }]
      : [];
  });
  const odd = panels.filter(({ first, stressed }) => stressed.some(({ day }) => day < first));
  if (panels.length < 4 || odd.length > panels.length * 0.25) return [];
  return odd.flatMap(({ first, stressed }) =>
    groupBy(
      stressed.filter(({ day }) => day < first),
      ({ entry }) => entry.beside.date?.address ?? "",
    ).flatMap(([one]) =>
      one
        ? [
            findingAt(
              "survey-stage-order",
              "query",
              one.block,
              one.entry,
              one.entry.beside.date?.address ?? one.entry.address,
              text.outOfOrder(writtenDay(one.day), writtenDay(first)),
            ),
          ]
        : [],
    ),
  );
};

/** Forms with a date before and one after the withstand test. */
const stagesOfForms = ({ survey, text }: SurveyContext): Finding[] =>
  groupBy(
    survey.labels.filter(({ concept, value }) => concept === "date" && value !== undefined),
    ({ sheet }) => sheet,
  ).flatMap((labels): Finding[] => {
    const dated = labels.map((label) => ({
      stage: stageIn([label.text]),
      value: label.value,
      sheet: label.sheet,
    }));
    const [before, after] = (["before", "after"] as const).map((stage) =>
      dated.find((one) => one.stage === stage),
    );
    const [first, second] = [before, after].map((one) => one?.value && dayOf(one.value));
    return after?.value && first !== undefined && second !== undefined && second < first
      ? [
          {
            rule: "survey-stage-order",
            weight: "query",
            sheet: after.sheet,
            address: after.value.address,
            message: text.beforeStage(writtenDay(second), writtenDay(first)),
            found: after.value.text,
          },
        ]
      : [];
  });

/** Dates in the future, far from the others, no dates at all, or against the order of the tests. */
export const dates: SurveyRule = {
  id: "survey-dates",
  find: (context) => [
    ...context.survey.blocks.flatMap((block) => inBlock(block, context)),
    ...stages(context),
    ...stagesOfForms(context),
    ...orderOfTests(context),
    ...oddOrder(context),
    ...labels(context),
  ],
};
