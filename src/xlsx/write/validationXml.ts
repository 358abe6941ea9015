import type { Validation } from "../../look/validation";
import { daySerial } from "../../quantities/dates";
import { attributesXml } from "../patch/styles";
import { elementText } from "../xml/editText";
import type { DraftValidation } from "./sheetDraft";

/** A validation as a file writes it: it warns, and refuses nothing. */
export function validationXml(p: string, one: DraftValidation): string {
  const { validation, range, title, help } = one;
  const { type, operator, formulas } = ruleOf(validation);
  const attributes = attributesXml({
    type,
    errorStyle: "warning",
    operator,
    allowBlank: 1,
    showInputMessage: help === undefined ? undefined : 1,
    showErrorMessage: 1,
    errorTitle: title,
    error: validation.message,
    promptTitle: help === undefined ? undefined : title,
    prompt: help,
    sqref: range,
  });
  const formulasXml = formulas
    .map((text, at) => `<${p}formula${at + 1}>${elementText(text)}</${p}formula${at + 1}>`)
    .join("");
  return `<${p}dataValidation${attributes}>${formulasXml}</${p}dataValidation>`;
}

interface Rule {
  readonly type: string;
  readonly operator?: string;
  readonly formulas: readonly string[];
}

function ruleOf(validation: Validation): Rule {
  switch (validation.type) {
    case "number":
      return between("decimal", validation.least, validation.most);
    case "date":
      return between("date", daySerial(validation.first), daySerial(validation.last));
    case "custom":
      return { type: "custom", formulas: [validation.formula] };
    case "values":
      return {
        type: "list",
        formulas: [`"${validation.values.join(",").replaceAll('"', '""')}"`],
      };
    case "range":
      return { type: "list", formulas: [validation.range] };
  }
}

const between = (type: string, least: number | undefined, most: number | undefined): Rule => ({
  type,
  operator: "between",
  formulas: [String(least), String(most)],
});
