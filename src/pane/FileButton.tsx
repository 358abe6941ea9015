import Button from "@mui/material/Button";
import { type ReactElement, useRef } from "react";

/** A button that asks for a file. The same file can be chosen twice in a row. */
export function FileButton({
  id,
  label,
  accept,
  multiple = false,
  disabled,
  onFile,
}: {
  id: string;
  label: string;
  accept: string;
  /** Whether several may be chosen at once; each is given by itself. */
  multiple?: boolean;
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
        multiple={multiple}
        hidden
        onChange={({ target }) => {
          const files = [...(target.files ?? [])];
          target.value = "";
          for (const file of files) onFile(file);
        }}
      />
    </>
  );
}
