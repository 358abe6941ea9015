import { PANEL_TYPES } from "../../lineup/equipment";
import { FIELDS, type Field, type FieldPath, LISTS } from "../../lineup/fields";
import { RULE_WEIGHTS } from "../../lineup/settings";
import type { Messages, RuleId } from "../../messages/messages";
import { FURTHER_KINDS, ITEM_KINDS, KINDS, RECORD_KINDS } from "../../records/kinds";
import { kindWords } from "../../records/kindWords";
import { OWN_QUANTITIES } from "../../records/ownQuantities";

/** One field of the form. */
export interface FormField {
  /** Where it stands in what it belongs to: the lineup, a panel, an entry of a list. */
  readonly path: string;
  readonly label: (text: Messages) => string;
  readonly holds: Exclude<Field["holds"], "weights">;
  /** True for what few lineups give: it stands folded under the others. */
  readonly rare?: true;
  /** What helps to fill it in, where its name does not say it. */
  readonly hint?: (text: Messages) => string | undefined;
  /** What the words of a list are shown as, where that is not the words themselves. */
  readonly shown?: (text: Messages) => Readonly<Record<string, string>>;
}

/** A list in the lineup: its fields, and what a new entry starts with. */
export interface FormList {
  /** By which its names stand among the texts. */
  readonly id: keyof Messages["lists"];
  /** Where it stands in what it belongs to. */
  readonly path: string;
  readonly fields: readonly FormField[];
  /** Lists within an entry. */
  readonly lists: readonly FormList[];
  readonly fresh: Readonly<Record<string, unknown>>;
  /** Path of the field that an entry of the list is known by. */
  readonly name: string;
}

const kindTitles = (text: Messages) =>
  Object.fromEntries(KINDS.map(({ id }) => [id, kindWords(text, id).title]));
const yesNo = ({ lineup }: Messages) => ({ true: lineup.yes, false: lineup.no });

/** Facts of which the lineup's schema does not know what there is to choose from. */
const CHOICES: Readonly<Partial<Record<FieldPath, Pick<FormField, "holds" | "shown">>>> = {
  "criteria.quantity": { holds: OWN_QUANTITIES },
  "leaveOut.kind": { holds: RECORD_KINDS, shown: kindTitles },
  "furtherRecords.kind": { holds: FURTHER_KINDS, shown: kindTitles },
  "checkItems.kind": { holds: ITEM_KINDS, shown: kindTitles },
};

/** Words that may be listed in a field, told beside its label. */
const AMONG: Readonly<Partial<Record<FieldPath, readonly string[]>>> = {
  "inspectionPoints.guards": RECORD_KINDS,
  "checkItems.types": PANEL_TYPES,
};

/** What nearly every lineup says of a thing; of a thing that stands here, every other fact is rare. */
const USUAL: Readonly<Record<string, readonly string[]>> = {
  "": [
    "project.name",
    "project.site",
    "project.number",
    "project.specification",
    "project.specificationRevision",
    "basis",
    "purpose",
    "phases",
    "ratings.voltagekV",
    "ratings.frequencyHz",
    "ratings.busbarA",
    "ratings.controlV",
    "ratings.controlKind",
    "insulation.correction",
    "insulation.baseC",
    "withstand.wave",
    "withstand.seconds",
  ],
  panels: [
    "designation",
    "name",
    "type",
    "section",
    "breaker.designation",
    "breaker.medium",
    "breaker.ratedA",
    "breaker.contactLimit",
    "breaker.document",
    "breaker.gas.pressure",
    "breaker.gas.fillingMPa",
    "breaker.gas.alarmMPa",
    "breaker.gas.lockoutMPa",
  ],
  "panels.currentTransformers": ["name", "primaryA", "secondaryA", "accuracy", "burdenVA", "kneeV"],
  "panels.voltageTransformers": ["name", "primaryV", "secondaryV", "accuracy", "burdenVA"],
  "panels.protection": ["relay", "element", "pickup", "unit", "curve", "setting", "document"],
  "panels.cables": ["designation", "ratedkV", "u0kV", "insulation"],
};

const isRare = (thing: string, path: string) => !(USUAL[thing]?.includes(path) ?? true);

