import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import type { ReactElement } from "react";
import { readReading } from "../../quantities/reading/readReading";
import { useText } from "../../report/text";
import { BASES, type Basis } from "../../standards/criterion";
import { RATED_RANGE, type SurveyAnswers } from "../../survey/checkSurvey";
import type { Guess, GuessedAnswers } from "../../survey/guessAnswers";
import { Choice } from "../Choice";
import { Entry } from "../Entry";
import { type Locale, useLocale } from "../locale";

/** The answers as they stand in the form. */
export interface Asked {
  readonly rated: string;
  readonly basis: Basis | "";
}

/** The form as it was answered before, else as the workbook's own cells fill it in. */
export const askedBy = (
  { ratedkV, basis }: GuessedAnswers,
  kept: SurveyAnswers | undefined,
  { decimal }: Locale,
): Asked => ({
  rated: String(kept?.ratedkV ?? ratedkV?.value ?? "").replace(".", decimal),
  basis: kept?.basis ?? basis?.value ?? "",
});

/** The answers of the form; undefined where one of them cannot be taken. */
export function answersOf({ rated, basis }: Asked, { decimal }: Locale): SurveyAnswers | undefined {
  const given = basis === "" ? {} : { basis };
  if (rated.trim() === "") return given;
  const read = readReading(rated.trim(), { unit: "kV", decimal });
  const [least, most] = RATED_RANGE;
  const isRating =
    read.ok &&
    read.value.bound === "exact" &&
    read.value.value >= least &&
    read.value.value <= most;
  return isRating ? { ...given, ratedkV: read.value.value } : undefined;
}

/** Asks what no cell says for certain and a verdict needs, each with its guess and where that comes from. */
export function Questions({
  asked,
  guesses,
  onAnswer,
}: {
  asked: Asked;
  guesses: GuessedAnswers;
  onAnswer: (asked: Asked) => void;
}): ReactElement {
  const text = useText().asItStands;
  const locale = useLocale();
  const isWrong = answersOf(asked, locale) === undefined;
  const evidence = (guess: Guess<unknown> | undefined) =>
    guess ? text.guessed(guess.text, guess.sheet, guess.address) : text.noGuess;
  const [least, most] = RATED_RANGE;
  return (
    <Stack component="section" spacing={1} aria-labelledby="survey-questions">
      <Typography id="survey-questions" variant="h3">
        {text.questions}
      </Typography>
      <Entry
        label={text.rated}
        value={asked.rated}
        wrong={isWrong}
        hint={
          isWrong
            ? text.wrongRated(locale.number(least), locale.number(most))
            : evidence(guesses.ratedkV)
        }
        onEnter={(rated) => onAnswer({ ...asked, rated })}
      />
      <Choice
        label={text.basis}
        value={asked.basis}
        choices={[
          { value: "", label: text.unanswered },
          ...BASES.map((value) => ({ value, label: value })),
        ]}
        onChoose={(basis) => onAnswer({ ...asked, basis: basis as Asked["basis"] })}
      />
      <Typography variant="body2" color="text.secondary" sx={{ overflowWrap: "anywhere" }}>
        {guesses.basis?.by === "rated" && guesses.ratedkV
          ? text.byRated(locale.number(guesses.ratedkV.value))
          : evidence(guesses.basis)}
      </Typography>
      {(asked.rated.trim() === "" || asked.basis === "") && (
        <Typography variant="body2">{text.onlyStated}</Typography>
      )}
    </Stack>
  );
}
