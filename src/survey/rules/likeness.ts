import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import { poleSpread } from "../../standards/poleSpread";
import { contactSpread } from "../../standards/practice";
import type { Block, Entry, SurveyColumn } from "../find/block";
import { inBaseUnit } from "../read/cells";
import { compare, isOfSpread } from "./judge";
import { findingAt, middleOf, type SurveyContext, type SurveyRule, written } from "./rule";

const base = ({ cell, unit }: Entry): number | undefined =>
  cell?.number === undefined ? undefined : unit ? inBaseUnit(cell.number, unit) : cell.number;

/** Above the lowest pole by how much a pole is asked about: under NETA by the spread that practice has, elsewhere twice the lowest (common practice, no source). */
const POLES = { NETA: 1 + contactSpread.value, IEC: 2 } as const;

/** The pole that stands apart from the two others: furthest from the middle one. */
const poles = (block: Block, context: SurveyContext): Finding[] =>
  groupBy(
    block.entries.filter(({ kind, cell }) => kind === "contact" && cell?.number !== undefined),
    ({ panel, position, column, beside }) =>
      `${panel} ${beside.part?.text ?? ""} ${column.position === undefined ? "" : position.replace(column.position, "")}`,
  ).flatMap((group) => {
    const values = group.map((entry) => base(entry) ?? 0);
    if (group.length < 2 || group.length > 3 || Math.min(...values) <= 0) return [];
    const sorted = [...group].sort((one, other) => (base(one) ?? 0) - (base(other) ?? 0));
    const [low, middle, high] = [sorted[0], sorted[group.length >> 1], sorted.at(-1)];
    const [least, usual, most] = [low, middle, high].map((entry) => (entry && base(entry)) ?? 0);
    if (
      !low ||
      !high ||
      !middle ||
      least === undefined ||
      most === undefined ||
      usual === undefined
    )
      return [];
    if (most <= least * POLES[context.basis ?? "NETA"]) return [];
    const odd = usual / least > most / usual ? low : high;
    if (compare(odd, context).some(({ verdict }) => verdict === "Fail")) return [];
    const share = Math.round((most / least - 1) * 100);
    return [
      findingAt(
        "survey-apart",
        "query",
        block,
        odd,
        odd.address,
        context.text.apart(
          written(high.cell?.number ?? 0, high.unit),
          written(low.cell?.number ?? 0, low.unit),
          share,
        ),
        { found: odd.cell?.text },
      ),
    ];
  });

/** Rated frequency by practice, where the workbook is not asked for it. */
const HERTZ = { NETA: 60, IEC: 50 } as const;

/** By how much a difference may miss its bound through binary arithmetic alone: 65 ms less 60 ms is 5 ms. */
const ROUNDING = 1e-9;

/** How far the poles of a line may be apart by its own cell, right behind their spread. */
const allowedApart = ({ columns, at }: Block, group: readonly Entry[]): number | undefined => {
  const [first] = group;
  const last = Math.max(...group.map(({ column }) => column.at));
  const bound = columns.find(({ bounds = [], at: place }) => {
    const spread = columns.find((one) => one.concept === "spread" && bounds.includes(one.at));
    return spread !== undefined && place > last;
  });
  const cell = first && bound ? at(first.line, bound.at) : undefined;
  return cell?.number === undefined
    ? undefined
    : inBaseUnit(cell.number, cell.unit ?? bound?.unit ?? first?.unit ?? "ms") * 1000;
};

/** Poles of one breaker that do not operate together. */
const times = (block: Block, { text, basis = "IEC" }: SurveyContext): Finding[] =>
  groupBy(
    block.entries.filter(
      ({ kind, operation, cell }) =>
        kind === "timing" && operation !== undefined && cell?.number !== undefined,
    ),
    ({ panel, operation, stage }) => `${panel} ${operation} ${stage ?? ""}`,
  ).flatMap((group) => {
    const [first] = group;
    if (!first?.operation || group.length < 2 || group.length > 3) return [];
    const values = group.map((entry) => base(entry) ?? 0);
    const middle = middleOf(values);
    const apart = (Math.max(...values) - Math.min(...values)) * 1000;
    const usual = poleSpread(first.operation, HERTZ[basis]);
    const stated = first.facts.limits.find((limit) => limit.unit === "ms" && isOfSpread(limit));
    const most =
      allowedApart(block, group) ?? stated?.number ?? (usual.ok ? usual.value.value : undefined);
    if (most === undefined || apart <= most * (1 + ROUNDING)) return [];
    const odd = group.reduce(
      (far, entry) =>
        Math.abs((base(entry) ?? 0) - middle) > Math.abs((base(far) ?? 0) - middle) ? entry : far,
      first,
    );
    return [
      findingAt(
        "survey-apart",
        "query",
        block,
        odd,
        odd.address,
        text.notTogether(written(apart, "ms"), written(most, "ms")),
        { found: odd.cell?.text },
      ),
    ];
  });

