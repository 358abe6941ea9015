import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { generateCustomFunctionsMetadata } from "custom-functions-metadata";
import ts from "typescript";

/** A worksheet function as its own docstring declares it. */
export interface Declaration {
  readonly name: string;
  readonly description: string;
  readonly returns: string;
  readonly parameters: readonly Parameter[];
  /** `formula // outcome`, as written. */
  readonly examples: readonly { readonly formula: string; readonly outcome: string }[];
  /** Calls that the function refuses. */
  readonly refusals: readonly string[];
  /** The calculations and criteria that it is laid over. */
  readonly behind: readonly Calculation[];
}

export interface Parameter {
  readonly name: string;
  readonly description: string;
  readonly optional: boolean;
  readonly words: readonly { readonly word: string; readonly meaning: string }[];
}

/** A calculation's docstring: what it says, its parameters, what it gives and refuses. */
export interface Calculation {
  readonly name: string;
  readonly text: string;
  readonly parameters: readonly { readonly name: string; readonly text: string }[];
  readonly returns: string;
}

interface Metadata {
  readonly functions: readonly {
    readonly id: string;
    readonly description: string;
    readonly parameters: readonly {
      readonly name: string;
      readonly description: string;
      readonly optional?: boolean;
      readonly customEnumId?: string;
    }[];
  }[];
  readonly enums: readonly {
    readonly id: string;
    readonly values: readonly { readonly stringValue: string; readonly tooltip: string }[];
  }[];
}

const FOLDER = "src/functions";

/** Reads every worksheet function's declaration, by name. */
export async function declarations(): Promise<Declaration[]> {
  const files = readdirSync(FOLDER)
    .filter((file) => file.endsWith(".ts"))
    .map((file) => join(FOLDER, file))
    .filter((file) => readFileSync(file, "utf8").includes("@customfunction"));
  const { errors, metadataJson } = await generateCustomFunctionsMetadata(files);
  if (errors.length > 0) throw new Error(errors.join("; "));
  const { functions, enums } = JSON.parse(metadataJson) as Metadata;
  const docs = new Map(files.map(docOf));
  return functions
    .map(({ id, description, parameters }): Declaration => {
      const doc = docs.get(id);
      if (!doc) throw new Error(`no docstring of ${id}`);
      return {
        name: id,
        description,
        ...doc,
        parameters: parameters.map(({ name, description, optional = false, customEnumId }) => ({
          name,
          description,
          optional,
          words: (enums.find(({ id }) => id === customEnumId)?.values ?? []).map(
            ({ stringValue, tooltip }) => ({ word: stringValue, meaning: tooltip }),
          ),
        })),
      };
    })
    .toSorted((a, b) => (a.name < b.name ? -1 : 1));
}

type Doc = Pick<Declaration, "returns" | "examples" | "refusals" | "behind">;

function docOf(file: string): [name: string, doc: Doc] {
  const source = parsed(file);
  for (const statement of source.statements) {
    const tags = ts.getJSDocTags(statement);
    const of = (name: string) =>
      tags.filter(({ tagName }) => tagName.text === name).map(({ comment }) => textOf(comment));
    const [name] = of("customfunction");
    if (name === undefined) continue;
    return [
      name,
      {
        returns: of("returns").join(" "),
        examples: of("example").map((example) => {
          const at = example.lastIndexOf(" // ");
          return { formula: example.slice(0, at), outcome: example.slice(at + 4) };
        }),
        refusals: of("refuses"),
        behind: calculationsIn(source, file),
      },
    ];
  }
  throw new Error(`${file} declares no worksheet function`);
}

/** The documented calculations that a file imports from the trade's own layers. */
const calculationsIn = (source: ts.SourceFile, file: string): Calculation[] =>
  source.statements.flatMap((statement) => {
    if (!ts.isImportDeclaration(statement) || !ts.isStringLiteral(statement.moduleSpecifier))
      return [];
    const from = statement.moduleSpecifier.text;
    const names = statement.importClause?.namedBindings;
    if (!/^\.\.\/(engineering|standards)\//.test(from) || !names || !ts.isNamedImports(names))
      return [];
    return names.elements.flatMap(({ name, propertyName }) =>
      calculation(join(dirname(file), `${from}.ts`), (propertyName ?? name).text),
    );
  });

function calculation(file: string, name: string): Calculation[] {
  for (const statement of parsed(file).statements) {
    const [declared] = ts.isVariableStatement(statement)
      ? statement.declarationList.declarations
      : [];
    if (declared?.name.getText() !== name) continue;
    const docs = ts.getJSDocCommentsAndTags(statement).filter(ts.isJSDoc);
    const tags = ts.getJSDocTags(statement);
    const returns = tags.find(ts.isJSDocReturnTag);
    if (!returns) return [];
    return [
      {
        name,
        text: docs.map(({ comment }) => textOf(comment)).join("\n\n"),
        parameters: tags
          .filter(ts.isJSDocParameterTag)
          .map((tag) => ({ name: tag.name.getText(), text: textOf(tag.comment) })),
        returns: textOf(returns.comment),
      },
    ];
  }
  return [];
}

const parsed = (file: string) =>
  ts.createSourceFile(file, readFileSync(file, "utf8"), ts.ScriptTarget.ES2022, true);

const textOf = (comment: Parameters<typeof ts.getTextOfJSDocComment>[0]): string =>
  (ts.getTextOfJSDocComment(comment) ?? "").trim();
