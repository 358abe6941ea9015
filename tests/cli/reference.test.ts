import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { RULE_IDS, RULES } from "../../src/check/rules";
import { functions } from "../../src/functions/catalogue";
import { messagesFor } from "../../src/messages/messages";
import { callFormula } from "../tools/reference/callFormula";
import { criteriaTables } from "../tools/reference/criteriaTables";
import { type Declaration, declarations } from "../tools/reference/declarations";
import { guideText } from "../tools/reference/guideText";
import { referenceText } from "../tools/reference/referenceText";
import { faultsOf, rulesText } from "../tools/reference/rulesText";

let declared: Declaration[];
beforeAll(async () => {
  declared = await declarations();
});

describe("worked examples of the worksheet functions", () => {
  it("are there for every function, and so is what it refuses", () => {
    expect(declared.map(({ name }) => name)).toEqual(Object.keys(functions).toSorted());
    for (const { name, examples, refusals } of declared) {
      expect(examples.length, name).toBeGreaterThan(0);
      // A remark may be any text.
      if (name !== "DOUBTFUL") expect(refusals.length, name).toBeGreaterThan(0);
      for (const { formula } of examples) expect(formula).toContain(`=GEAR.${name}(`);
    }
  });

  it("give what they say", () => {
    for (const { formula, outcome } of declared.flatMap(({ examples }) => examples)) {
      const wanted: unknown = JSON.parse(outcome);
      const found = callFormula(formula);
      if (typeof wanted !== "number") expect(found, formula).toBe(wanted);
      else {
        const decimals = /\.(\d+)$/.exec(outcome)?.[1]?.length ?? 0;
        expect(found, formula).toBeCloseTo(wanted, decimals);
      }
    }
  });

  it("are refused with a sentence where they say so", () => {
    for (const formula of declared.flatMap(({ refusals }) => refusals))
      expect(callFormula(formula), formula).toMatchObject({
        code: expect.stringMatching(/^#(VALUE!|NUM!|N\/A)$/),
        message: expect.stringMatching(/\w.{12,}\.$/),
      });
  });
});

describe("the reference page", () => {
  it("is what the generator writes", async () => {
    expect(readFileSync("src/functions/REFERENCE.md", "utf8")).toBe(await referenceText());
    expect(readFileSync("src/functions/guide.json", "utf8")).toBe(await guideText());
  });

  it("names a document, a place and a certainty for every table, and has no empty table", async () => {
    for (const { title, sources, columns, rows } of await criteriaTables()) {
      expect(sources.length, title).toBeGreaterThan(0);
      for (const { document, place, certainty } of sources) {
        expect(document, title).toMatch(/\S/);
        expect(place, title).toMatch(/\S/);
        expect(certainty, title).toMatch(/^(read|quoted|signed|memory|practice)$/);
      }
      expect(rows.length, title).toBeGreaterThan(0);
      for (const row of rows) expect(row, title).toHaveLength(columns.length);
    }
  });

  it("names the edition of every standard", async () => {
    for (const { title, sources } of await criteriaTables())
      for (const { document, edition } of sources)
        if (/^(IEC|IEEE|ANSI|ISO|BS)/.test(document))
          expect(edition, `${title}: ${document}`).toMatch(/^\d{4}$/);
  });

  it("shows the formula, the valid range and the source of every calculation", async () => {
    for (const { name, behind } of declared) {
      if (["DOUBTFUL", "INRANGE", "MEGOHMS", "QUANTITY", "SOURCE"].includes(name)) continue;
      expect(behind.length, name).toBeGreaterThan(0);
      for (const { text, returns } of behind) {
        expect(text, name).toMatch(/\S/);
        expect(returns, name).toMatch(/\S/);
      }
    }
  });
});

describe("the reference of the rules", () => {
  const file = () => readFileSync("src/check/REFERENCE.md", "utf8");

  it("is what `npm run docs` writes, with the table of faults", () => {
    expect(file()).toBe(rulesText(faultsOf(file())));
    expect(faultsOf(file())).toContain("found by the right rule at the right cell");
  });

  it("says of every rule what it finds, why, what satisfies it and when it is quiet, each in words of its own", () => {
    const { rules } = messagesFor("en").findings;
    expect(new Set(RULES.map(({ id }) => id)).size).toBe(RULES.length);
    expect([...RULE_IDS].sort()).toEqual(Object.keys(rules).sort());
    for (const part of ["title", "finds", "why", "satisfies", "quiet"] as const)
      for (const id of RULE_IDS) expect(rules[id][part].length, id).toBeGreaterThan(8);
  });
});
