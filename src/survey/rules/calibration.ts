import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { SurveyInstrument } from "../find/block";
import { dayOf } from "../understand/dayOf";
import { plain } from "../words/sheetWords";
import { dayOfEntry, findingAt, type SurveyContext, type SurveyRule, writtenDay } from "./rule";

/** The instrument that a text names, by its number. */
const named = (
  instruments: readonly SurveyInstrument[],
  text: string,
): SurveyInstrument | undefined => {
  const words = plain(text);
  return (
    instruments.find(({ id }) => plain(id) === words) ??
    instruments.find(({ id }) => /\d/.test(id) && ` ${words} `.includes(` ${plain(id)} `))
  );
};

const inBlocks = ({ survey, today, text }: SurveyContext): Finding[] =>
  survey.blocks.flatMap((block) => {
    const used = block.entries.flatMap((entry) => {
      const cell = entry.beside.instrument;
      const instrument = cell && entry.cell && named(survey.instruments, cell.text);
      const day = dayOfEntry(entry);
      return cell && instrument && day !== undefined && day > instrument.due && day <= today
        ? [{ entry, cell, instrument, day }]
        : [];
    });
    // An instrument is told once for the lines that follow one another.
    return groupBy(used, ({ instrument, day }) => `${instrument.id} ${day}`).flatMap(([first]) =>
      first
        ? [
            findingAt(
              "survey-calibration",
              "stop",
              block,
              first.entry,
              first.cell.address,
              text.outOfCalibration(
                first.cell.text,
                writtenDay(first.instrument.due),
                writtenDay(first.day),
              ),
              { found: first.cell.text },
            ),
          ]
        : [],
    );
  });

/** Instruments that the line over a table names: "3) Operating times. Timer CH-7". */
const inHeadings = ({ survey, today, text }: SurveyContext): Finding[] =>
  survey.blocks.flatMap((block) => {
    const [first] = block.entries.filter(
      ({ beside, cell }) => cell !== undefined && beside.instrument === undefined,
    );
    // A day in the future is told for itself.
    const days = block.entries
      .flatMap((entry) => dayOfEntry(entry) ?? [])
      .filter((one) => one <= today);
    const day = days.length > 0 ? Math.max(...days) : undefined;
    if (!first || day === undefined) return [];
    return block.heading.flatMap((cell) =>
      namesIn(survey.instruments, cell.text)
        .filter(({ due }) => day > due)
        .map(({ id, due }) =>
          findingAt(
            "survey-calibration",
            "stop",
            block,
            first,
            cell.address,
            text.outOfCalibration(id, writtenDay(due), writtenDay(day)),
            { found: id },
          ),
        ),
    );
  });

/** The instruments whose numbers stand in a line of words. */
const namesIn = (
  instruments: readonly SurveyInstrument[],
  text: string,
): readonly SurveyInstrument[] => {
  const words = ` ${plain(text)} `;
  return instruments.filter(
    ({ id }) => /\d/.test(id) && /\p{L}/u.test(id) && words.includes(` ${plain(id)} `),
  );
};

const inForms = ({ survey, text }: SurveyContext): Finding[] =>
  survey.labels.flatMap(({ sheet, concept, value }): Finding[] => {
    const instrument =
      (concept === "instrument" || concept === "tester") && value
        ? named(survey.instruments, value.text)
        : undefined;
    const date = survey.labels.find(
      (label) => label.sheet === sheet && label.concept === "date",
    )?.value;
    const day =
      (date && dayOf(date)) ?? survey.blocks.find((block) => block.sheet === sheet)?.facts.day;
    return instrument && value && day !== undefined && day > instrument.due
      ? [
          {
            rule: "survey-calibration",
            weight: "stop",
            sheet,
            address: value.address,
            message: text.outOfCalibration(value.text, writtenDay(instrument.due), writtenDay(day)),
            found: value.text,
          },
        ]
      : [];
  });

const onceAnAddress = (findings: readonly Finding[]): Finding[] =>
  groupBy(findings, ({ sheet, address, found }) => `${sheet} ${address} ${found}`).flatMap(
    ([first]) => first ?? [],
  );

/** An instrument that was used after the end of its calibration. */
export const calibration: SurveyRule = {
  id: "survey-calibration",
  find: (context) =>
    onceAnAddress([...inBlocks(context), ...inForms(context), ...inHeadings(context)]),
};
