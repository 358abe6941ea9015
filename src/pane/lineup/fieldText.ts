import { useState } from "react";
import { useController } from "react-hook-form";
import { readReading } from "../../quantities/reading/readReading";
import { type Locale, useLocale } from "../locale";
import type { FormField } from "./fields";

type TextHolds = Exclude<FormField["holds"], readonly unknown[]>;

/** A field of the form as text to type in: what is being typed stays as it is until the field is left. */
export function useFieldText(path: string, holds: TextHolds) {
  const locale = useLocale();
  const { field, fieldState } = useController({ name: path });
  /** What is being typed, where it is not what the value would be written as. */
  const [typed, setTyped] = useState<string>();
  return {
    error: messageOf(fieldState.error),
    input: {
      ref: field.ref,
      value: typed ?? writtenAs(field.value, locale),
      onChange: ({ target }: { target: { value: string } }) => {
        setTyped(target.value);
        field.onChange(readAs(target.value, holds, locale));
      },
      onBlur: () => {
        setTyped(undefined);
        field.onBlur();
      },
    },
  };
}

/** An object's own error, such as an order between its fields, has no message of its own at a field. */
export const messageOf = (error: { readonly message?: unknown } | undefined): string | undefined =>
  typeof error?.message === "string" ? error.message : undefined;

/** A value as it stands in its field: numbers with the decimal mark of the user's language, not grouped. */
const writtenAs = (value: unknown, locale: Locale): string =>
  Array.isArray(value)
    ? value.map((one) => writtenAs(one, locale)).join("; ")
    : typeof value === "number"
      ? String(value).replace(".", locale.decimal)
      : String(value ?? "");

/** What was typed into a field. Text that is no number stays text, for the check to say so. */
function readAs(text: string, holds: TextHolds, locale: Locale): unknown {
  if (text.trim() === "") return undefined;
  const number = (part: string): unknown => {
    const read = readReading(part.trim(), { unit: "%", decimal: locale.decimal });
    return read.ok && read.value.bound === "exact" ? read.value.value : part;
  };
  if (holds === "number") return number(text);
  if (holds === "numbers")
    return text
      .split(/[;\s]+/)
      .filter(Boolean)
      .map(number);
  if (holds === "words")
    return text
      .split(/[;,]/)
      .map((part) => part.trim())
      .filter(Boolean);
  return text;
}
