import type { Finding } from "../../check/finding";
import type { SurveyInstrument } from "../block";
import { dayOf } from "../dayOf";
import { plain } from "../words/sheetWords";
import {
  dayOfEntry,
  findingAt,
  groupBy,
  type SurveyContext,
  type SurveyRule,
  writtenDay,
} from "./rule";

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

const inBlocks = ({ survey, text }: SurveyContext): Finding[] =>
  survey.blocks.flatMap((block) => {
    const used = block.entries.flatMap((entry) => {
      const cell = entry.beside.instrument;
      const instrument = cell && entry.cell && named(survey.instruments, cell.text);
      const day = dayOfEntry(entry);
      return cell && instrument && day !== undefined && day > instrument.due
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

/** An instrument that was used after the end of its calibration. */
export const calibration: SurveyRule = {
  id: "survey-calibration",
  find: (context) => [...inBlocks(context), ...inForms(context)],
};
