import type { ExportMapping } from "./exportMapping";
import type { LastIntake } from "./lastIntake";
import type { LayoutMap } from "./layoutMap";
import type { PlacedReadings } from "./placedReadings";
import type { SurveyAnswersKept } from "./surveyAnswers";

/** What a workbook remembers of the readings that were brought into it. */
export interface Remembered {
  /** What a user has said about exports, by name. */
  readonly mappings: readonly ExportMapping[];
  readonly last?: LastIntake;
  /** The intake before the last, which is not lost with one that was cut short. */
  readonly before?: LastIntake;
  /** How blocks in somebody's own layout are read as records. */
  readonly maps: readonly LayoutMap[];
  /** What exports said, by which a reading that was changed since is known. */
  readonly placed?: PlacedReadings;
  /** SHA-256 of each export that was brought in, by its name. */
  readonly noted?: Readonly<Record<string, string>>;
  /** Words that titles use here for a field, beside those that are known: field -> words. */
  readonly words?: Readonly<Record<string, readonly string[]>>;
  /** What was answered for the check of a workbook without a lineup. */
  readonly survey?: SurveyAnswersKept;
}

export const NOTHING_REMEMBERED: Remembered = { mappings: [], maps: [] };

/** What a snapshot remembers, and nothing else of it. */
export const rememberedOf = ({
  mappings,
  last,
  before,
  maps,
  placed,
  noted,
  words,
  survey,
}: Partial<Remembered>): Remembered => ({
  ...NOTHING_REMEMBERED,
  ...(mappings && { mappings }),
  ...(last && { last }),
  ...(before && { before }),
  ...(maps && { maps }),
  ...(placed && { placed }),
  ...(noted && { noted }),
  ...(words && { words }),
  ...(survey && { survey }),
});

/** A snapshot that remembers this, in place of all that it remembered. */
export const withRemembered = <S extends Partial<Remembered>>(
  snapshot: S,
  { mappings, last, before, maps, placed, noted, words, survey }: Remembered,
): S => ({ ...snapshot, mappings, last, before, maps, placed, noted, words, survey });
