import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import { type ReactElement, useState } from "react";
import { get, useFieldArray, useFormContext, useWatch } from "react-hook-form";
import { withoutFirstNames } from "../../lineup/renamed";
import { nextFree } from "../../lineup/series";
import { Elevation } from "../../report/Elevation";
import { useText } from "../../report/text";
import { AddSeries } from "./AddSeries";
import { EntryList } from "./EntryList";
import { Fields } from "./Fields";
import { Fold } from "./Fold";
import { BREAKER, GAS, PANEL, PANEL_LISTS } from "./fields";
import { PasteList } from "./PasteList";

type Draft = Record<string, unknown>;

/** The panels as they stand from left to right: drawn, added, described, moved, copied, taken out. */
export function Panels(): ReactElement {
  const text = useText().lineup;
  const { getValues, formState } = useFormContext();
  const { fields, append, remove, move, insert } = useFieldArray({ name: "panels" });
  const [open, setOpen] = useState<number>();
  const [adding, setAdding] = useState<"series" | "paste">();
  const designations = () => (getValues("panels") as Draft[]).map((one) => String(one.designation));
  const last = (): Draft => (getValues("panels") as Draft[]).at(-1) ?? {};
  const add = (panels: readonly Draft[]) => {
    append(panels.map((panel) => ({ ...panel })));
    setAdding(undefined);
  };
  const copy = (at: number) => {
    const panel = getValues(`panels.${at}`) as Draft;
    insert(at + 1, {
      ...withoutFirstNames(structuredClone(panel)),
      designation: nextFree(String(panel.designation ?? ""), designations()),
    });
    setOpen(at + 1);
  };
  return (
    <Stack spacing={1}>
      <Drawn open={open} choose={setOpen} />
      {fields.map((field, at) => (
        <Fold
          key={field.id}
          title={text.panelTitle(
            String(getValues(`panels.${at}.designation`) || text.unnamed),
            String(getValues(`panels.${at}.name`) || getValues(`panels.${at}.type`) || ""),
          )}
          wrong={get(formState.errors, `panels.${at}`) !== undefined}
          open={open === at}
          onOpen={() => setOpen(open === at ? undefined : at)}
        >
          <OnePanel at={at} />
          <Box sx={{ display: "flex", flexWrap: "wrap", gap: 0.5 }}>
            <Button size="small" onClick={() => copy(at)}>
              {text.copy}
            </Button>
            <Button
              size="small"
              disabled={at === 0}
              onClick={() => {
                move(at, at - 1);
                setOpen(at - 1);
              }}
            >
              {text.earlier}
            </Button>
            <Button
              size="small"
              disabled={at === fields.length - 1}
              onClick={() => {
                move(at, at + 1);
                setOpen(at + 1);
              }}
            >
              {text.later}
            </Button>
            <Button
              size="small"
              onClick={() => {
                remove(at);
                setOpen(undefined);
              }}
            >
              {text.remove}
            </Button>
          </Box>
        </Fold>
      ))}
      <Stack direction="row" sx={{ flexWrap: "wrap", gap: 1 }}>
        <Button
          variant="outlined"
          size="small"
          onClick={() => {
            const { designation = "=H00", section = "Bus A" } = last();
            add([
              {
                designation: nextFree(String(designation), designations()),
                type: "feeder",
                section,
              },
            ]);
            setOpen(fields.length);
          }}
        >
          {text.addPanel}
        </Button>
        <Button
          variant="outlined"
          size="small"
          aria-expanded={adding === "series"}
          onClick={() => setAdding(adding === "series" ? undefined : "series")}
        >
          {text.addSeries}
        </Button>
        <Button
          variant="outlined"
          size="small"
          aria-expanded={adding === "paste"}
          onClick={() => setAdding(adding === "paste" ? undefined : "paste")}
        >
          {text.paste}
        </Button>
      </Stack>
      {adding === "series" && (
        <AddSeries
          first={nextFree(String(last().designation ?? "=H00"), designations())}
          section={String(last().section ?? "Bus A")}
          add={add}
        />
      )}
      {adding === "paste" && <PasteList add={add} />}
    </Stack>
  );
}

/** The elevation as the form has it now. */
function Drawn({
  open,
  choose,
}: {
  open: number | undefined;
  choose: (at: number) => void;
}): ReactElement | undefined {
  const messages = useText();
  const panels = (useWatch({ name: "panels" }) ?? []) as Draft[];
  const project = useWatch({ name: "project.name" }) as string | undefined;
  if (panels.length === 0) return undefined;
  const drawn = panels.map((panel, at) => ({
    ...panel,
    designation: String(panel.designation ?? "") || `${at + 1}`,
    section: String(panel.section ?? ""),
    type: String(panel.type ?? ""),
    breaker: panel.breaker as never,
  }));
  return (
    <Box sx={{ overflowX: "auto" }} role="group" aria-label={messages.state.elevation} dir="ltr">
      <Elevation
        lineup={{ project: { name: project ?? "" }, panels: drawn as never }}
        least={60}
        onChoose={(object) => {
          const at = drawn.findIndex(({ designation }) => designation === object);
          if (at >= 0) choose(at);
        }}
        {...(open === undefined ? {} : { chosen: drawn[open]?.designation ?? "" })}
      />
    </Box>
  );
}

function OnePanel({ at }: { at: number }): ReactElement {
  const { lineup: text, lists } = useText();
  const prefix = `panels.${at}.`;
  const { setValue, getValues, formState } = useFormContext();
  const breaker = useWatch({ name: `${prefix}breaker` }) as Draft | undefined;
  const [list, setList] = useState<string>();
  const count = (path: string) => ((getValues(prefix + path) ?? []) as unknown[]).length;
  const change = (path: string, value: unknown) =>
    setValue(prefix + path, value, { shouldDirty: true, shouldValidate: true });
  return (
    <>
      <Fields prefix={prefix} fields={PANEL} />
      <label style={{ display: "flex", gap: 8, alignItems: "center", minHeight: 44 }}>
        <input
          type="checkbox"
          checked={breaker !== undefined}
          style={{ width: 22, height: 22 }}
          onChange={({ target }) =>
            change("breaker", target.checked ? { designation: "Q0", medium: "vacuum" } : undefined)
          }
        />
        {text.hasBreaker}
      </label>
      {breaker !== undefined && <Fields prefix={prefix} fields={BREAKER} />}
      {breaker?.medium === "SF6" && (
        <label style={{ display: "flex", gap: 8, alignItems: "center", minHeight: 44 }}>
          <input
            type="checkbox"
            checked={breaker.gas !== undefined}
            style={{ width: 22, height: 22 }}
            onChange={({ target }) =>
              change("breaker.gas", target.checked ? { pressure: "gauge" } : undefined)
            }
          />
          {text.hasGas}
        </label>
      )}
      {breaker?.gas !== undefined && <Fields prefix={prefix} fields={GAS} />}
      {PANEL_LISTS.map((one) => (
        <Fold
          key={one.path}
          title={`${lists[one.id][0]} (${count(one.path)})`}
          wrong={get(formState.errors, prefix + one.path) !== undefined}
          open={list === one.path}
          onOpen={() => setList(list === one.path ? undefined : one.path)}
        >
          <EntryList prefix={prefix} list={one} />
        </Fold>
      ))}
    </>
  );
}
