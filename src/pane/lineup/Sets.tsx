import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useState } from "react";
import { FormProvider, useForm, useFormContext, useWatch } from "react-hook-form";
import { type EquipmentSet, equipmentSets, withSet } from "../../lineup/equipmentSets";
import { useText } from "../../report/text";
import { Choice } from "../Choice";
import { EntryList } from "./EntryList";
import { Fold } from "./Fold";
import { type FormList, PANEL_LISTS } from "./fields";
import { PanelChoice } from "./PanelChoice";

type Draft = Readonly<Record<string, unknown>>;

/** Equipment that several panels have alike: changed once, and put into panels chosen by type or one by one. */
export function Sets(): ReactElement {
  const { lineup: text, lists } = useText();
  const panels = (useWatch({ name: "panels" }) ?? []) as readonly Draft[];
  const [list, setList] = useState<FormList>(PANEL_LISTS[0] as FormList);
  const [open, setOpen] = useState<number | "new">();
  /** Counts what was put into panels, after which a set is made anew from what they have. */
  const [put, setPut] = useState(0);
  const sets = equipmentSets(panels, list.path);
  if (panels.length === 0) return <Typography variant="body2">{text.sets.noPanels}</Typography>;
  const nameOf = ({ entries }: EquipmentSet) =>
    entries.map((entry) => String(entry[list.name] ?? "")).join(", ");
  const toggle = (next: number | "new") => setOpen(open === next ? undefined : next);
  const one = (set: EquipmentSet) => (
    <OneSet
      key={put}
      list={list}
      panels={panels}
      set={set}
      done={() => {
        setPut(put + 1);
        setOpen(undefined);
      }}
    />
  );
  return (
    <>
      <Typography variant="body2" color="text.secondary">
        {text.sets.help}
      </Typography>
      <Choice
        label={text.sets.list}
        value={list.id}
        choices={PANEL_LISTS.map(({ id }) => ({ value: id, label: lists[id][0] }))}
        onChoose={(id) => {
          setList(PANEL_LISTS.find((one) => one.id === id) ?? list);
          setOpen(undefined);
        }}
      />
      {sets.map((set, at) => (
        <Fold
          key={set.panels[0]}
          title={text.sets.title(nameOf(set), set.panels.length)}
          open={open === at}
          onOpen={() => toggle(at)}
        >
          {one(set)}
        </Fold>
      ))}
      <Fold title={text.sets.new} open={open === "new"} onOpen={() => toggle("new")}>
        {one({ entries: [{ ...list.fresh }], panels: [] })}
      </Fold>
    </>
  );
}

/** One set: its entries, the panels that get it, and what it takes the place of there. */
function OneSet({
  list,
  panels,
  set,
  done,
}: {
  list: FormList;
  panels: readonly Draft[];
  set: EquipmentSet;
  done: () => void;
}): ReactElement {
  const text = useText().lineup;
  const { setValue } = useFormContext();
  const form = useForm({ defaultValues: { [list.path]: structuredClone(set.entries) } });
  const [chosen, setChosen] = useState<ReadonlySet<number>>(new Set(set.panels));
  const own = (at: number) => (panels[at]?.[list.path] as readonly Draft[] | undefined) ?? [];
  const isOther = (at: number) => own(at).length > 0 && !set.panels.includes(at);
  const replaced = [...chosen].filter(isOther).length;
  const apply = () => {
    const entries = (form.getValues(list.path) ?? []) as readonly Draft[];
    for (const at of chosen)
      setValue(`panels.${at}.${list.path}`, withSet(panels[at] ?? {}, list.path, entries), {
        shouldDirty: true,
      });
    // Once, for what was set last: the whole lineup is checked each time.
    const [first] = chosen;
    if (first !== undefined)
      setValue(`panels.${first}.type`, panels[first]?.type, { shouldValidate: true });
    done();
  };
  return (
    <Stack spacing={1}>
      <FormProvider {...form}>
        <EntryList list={list} />
      </FormProvider>
      <Typography variant="body2" color="text.secondary">
        {text.sets.own}
      </Typography>
      <PanelChoice
        panels={panels}
        chosen={chosen}
        choose={setChosen}
        isOther={isOther}
        stateOf={(at) => {
          if (set.panels.includes(at)) return text.sets.has;
          const names = own(at).map((entry) => String(entry[list.name] ?? ""));
          return names.length > 0 ? text.sets.hasOther(names.join(", ")) : text.sets.hasNone;
        }}
      />
      {replaced > 0 && <Typography color="error">{text.sets.replaces(replaced)}</Typography>}
      <Button variant="contained" disabled={chosen.size === 0} onClick={apply}>
        {text.sets.apply(chosen.size)}
      </Button>
    </Stack>
  );
}
