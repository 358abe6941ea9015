import type { FieldErrors, FieldValues, Resolver } from "react-hook-form";
import { set } from "react-hook-form";
import type { Lineup } from "../../lineup/lineup";
import { criteriaRenamed, withFirstNames, withFirstNamesKept } from "../../lineup/renamed";
import { USUAL_POINTS } from "../../lineup/settings";
import type { Told } from "../../messages/told";
import { checkLineup } from "../../records/readLineup";

/** What a lineup starts as. */
export const NEW_LINEUP: FieldValues = {
  project: { name: "", site: "", drawings: [] },
  basis: "IEC",
  ratings: { frequencyHz: 50, altitudeM: 0 },
  insulation: { correction: "solid", baseC: 20 },
  withstand: { wave: "AC", seconds: 60 },
  criteria: [],
  leaveOut: [],
  furtherRecords: [],
  inspectionPoints: USUAL_POINTS.map((point) => ({ ...point })),
  checkItems: [],
  panels: [],
  instruments: [],
};

/** The form's values without what was left blank, as a lineup's file holds them. */
export function written(value: unknown): unknown {
  if (Array.isArray(value)) return value.map((item) => written(item) ?? {});
  if (typeof value !== "object" || value === null)
    return value === "" || value === null ? undefined : value;
  const fields = Object.entries(value).flatMap(([key, field]) => {
    const kept = written(field);
    return kept === undefined ? [] : [[key, kept] as const];
  });
  return fields.length > 0 ? Object.fromEntries(fields) : undefined;
}

/** A lineup as the form has it: every entry with the name that its readings are known by. */
export const draftOf = (lineup: Lineup): FieldValues => ({
  ...lineup,
  panels: withFirstNames(lineup.panels as unknown as FieldValues[]),
});

/** The lineup that the form describes, as a file holds it. */
export function described(values: FieldValues): FieldValues {
  const lineup = (written(values) ?? {}) as FieldValues;
  const { panels, criteria } = lineup;
  if (!Array.isArray(panels)) return lineup;
  return {
    ...lineup,
    panels: withFirstNamesKept(panels),
    ...(Array.isArray(criteria) ? { criteria: criteriaRenamed(criteria, panels) } : {}),
  };
}

/** Checks the whole form as a lineup, and puts each error at its field. */
export const resolverIn =
  (told: Told): Resolver =>
  (values) => {
    const checked = checkLineup(described(values));
    if (checked.ok) return { values: checked.value, errors: {} };
    const errors: FieldErrors = {};
    for (const { path, message } of checked.errors)
      set(errors, formPath(path), { type: "lineup", message: message(told) });
    return { values: {}, errors };
  };

/** `panels[3].breaker.medium` as a form names it: `panels.3.breaker.medium`. */
export const formPath = (path: string): string => path.replaceAll("[", ".").replaceAll("]", "");
