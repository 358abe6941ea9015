import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useState } from "react";
import {
  get,
  type UseFieldArrayReturn,
  useFieldArray,
  useFormContext,
  useWatch,
} from "react-hook-form";
import { breakerName } from "../../lineup/breakerName";
import { withoutFirstNames } from "../../lineup/renamed";
import { nextFree } from "../../lineup/series";
import { USUAL_PARTS, undescribed } from "../../lineup/undescribed";
import { Elevation } from "../../report/Elevation";
import { SingleLine } from "../../report/SingleLine";
import { useText } from "../../report/text";
import { AddSeries } from "./AddSeries";
import { EntryList } from "./EntryList";
import { Fields } from "./Fields";
import { Fold } from "./Fold";
import { BREAKER, GAS, PANEL, PANEL_LISTS } from "./fields";
import { PanelTable } from "./PanelTable";
import { PasteList } from "./PasteList";

type Draft = Record<string, unknown>;

/** The panels as they stand from left to right: drawn, added, described, moved, copied, taken out. */
export function Panels(): ReactElement {
  const text = useText().lineup;
  const { getValues } = useFormContext();
  const panels = useFieldArray({ name: "panels" });
  const breaker = breakerName(useWatch({ name: "basis" }));
  const [open, setOpen] = useState<number>();
  const [asTable, setAsTable] = useState(false);
  const [adding, setAdding] = useState<Adding>();
  const designations = () => (getValues("panels") as Draft[]).map((one) => String(one.designation));
  const { designation = "=H00", section = "Bus A" } =
    ((getValues("panels") ?? []) as Draft[]).at(-1) ?? {};
  const next = () => nextFree(String(designation), designations());
  const add = (more: readonly Draft[]) => {
    panels.append(more.map((panel) => ({ ...panel })));
    setAdding(undefined);
  };
  const addOne = (named: string) => add([{ designation: named, type: "feeder", section }]);
  return (
    <Stack spacing={1}>
      <Drawn open={open} choose={setOpen} />
      <Button
        size="small"
        variant="outlined"
        aria-pressed={asTable}
        onClick={() => setAsTable(!asTable)}
      >
        {asTable ? text.asList : text.asTable}
      </Button>
      {asTable ? (
        <>
          <PanelTable
            panels={panels.fields.length}
            breaker={breaker}
            start={addOne}
            paste={(pasted) => setAdding({ how: "paste", pasted })}
          />
          <Typography variant="body2" color="text.secondary">
            {text.tableHelp}
          </Typography>
        </>
      ) : (
        <PanelFolds panels={panels} open={open} setOpen={setOpen} designations={designations} />
      )}
      <AddPanels
        adding={adding}
        setAdding={setAdding}
        addOne={() => {
          addOne(next());
          setOpen(panels.fields.length);
        }}
      />
      {adding?.how === "series" && (
        <AddSeries first={next()} section={String(section)} breaker={breaker} add={add} />
      )}
      {adding?.how === "paste" && (
        <PasteList key={adding.pasted} initial={adding.pasted} breaker={breaker} add={add} />
      )}
    </Stack>
  );
}

/** What is open for adding panels, and what was pasted for it already. */
type Adding = { readonly how: "series" } | { readonly how: "paste"; readonly pasted: string };

/** The ways to add panels. */
function AddPanels({
  adding,
  setAdding,
  addOne,
}: {
  adding: Adding | undefined;
  setAdding: (adding: Adding | undefined) => void;
  addOne: () => void;
}): ReactElement {
  const text = useText().lineup;
  const toggle = (next: Adding, label: string) => (
    <Button
      variant="outlined"
      size="small"
      aria-expanded={adding?.how === next.how}
      onClick={() => setAdding(adding?.how === next.how ? undefined : next)}
    >
      {label}
    </Button>
  );
  return (
    <Stack direction="row" sx={{ flexWrap: "wrap", gap: 1 }}>
      <Button variant="outlined" size="small" onClick={addOne}>
        {text.addPanel}
      </Button>
      {toggle({ how: "series" }, text.addSeries)}
      {toggle({ how: "paste", pasted: "" }, text.paste)}
    </Stack>
  );
}

/** The panels below each other, each with all that there is to say of it. */
function PanelFolds({
  panels: { fields, insert, move, remove },
  open,
  setOpen,
  designations,
}: {
  panels: UseFieldArrayReturn;
  open: number | undefined;
  setOpen: (at: number | undefined) => void;
  designations: () => readonly string[];
}): ReactElement {
  const text = useText().lineup;
  const { getValues, formState } = useFormContext();
  const copy = (at: number) => {
    const panel = getValues(`panels.${at}`) as Draft;
    insert(at + 1, {
      ...withoutFirstNames(structuredClone(panel)),
      designation: nextFree(String(panel.designation ?? ""), designations()),
    });
    setOpen(at + 1);
  };
  const moveTo = (at: number, to: number) => {
    move(at, to);
    setOpen(to);
  };
  const takeOut = (at: number) => {
    remove(at);
    setOpen(undefined);
  };
  return (
    <>
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
            <Button size="small" disabled={at === 0} onClick={() => moveTo(at, at - 1)}>
              {text.earlier}
            </Button>
            <Button
              size="small"
              disabled={at === fields.length - 1}
              onClick={() => moveTo(at, at + 1)}
            >
              {text.later}
            </Button>
            <Button size="small" onClick={() => takeOut(at)}>
              {text.remove}
            </Button>
          </Box>
        </Fold>
      ))}
    </>
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
    <>
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
        <SingleLine panels={drawn as never} least={60} />
      </Box>
      <Lacking panels={drawn} />
    </>
  );
}

/** So many panels are named of those that lack something. */
const NAMED = 6;

/** What panels of their type usually have and these are not said to have: dashed in the drawing. */
function Lacking({ panels }: { panels: readonly Draft[] }): ReactElement | undefined {
  const { lineup: text, report } = useText();
  const lines = USUAL_PARTS.flatMap((part) => {
    const names = panels
      .filter((panel) => undescribed(panel).includes(part))
      .map(({ designation }) => String(designation));
    const [some, more] = [names.slice(0, NAMED), Math.max(0, names.length - NAMED)];
    return names.length > 0 ? [text.lacking(report.parts[part], some, more)] : [];
  });
  if (lines.length === 0) return undefined;
  return (
    <Box>
      <Typography variant="body2">{text.lackingHeading}</Typography>
      <Box component="ul" sx={{ m: 0, paddingInlineStart: 2.5 }}>
        {lines.map((line) => (
          <li key={line}>
            <Typography variant="body2">{line}</Typography>
          </li>
        ))}
      </Box>
    </Box>
  );
}

function OnePanel({ at }: { at: number }): ReactElement {
  const { lineup: text, lists } = useText();
  const prefix = `panels.${at}.`;
  const { setValue, getValues, formState } = useFormContext();
  const breaker = useWatch({ name: `${prefix}breaker` }) as Draft | undefined;
  const designation = breakerName(useWatch({ name: "basis" }));
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
            change("breaker", target.checked ? { designation, medium: "vacuum" } : undefined)
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
