import Button from "@mui/material/Button";
import { type ReactElement, useRef } from "react";

/** A button that asks for a file. The same file can be chosen twice in a row. */
export function FileButton({
  id,
  label,
  accept,
  disabled,
  onFile,
}: {
  id: string;
  label: string;
  accept: string;
  disabled: boolean;
  onFile: (file: File) => void;
}): ReactElement {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button
        variant="outlined"
        fullWidth
        disabled={disabled}
        onClick={() => input.current?.click()}
      >
        {label}
      </Button>
      <input
        ref={input}
        id={id}
        type="file"
        accept={accept}
        hidden
        onChange={({ target }) => {
          const file = target.files?.[0];
          target.value = "";
          if (file) onFile(file);
        }}
      />
    </>
  );
}
