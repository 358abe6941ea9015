import InputBase from "@mui/material/InputBase";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useId } from "react";

/** A line to be typed in, under its label, with what helps to fill it in. */
export function Entry({
  label,
  value,
  type = "text",
  hint,
  wrong = false,
  onEnter,
}: {
  label: string;
  value: string;
  type?: "text" | "number" | "date";
  hint?: string | undefined;
  /** Whether what is typed in cannot be taken; the hint says why. */
  wrong?: boolean;
  onEnter: (value: string) => void;
}): ReactElement {
  const id = useId();
  return (
    <Stack>
      <label htmlFor={id}>{label}</label>
      <InputBase
        id={id}
        type={type}
        error={wrong}
        inputProps={hint === undefined ? {} : { "aria-describedby": `${id}-hint` }}
        value={value}
        onChange={({ target }) => onEnter(target.value)}
        sx={{
          border: 1,
          borderColor: wrong ? "error.main" : "text.secondary",
          px: 1,
          minHeight: 40,
        }}
      />
      {hint !== undefined && (
        <Typography
          id={`${id}-hint`}
          variant="body2"
          color={wrong ? "error" : "text.secondary"}
          sx={{ overflowWrap: "anywhere" }}
        >
          {hint}
        </Typography>
      )}
    </Stack>
  );
}