/** Insulation rises with time, and an exciting current with its voltage: a reading below the one before it is asked about, by more than reading errors come to. */
const FALL = 0.93;
const RISING: readonly string[] = ["indexCurve", "excitation"];

/** Whether a title is a point of a curve: a time, or a number alone. */
const isPoint = (title: string) => /^\d+(?:[.,]\d+)?\s*(?:(?:s|sec|min|k?V)\b.*|%)?$/i.test(title);

/** Whether the points of curves are columns of a table, so that what else stands in a line is none. */
const hasPoints = ({ turned, columns }: Block): boolean =>
  turned || columns.some(({ title, numbers }) => numbers && isPoint(title));

const falls = (block: Block, { text }: SurveyContext): Finding[] =>
  groupBy(
    block.entries.filter(
      ({ kind, cell, column }) =>
        RISING.includes(kind) &&
        cell?.number !== undefined &&
        // A knee point in the last line is no point of the curve.
        (kind !== "excitation" || !hasPoints(block) || isPoint(column.title)),
    ),
    ({ column, line, panel }) =>
      isPoint(column.title) || isRepeated(block, column)
        ? `line ${line}`
        : `column ${column.at} ${panel}`,
  ).flatMap((curve) =>
    curve.flatMap((entry, index) => {
      const [before, value, after] = [curve[index - 1], entry, curve[index + 1]].map(
        (one) => one && base(one),
      );
      const isLow = before !== undefined && value !== undefined && value < before * FALL;
      if (!isLow || (after !== undefined && after < before * FALL)) return [];
      return [
        findingAt(
          "survey-falls",
          "query",
          block,
          entry,
          entry.address,
          (entry.kind === "excitation" ? text.curveFalls : text.falls)(
            written(entry.cell?.number ?? 0, entry.unit),
            written(curve[index - 1]?.cell?.number ?? 0, entry.unit),
          ),
          { found: entry.cell?.text },
        ),
      ];
    }),
  );

/** Whether the points of a curve stand across, each under the same title. */
const isRepeated = ({ columns }: Block, { title, position }: SurveyColumn): boolean =>
  position === undefined && columns.filter((one) => one.title === title).length >= 3;

/** An operations counter never runs back. */
const COUNTER = /count|zähl|contador|compteur|عداد/iu;

const counters = (block: Block, { text }: SurveyContext): Finding[] => {
  const counted = block.columns.filter(({ title, numbers }) => COUNTER.test(title) && numbers);
  const before = counted.find(({ stage }) => stage === "before") ?? counted[0];
  const after =
    counted.find(({ stage }) => stage === "after") ?? counted.find((one) => one !== before);
  if (!before || !after) return [];
  return groupBy(block.entries, ({ line }) => String(line)).flatMap(([entry]) => {
    const [first, second] = [before, after].map(({ at }) =>
      entry ? block.at(entry.line, at) : undefined,
    );
    const isBack =
      first?.number !== undefined && second?.number !== undefined && second.number < first.number;
    return entry && first && second && isBack
      ? [
          findingAt(
            "survey-counter",
            "query",
            block,
            entry,
            second.address,
            text.counter(second.text, first.text),
            { found: second.text },
          ),
        ]
      : [];
  });
};

/** Readings of like parts that are not alike. */
export const likeness: SurveyRule = {
  id: "survey-apart",
  find: (context) =>
    context.survey.blocks.flatMap((block) => [
      ...poles(block, context),
      ...times(block, context),
      ...falls(block, context),
      ...counters(block, context),
    ]),
};
