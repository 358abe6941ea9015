import FormControl from "@mui/material/FormControl";
import FormHelperText from "@mui/material/FormHelperText";
import InputBase from "@mui/material/InputBase";
import InputLabel from "@mui/material/InputLabel";
import NativeSelect from "@mui/material/NativeSelect";
import { type ReactElement, type ReactNode, useId, useState } from "react";
import { get, useController, useFormContext, useFormState } from "react-hook-form";
import { useText } from "../../report/text";
import { Fold } from "./Fold";
import type { FormField } from "./fields";
import { messageOf, useFieldText } from "./fieldText";

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
  const { holds } = field;
  return typeof holds === "object" ? (
    <WordEntry path={path} field={field} words={holds} />
  ) : (
    <TextEntry path={path} field={field} holds={holds} />
  );
}

/** A field under its label, with what helps to fill it in, or what is wrong with it. */
function Labelled({
  id,
  label,
  hint,
  wrong,
  children,
}: {
  id: string;
  label: string;
  hint: string | undefined;
  wrong: string | undefined;
  children: ReactNode;
}): ReactElement {
  return (
    <FormControl fullWidth error={wrong !== undefined} size="small">
      <InputLabel
        htmlFor={id}
        shrink
        variant="standard"
        sx={{ transform: "none", fontSize: "0.8125rem" }}
      >
        {label}
      </InputLabel>
      {children}
      {(wrong ?? hint) !== undefined && (
        <FormHelperText id={`${id}-help`} sx={{ mx: 0 }}>
          {wrong ?? hint}
        </FormHelperText>
      )}
    </FormControl>
  );
}

const describedBy = (id: string, help: string | undefined) =>
  help === undefined ? {} : { "aria-describedby": `${id}-help` };

function WordEntry({
  path,
  field,
  words,
}: {
  path: string;
  field: FormField;
  words: readonly (string | number | boolean)[];
}): ReactElement {
  const messages = useText();
  const id = useId();
  const {
    field: { value, onChange, onBlur, ref },
    fieldState,
  } = useController({ name: path });
  const wrong = messageOf(fieldState.error);
  const hint = field.hint?.(messages);
  const shown = field.shown?.(messages) ?? {};
  return (
    <Labelled id={id} label={field.label(messages)} hint={hint} wrong={wrong}>
      <NativeSelect
        inputProps={{ id, ...describedBy(id, wrong ?? hint) }}
        inputRef={ref}
        value={String(value ?? "")}
        onBlur={onBlur}
        onChange={({ target }) =>
          onChange(words.find((one) => String(one) === target.value) ?? undefined)
        }
        sx={{ minHeight: 40 }}
      >
        <option value="">{messages.lineup.notSet}</option>
        {words.map((one) => (
          <option key={String(one)} value={String(one)}>
            {shown[String(one)] ?? String(one)}
          </option>
        ))}
      </NativeSelect>
    </Labelled>
  );
}

function TextEntry({
  path,
  field,
  holds,
}: {
  path: string;
  field: FormField;
  holds: Exclude<FormField["holds"], readonly unknown[]>;
}): ReactElement {
  const messages = useText();
  const id = useId();
  const {
    error: wrong,
    input: { ref, ...input },
  } = useFieldText(path, holds);
  const hint = field.hint?.(messages);
  return (
    <Labelled id={id} label={field.label(messages)} hint={hint} wrong={wrong}>
      <InputBase
        id={id}
        inputRef={ref}
        type={holds === "day" ? "date" : "text"}
        inputProps={{
          ...(holds === "number" ? { inputMode: "decimal" } : {}),
          ...describedBy(id, wrong ?? hint),
        }}
        {...input}
        sx={{
          mt: 2.25,
          px: 1,
          minHeight: 40,
          border: 1,
          borderColor: wrong === undefined ? "text.secondary" : "error.main",
        }}
      />
    </Labelled>
  );
}
