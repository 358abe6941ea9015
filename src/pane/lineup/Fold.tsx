import Box from "@mui/material/Box";
import ButtonBase from "@mui/material/ButtonBase";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, type ReactNode, useId } from "react";
import { useText } from "../../report/text";

/** A part of the form under its title; it opens and closes. Closed parts are not made. */
export function Fold({
  title,
  wrong = false,
  open,
  onOpen,
  children,
}: {
  title: string;
  /** Whether something in it has to be put right. */
  wrong?: boolean;
  open: boolean;
  onOpen: () => void;
  children: ReactNode;
}): ReactElement {
  const messages = useText();
  const id = useId();
  return (
    <Box sx={{ border: 1, borderColor: wrong ? "error.main" : "divider" }}>
      <ButtonBase
        aria-expanded={open}
        aria-controls={id}
        onClick={onOpen}
        sx={{ width: "100%", minHeight: 44, px: 1, justifyContent: "space-between", gap: 1 }}
      >
        <Typography component="span" sx={{ fontWeight: 700, textAlign: "start" }}>
          {title}
          {wrong && (
            <Typography component="span" color="error" variant="body2">
              {" "}
              · {messages.lineup.toPutRight}
            </Typography>
          )}
        </Typography>
        <span aria-hidden>{open ? "–" : "+"}</span>
      </ButtonBase>
      <div id={id}>
        {open && (
          <Stack spacing={1.25} sx={{ p: 1 }}>
            {children}
          </Stack>
        )}
      </div>
    </Box>
  );
}
