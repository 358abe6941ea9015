import InputBase from "@mui/material/InputBase";
import { type ReactElement, useId } from "react";

/** A box for text that was copied from somewhere. */
export function PasteBox({
  label,
  value,
  onPaste,
}: {
  label: string;
  value: string;
  onPaste: (text: string) => void;
}): ReactElement {
  const id = useId();
  return (
    <>
      <label htmlFor={id}>{label}</label>
      <InputBase
        id={id}
        multiline
        minRows={4}
        maxRows={12}
        value={value}
        onChange={({ target }) => onPaste(target.value)}
        sx={{ border: 1, borderColor: "text.secondary", px: 1 }}
      />
    </>
  );
}