/** A fact of the schema as a field of what its path begins with. */
function fieldIn(prefix: string, { path, holds }: Field): FormField[] {
  const name = path as FieldPath;
  if (holds === "weights") return [];
  const among = AMONG[name];
  const own = prefix === "" ? path : path.slice(prefix.length + 1);
  return [
    {
      path: own,
      ...(isRare(prefix, own) ? { rare: true } : {}),
      hint: ({ hints }) => (hints as Readonly<Partial<Record<string, string>>>)[name],
      label: ({ fields }) => (among ? `${fields[name]} (${among.join(", ")})` : fields[name]),
      holds,
      ...(Array.isArray(holds) && holds.includes(true) ? { shown: yesNo } : {}),
      ...CHOICES[name],
    },
  ];
}

const isIn = (path: string, whole: string) => whole === "" || path.startsWith(`${whole}.`);

/** The facts of a list's entries, or of the lineup itself, that stand in no list within. */
const fieldsOf = (list: string): readonly Field[] =>
  FIELDS.filter(
    ({ path }) =>
      isIn(path, list) && !LISTS.some((other) => other.length > list.length && isIn(path, other)),
  );

/** Some of these, by what their path is or begins with. */
const among = (list: string, ...parts: readonly string[]): readonly FormField[] =>
  fieldsOf(list)
    .filter(({ path }) => parts.some((part) => path === part || isIn(path, part)))
    .flatMap((field) => fieldIn(list, field));

export const PROJECT = among("", "note", "project");
export const RATINGS = among(
  "",
  "basis",
  "purpose",
  "editions",
  "phases",
  "decisionRule",
  "ratings",
);
export const TESTS = among("", "insulation", "withstand");

/** Weights that the project gives to rules of the check. */
export const weightsOf = ({ findings }: Messages): readonly FormField[] =>
  (Object.keys(findings.rules) as RuleId[]).map((rule) => ({
    path: `ruleWeights.${rule}`,
    label: ({ findings: { rules } }) => rules[rule].title,
    holds: RULE_WEIGHTS,
  }));

const PANEL_LIST = "panels";
const BREAKER_PATH = `${PANEL_LIST}.breaker`;
const GAS_PATH = `${BREAKER_PATH}.gas`;
const ofPanel = fieldsOf(PANEL_LIST);
const panelFields = (is: (path: string) => boolean) =>
  ofPanel.filter(({ path }) => is(path)).flatMap((field) => fieldIn(PANEL_LIST, field));

export const PANEL = panelFields((path) => !isIn(path, BREAKER_PATH));
export const BREAKER = panelFields((path) => isIn(path, BREAKER_PATH) && !isIn(path, GAS_PATH));
export const GAS = panelFields((path) => isIn(path, GAS_PATH));

/** What a new entry of a list starts with, and what it is known by, where that is not its first fact. */
const STARTS: Readonly<
  Partial<Record<FormList["id"], { fresh?: FormList["fresh"]; name?: string }>>
> = {
  criteria: { fresh: { from: "project" }, name: "quantity" },
  inspectionPoints: { fresh: { type: "witness", each: "lineup" } },
  checkItems: { fresh: { kind: "installation" }, name: "item" },
  "panels.currentTransformers": { fresh: { secondaryA: 1 } },
  "panels.meters": { fresh: { points: [25, 50, 100] } },
  "panels.protection": {
    fresh: {
      unit: "A",
      curve: "definite",
      multiples: [2, 5, 10],
      pickupPercent: 5,
      timePercent: 5,
      timeS: 0.04,
    },
    name: "element",
  },
  "panels.joints": { fresh: { bolt: "M12", grade: "8.8" } },
};

/** Lists that hold lists. */
const OUTER = LISTS.filter((path) => LISTS.some((other) => isIn(other, path)));

/** A list of the lineup as it stands in a form. */
export function listOf(id: FormList["id"]): FormList {
  const fields = fieldsOf(id).flatMap((field) => fieldIn(id, field));
  const { fresh = {}, name = fields[0]?.path ?? "" } = STARTS[id] ?? {};
  return {
    id,
    path: OUTER.reduce((path, outer) => (isIn(id, outer) ? id.slice(outer.length + 1) : path), id),
    fields,
    lists:
      id === PANEL_LIST
        ? []
        : LISTS.filter((path) => isIn(path, id)).map((path) => listOf(path as FormList["id"])),
    fresh: { [name]: "", ...fresh },
    name,
  };
}

/** Lists of a panel's equipment. */
export const PANEL_LISTS: readonly FormList[] = LISTS.filter((path) => isIn(path, PANEL_LIST)).map(
  (path) => listOf(path as FormList["id"]),
);
