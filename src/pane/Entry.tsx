import InputBase from "@mui/material/InputBase";
import Stack from "@mui/material/Stack";
import { type ReactElement, useId } from "react";

/** A line to be typed in, under its label. */
export function Entry({
  label,
  value,
  type = "text",
  onEnter,
}: {
  label: string;
  value: string;
  type?: "text" | "number" | "date";
  onEnter: (value: string) => void;
}): ReactElement {
  const id = useId();
  return (
    <Stack>
      <label htmlFor={id}>{label}</label>
      <InputBase
        id={id}
        type={type}
        value={value}
        onChange={({ target }) => onEnter(target.value)}
        sx={{ border: 1, borderColor: "text.secondary", px: 1, minHeight: 40 }}
      />
    </Stack>
  );
}
