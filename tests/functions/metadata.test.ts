import { readdirSync } from "node:fs";
import { generateCustomFunctionsMetadata } from "custom-functions-metadata";
import { beforeAll, describe, expect, it } from "vitest";
import { functions } from "../../src/functions/catalogue";
import { sources } from "../../src/functions/sources";

interface Metadata {
  functions: {
    id: string;
    name: string;
    description?: string;
    options?: Record<string, unknown>;
    parameters: { name: string; description?: string; optional?: boolean; customEnumId?: string }[];
  }[];
  enums: { id: string; values: { name: string; stringValue: string; tooltip: string }[] }[];
}

const files = readdirSync("src/functions")
  .filter((file) => file.endsWith(".ts"))
  .map((file) => `src/functions/${file}`);
let metadata: Metadata;

beforeAll(async () => {
  const generated = await generateCustomFunctionsMetadata(files);
  expect(generated.errors).toEqual([]);
  metadata = JSON.parse(generated.metadataJson);
});

describe("metadata of the worksheet functions", () => {
  it("has the functions of the catalogue and no others", () => {
    expect(metadata.functions.map(({ id }) => id).toSorted()).toEqual(
      Object.keys(functions).toSorted(),
    );
    expect(Object.keys(sources).toSorted()).toEqual(Object.keys(functions).toSorted());
  });

  it("has every function of the design", () => {
    const designed =
      "IRCORRECT IRFACTOR IRMINIMUM IRTESTVOLTAGE ABSORPTION POLARIZATION MEGOHMS WITHSTAND AIRFACTOR ALTITUDEFACTOR DEWPOINT DEWMARGIN CONTACTCORRECT SPREAD EARTHRESISTANCE GASPRESSURE KNEEPOINT RATIOERROR CTLIMIT VTLIMIT CURVETIME TIMESPREAD BOLTTORQUE CABLETEST JUDGE SOURCE";
    expect(Object.keys(functions)).toEqual(expect.arrayContaining(designed.split(" ")));
  });

  it("names them so that none reads as a cell address", () => {
    for (const { id, name } of metadata.functions) {
      expect(name).toBe(id);
      expect(id).toMatch(/^[A-Z]+$/);
    }
  });

  it("describes every function and every parameter", () => {
    for (const { id, description, parameters } of metadata.functions) {
      expect(description, id).toMatch(/^[A-Z].*\.$/);
      expect(parameters.length, id).toBeGreaterThan(0);
      for (const parameter of parameters)
        expect(parameter.description, `${id} ${parameter.name}`).toMatch(/^\S.{2,}/);
    }
  });

  it("has no optional parameter before a required one, and says what a blank stands for", () => {
    for (const { id, parameters } of metadata.functions) {
      const firstOptional = parameters.findIndex(({ optional }) => optional);
      const tail = firstOptional < 0 ? [] : parameters.slice(firstOptional);
      for (const { name, optional, description } of tail) {
        expect(optional, `${id} ${name}`).toBe(true);
        expect(description, `${id} ${name}`).toContain("if left out");
      }
    }
  });

  it("has no volatile or streaming function", () => {
    for (const { options } of metadata.functions) expect(options).toBeUndefined();
  });

  it("offers words, each explained, under ids of their own", () => {
    const ids = metadata.enums.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { values } of metadata.enums)
      for (const { tooltip, stringValue } of values) {
        expect(stringValue).not.toBe("");
        expect(tooltip).not.toBe("");
      }
  });

  it("offers only words that the function accepts", () => {
    for (const { id, parameters } of metadata.functions)
      for (const [place, { customEnumId }] of parameters.entries()) {
        const offered = metadata.enums.find((one) => one.id === customEnumId)?.values ?? [];
        for (const { stringValue } of offered) {
          const args = parameters.map(({ customEnumId: other }, i) => {
            if (i === place) return stringValue;
            return metadata.enums.find((one) => one.id === other)?.values[0]?.stringValue ?? 12;
          });
          const outcome = functions[id]?.(...(args as never[]));
          expect(JSON.stringify(outcome), `${id} ${stringValue}`).not.toContain("is not one of");
        }
      }
  });
});
