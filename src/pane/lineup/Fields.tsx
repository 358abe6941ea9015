import FormControl from "@mui/material/FormControl";
import FormHelperText from "@mui/material/FormHelperText";
import InputBase from "@mui/material/InputBase";
import InputLabel from "@mui/material/InputLabel";
import NativeSelect from "@mui/material/NativeSelect";
import { type ReactElement, useId, useState } from "react";
import { get, useController, useFormContext, useFormState } from "react-hook-form";
import { readReading } from "../../quantities/readReading";
import { useText } from "../../report/text";
import { type Locale, useLocale } from "../locale";
import { Fold } from "./Fold";
import type { FormField } from "./fields";

/** Fields of a form below each other, each with what is wrong with it; the rare ones folded under the others. */
export function Fields({
  prefix = "",
  fields,
}: {
  /** Path of what the fields belong to, with its dot. */
  prefix?: string;
  fields: readonly FormField[];
}): ReactElement {
  const rare = fields.filter((field) => field.rare);
  return (
    <>
      {fields.map((field) =>
        field.rare ? undefined : (
          <Entry key={field.path} path={prefix + field.path} field={field} />
        ),
      )}
      {rare.length > 0 && <Further prefix={prefix} fields={rare} />}
    </>
  );
}

/** Rare fields under their fold, which says how many are filled in. */
function Further({
  prefix,
  fields,
}: {
  prefix: string;
  fields: readonly FormField[];
}): ReactElement {
  const { lineup: text } = useText();
  const { getValues } = useFormContext();
  const { errors } = useFormState();
  const [open, setOpen] = useState(false);
  const paths = fields.map(({ path }) => prefix + path);
  const filled = paths.filter((path) => !isBlankField(getValues(path))).length;
  return (
    <Fold
      title={text.further(fields.length, filled)}
      wrong={paths.some((path) => get(errors, path) !== undefined)}
      open={open}
      onOpen={() => setOpen(!open)}
    >
      {fields.map((field) => (
        <Entry key={field.path} path={prefix + field.path} field={field} />
      ))}
    </Fold>
  );
}

const isBlankField = (value: unknown) => value === undefined || value === null || value === "";

function Entry({ path, field }: { path: string; field: FormField }): ReactElement {
  const messages = useText();
  const id = useId();
  const locale = useLocale();
  const {
    field: { value, onChange, onBlur, ref },
    fieldState: { error },
  } = useController({ name: path });
  /** What is being typed, where it is not what the value would be written as. */
  const [typed, setTyped] = useState<string>();
  const { holds } = field;
  const shown = field.shown?.(messages) ?? {};
  // An object's own error, such as an order between its fields, has no message of its own here.
  const wrong = typeof error?.message === "string" ? error.message : undefined;
  const described = wrong ? { "aria-describedby": `${id}-wrong` } : {};
  return (
    <FormControl fullWidth error={wrong !== undefined} size="small">
      <InputLabel
        htmlFor={id}
        shrink
        variant="standard"
        sx={{ transform: "none", fontSize: "0.8125rem" }}
      >
        {field.label(messages)}
      </InputLabel>
      {typeof holds === "object" ? (
        <NativeSelect
          inputProps={{ id, ...described }}
          inputRef={ref}
          value={String(value ?? "")}
          onBlur={onBlur}
          onChange={({ target }) =>
            onChange(holds.find((one) => String(one) === target.value) ?? undefined)
          }
          sx={{ minHeight: 40 }}
        >
          <option value="">{messages.lineup.notSet}</option>
          {holds.map((one) => (
            <option key={String(one)} value={String(one)}>
              {shown[String(one)] ?? String(one)}
            </option>
          ))}
        </NativeSelect>
      ) : (
        <InputBase
          id={id}
          inputRef={ref}
          type={holds === "day" ? "date" : "text"}
          inputProps={{ ...(holds === "number" ? { inputMode: "decimal" } : {}), ...described }}
          value={typed ?? writtenAs(value, locale)}
          onChange={({ target }) => {
            const next = readAs(target.value, holds, locale);
            setTyped(target.value);
            onChange(next);
          }}
          onBlur={() => {
            setTyped(undefined);
            onBlur();
          }}
          sx={{
            mt: 2.25,
            px: 1,
            minHeight: 40,
            border: 1,
            borderColor: wrong ? "error.main" : "text.secondary",
          }}
        />
      )}
      {wrong && (
        <FormHelperText id={`${id}-wrong`} sx={{ mx: 0 }}>
          {wrong}
        </FormHelperText>
      )}
    </FormControl>
  );
}

/** A value as it stands in its field: numbers with the decimal mark of the user's language, not grouped. */
const writtenAs = (value: unknown, { decimal }: Locale): string =>
  Array.isArray(value)
    ? value.map((one) => writtenAs(one, { decimal } as Locale)).join("; ")
    : typeof value === "number"
      ? String(value).replace(".", decimal)
      : String(value ?? "");

/** What was typed into a field. Text that is no number stays text, for the check to say so. */
function readAs(
  text: string,
  holds: Exclude<FormField["holds"], readonly unknown[]>,
  locale: Locale,
): unknown {
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
