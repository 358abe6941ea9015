import FormControl from "@mui/material/FormControl";
import InputLabel from "@mui/material/InputLabel";
import NativeSelect from "@mui/material/NativeSelect";
import { type ReactElement, useId } from "react";

/** One of a few words, chosen from the system's own list. */
export function Choice({
  label,
  value,
  choices,
  onChoose,
}: {
  label: string;
  value: string;
  choices: readonly { readonly value: string; readonly label: string }[];
  onChoose: (value: string) => void;
}): ReactElement {
  const id = useId();
  return (
    <FormControl fullWidth size="small">
      <InputLabel htmlFor={id} shrink variant="standard">
        {label}
      </InputLabel>
      <NativeSelect
        inputProps={{ id }}
        value={value}
        onChange={({ target }) => onChoose(target.value)}
        sx={{ minHeight: 40 }}
      >
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </NativeSelect>
    </FormControl>
  );
}
