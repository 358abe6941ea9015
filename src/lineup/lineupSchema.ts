import * as z from "zod/mini";
import { lineupSchema } from "./lineup";

/** Under which name the schema stands beside lineup files, and what they say of it. */
export const SCHEMA_FILE = "lineup.schema.json";

/** JSON Schema of a lineup file, for editors, as `npm run docs` writes it. */
export function lineupJsonSchema(): string {
  const { properties, ...schema } = z.toJSONSchema(lineupSchema, { io: "input" });
  const whole = {
    title: "Gearproof lineup",
    ...schema,
    properties: { $schema: { type: "string" }, ...properties },
  };
  return `${JSON.stringify(whole, null, 2)}\n`;
}
