// The layers of src/, from the top. A folder imports from folders above it, never from those below.
const layers = [
  "messages",
  "quantities",
  "engineering",
  "standards",
  "lineup",
  "records",
  "sheets",
  "intake",
  "memory",
  "check",
  "survey",
  "look",
  "excel",
  "xlsx",
  "report",
  "handover",
  "functions",
  "pane",
  "cli",
  "standin",
];
const below = (name) => layers.slice(layers.indexOf(name) + 1).join("|");
const pure = layers.slice(0, layers.indexOf("look")).join("|");

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    ...layers.slice(0, -1).map((name) => ({
      name: `${name}-imports-only-from-above`,
      severity: "error",
      from: { path: `^src/${name}/` },
      to: { path: `^src/(${below(name)})/` },
    })),
    {
      name: "pure-layers-use-no-host",
      comment: "quantities to check: no Office.js, no React, no Node, no DOM library",
      severity: "error",
      from: { path: `^src/(${pure})/` },
      to: {
        dependencyTypes: ["core", "npm", "npm-dev", "npm-optional"],
        pathNot: "node_modules/(zod|@borgar/fx|fastest-levenshtein|fflate|hucre/dist/csv)",
      },
    },
    {
      name: "check-knows-no-intake",
      comment: "a host opens the workbook (intake/openBook.ts) and hands the check what that gives",
      severity: "error",
      from: { path: "^src/check/" },
      to: { path: "^src/intake/" },
    },
    {
      name: "functions-are-thin",
      comment: "worksheet functions must start first and stay small: only the trade's own layers",
      severity: "error",
      from: { path: "^src/functions/" },
      to: { pathNot: "^src/(functions|quantities|engineering|standards|messages)/" },
    },
    { name: "no-cycles", severity: "error", from: {}, to: { circular: true } },
    { name: "resolvable", severity: "error", from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "node", "default"],
    },
  },
};
