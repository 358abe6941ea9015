import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useState } from "react";
import { get, useFieldArray, useFormContext } from "react-hook-form";
import { withoutFirstNames } from "../../lineup/renamed";
import { useText } from "../../report/text";
import { Fields } from "./Fields";
import { Fold } from "./Fold";
import type { FormList } from "./fields";

/** A list of equipment: add to it, open one of its entries, copy it, move it, take it out. */
export function EntryList({
  prefix = "",
  list,
}: {
  prefix?: string;
  list: FormList;
}): ReactElement {
  const { lineup: text, lists } = useText();
  const path = prefix + list.path;
  const { getValues, formState } = useFormContext();
  const { fields, append, remove, move, insert } = useFieldArray({ name: path });
  const [open, setOpen] = useState<number>();
  const nameOf = (at: number) =>
    String(getValues(`${path}.${at}.${list.name}`) ?? "") || text.unnamed;
  return (
    <Stack spacing={1}>
      {fields.map((field, at) => (
        <Fold
          key={field.id}
          title={nameOf(at)}
          wrong={get(formState.errors, `${path}.${at}`) !== undefined}
          open={open === at}
          onOpen={() => setOpen(open === at ? undefined : at)}
        >
          <Fields prefix={`${path}.${at}.`} fields={list.fields} />
          {list.lists.map((inner) => (
            <Stack key={inner.id} spacing={0.5}>
              <Typography variant="h4">{lists[inner.id][0]}</Typography>
              <EntryList prefix={`${path}.${at}.`} list={inner} />
            </Stack>
          ))}
          <Box sx={{ display: "flex", flexWrap: "wrap", gap: 0.5 }}>
            <Button
              size="small"
              onClick={() =>
                insert(at + 1, {
                  ...withoutFirstNames(getValues(`${path}.${at}`)),
                  [list.name]: "",
                })
              }
            >
              {text.copy}
            </Button>
            <Button size="small" disabled={at === 0} onClick={() => move(at, at - 1)}>
              {text.up}
            </Button>
            <Button
              size="small"
              disabled={at === fields.length - 1}
              onClick={() => move(at, at + 1)}
            >
              {text.down}
            </Button>
            <Button size="small" onClick={() => remove(at)}>
              {text.remove}
            </Button>
          </Box>
        </Fold>
      ))}
      <Button
        variant="outlined"
        size="small"
        onClick={() => {
          append({ ...list.fresh });
          setOpen(fields.length);
        }}
      >
        {text.addTo(lists[list.id][1])}
      </Button>
    </Stack>
  );
}
