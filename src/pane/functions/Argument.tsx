import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import type { ReactElement } from "react";
import type { FunctionGuide } from "../../functions/guide";
import { useText } from "../../report/text";
import { Choice } from "../Choice";
import { Entry } from "../Entry";
import type { Given } from "./call";

/** One argument: a word out of a few, or typed, or taken from the cells that are selected. */
export function Argument({
  parameter: { label: what, text: about, optional, words },
  given,
  busy,
  put,
  point,
}: {
  parameter: FunctionGuide["parameters"][number];
  given: Given | undefined;
  busy: boolean;
  put: (given: Given | undefined) => void;
  point: () => void;
}): ReactElement {
  const text = useText().functions;
  const label = optional ? text.optional(what) : what;
  const typed = given === undefined ? "" : "cells" in given ? given.cells : given.typed;
  const enter = (next: string) => put(next === "" ? undefined : { typed: next });
  if (words.length > 0)
    return (
      <Choice
        label={label}
        value={typed}
        choices={[
          { value: "", label: text.leftOut },
          ...words.map(([word, meaning]) => ({ value: word, label: text.word(word, meaning) })),
        ]}
        onChoose={enter}
      />
    );
  return (
    <Stack spacing={0.5}>
      <Entry label={label} value={typed} hint={about || undefined} onEnter={enter} />
      <Button
        size="small"
        variant="outlined"
        disabled={busy}
        onClick={point}
        aria-label={text.pointFor(what)}
      >
        {text.point}
      </Button>
    </Stack>
  );
}
