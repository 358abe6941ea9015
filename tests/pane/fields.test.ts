import { expect, test } from "vitest";
import { FIELDS, LISTS } from "../../src/lineup/fields";
import { lists as listNames } from "../../src/messages/en/fields";
import { messagesFor } from "../../src/messages/messages";
import {
  BREAKER,
  type FormField,
  type FormList,
  GAS,
  listOf,
  PANEL,
  PANEL_LISTS,
  PROJECT,
  RATINGS,
  TESTS,
  weightsOf,
} from "../../src/pane/lineup/fields";

const text = messagesFor("en");
const paths = (fields: readonly FormField[], prefix = "") =>
  fields.map(({ path }) => prefix + path);
const ofLineup = LISTS.filter((path) => !path.startsWith("panels"));

test("the form has every fact that a lineup can hold, each once", () => {
  const form = [
    ...paths([...PROJECT, ...RATINGS, ...TESTS]),
    ...ofLineup.flatMap((id) => paths(listOf(id as FormList["id"]).fields, `${id}.`)),
    ...paths([...PANEL, ...BREAKER, ...GAS], "panels."),
    ...PANEL_LISTS.flatMap(({ path, fields }) => paths(fields, `panels.${path}.`)),
    // Weights stand rule by rule.
    "ruleWeights",
  ];
  expect([...form].sort()).toEqual(FIELDS.map(({ path }) => path).sort());
  expect(weightsOf(text).map(({ path }) => path)).toContain("ruleWeights.out-of-limits");
});

test("every hint stands at a field of the form, and says more than its label", () => {
  const form = [
    ...[...PROJECT, ...RATINGS, ...TESTS, ...PANEL, ...BREAKER, ...GAS],
    ...ofLineup.flatMap((id) => listOf(id as FormList["id"]).fields),
    ...PANEL_LISTS.flatMap(({ fields }) => fields),
  ];
  const shown = form.flatMap((field) => {
    const hint = field.hint?.(text);
    return hint === undefined ? [] : [{ hint, label: field.label(text) }];
  });
  expect(shown.map(({ hint }) => hint).sort()).toEqual(Object.values(text.hints).sort());
  for (const { hint, label } of shown)
    expect(hint.toLowerCase()).not.toContain(label.toLowerCase());
});

test("every list has its names, and an entry a field that it is known by", () => {
  expect([...LISTS].sort()).toEqual(Object.keys(listNames).sort());
  for (const { fields, name } of [
    ...ofLineup.map((id) => listOf(id as FormList["id"])),
    ...PANEL_LISTS,
  ])
    expect(paths(fields)).toContain(name);
});

const groups: readonly (readonly [string, readonly FormField[]])[] = [
  ["a panel", [...PANEL, ...BREAKER, ...GAS]],
  ["the lineup", [...PROJECT, ...RATINGS, ...TESTS]],
  ...PANEL_LISTS.map(({ path, fields }) => [path, fields] as const),
];

test.each(groups)("no two fields of %s are called alike", (_what, fields) => {
  const labels = fields.map(({ label }) => label(text));
  expect(new Set(labels).size).toBe(labels.length);
});

test("what a fact is, is what the schema says", () => {
  const holds = Object.fromEntries(FIELDS.map(({ path, holds }) => [path, holds]));
  expect(holds).toMatchObject({
    "ratings.frequencyHz": [50, 60],
    "panels.breaker.device": ["fused contactor"],
    "panels.breaker.secondTripCoil": [true, false],
    "panels.meters.points": "numbers",
    "criteria.applies": "words",
    "instruments.due": "day",
    "panels.joints.grade": "text",
    ruleWeights: "weights",
  });
  expect(holds["panels.joints.bolt"]).toContain("M12");
});
