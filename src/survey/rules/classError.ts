import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import { ctLimit } from "../../standards/ctLimit";
import { vtLimit } from "../../standards/vtLimit";
import type { Block, Entry } from "../find/block";
import { compare } from "./judge";
import { findingAt, type SurveyContext, type SurveyRule, written } from "./rule";

const LIMITS = { currentTransformer: ctLimit, voltageTransformer: vtLimit } as const;

const isTransformer = (kind: string): kind is keyof typeof LIMITS => kind in LIMITS;

/** The class as the standards write it: "0.5", "5P20", "C200"; "0,5" and "Cl. 0.5" are the same. */
const CLASS = /(?:\d+(?:[.,]\d+)?(?:[A-Z]{1,2}\d*)?|[CKT]\d{2,3})\b/u;

/** What a class allows at rated current or voltage, as IEC 61869-2 and -3 and IEEE C57.13 have it. */
const allowed = (kind: keyof typeof LIMITS, text: string) => {
  const name = CLASS.exec(text)?.[0].replace(",", ".");
  const limit = name === undefined ? undefined : LIMITS[kind](name, 100);
  return name !== undefined && limit?.ok ? { name, ...limit.value } : undefined;
};

/** The class that the line tells, else the heading: "CT tests, class C200". */
const classOf = (block: Block, { beside }: Entry): string | undefined =>
  beside.class?.text ??
  block.heading
    .map(({ text }) => /\b(?:class|clase|klasse|classe|cl)\b\.?\s*(\S+)/iu.exec(text)?.[1])
    .find((found) => found !== undefined);

const inBlock = (block: Block, context: SurveyContext): Finding[] => {
  const beyond = block.entries.flatMap((entry) => {
    const error = entry.beside.error ?? entry.beside.spread;
    if (!isTransformer(entry.kind) || error?.number === undefined) return [];
    const told = classOf(block, entry);
    const limit = told === undefined ? undefined : allowed(entry.kind, told);
    const isJudged = compare(entry, context).some(({ cell }) => cell === error);
    return limit && !isJudged && Math.abs(error.number) > limit.value
      ? [{ entry, error, limit, number: error.number }]
      : [];
  });
  // Where most lines are beyond their class it is none of the ratio error at rated current.
  if (beyond.length > Math.max(2, block.entries.length * 0.4)) return [];
  return groupBy(beyond, ({ error }) => error.address).flatMap(([first]) =>
    first
      ? [
          findingAt(
            "survey-class",
            "query",
            block,
            first.entry,
            first.error.address,
            context.text.beyondClass(
              written(first.number),
              first.limit.name,
              written(first.limit.value),
              first.limit.source.document,
            ),
            { found: first.error.text, expected: `±${written(first.limit.value)} %` },
          ),
        ]
      : [],
  );
};

/** A ratio error beyond what the accuracy class allows at rated current or voltage, where the workbook states no limit. */
export const classError: SurveyRule = {
  id: "survey-class",
  find: (context) => context.survey.blocks.flatMap((block) => inBlock(block, context)),
};
