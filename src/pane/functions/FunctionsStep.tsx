import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useState } from "react";
import { type FunctionGuide, guide } from "../../functions/guide";
import { sourceOf } from "../../functions/sourceOf";
import { useText } from "../../report/text";
import { exampleSheet } from "../../sheets/ours/exampleSheet";
import { Choice } from "../Choice";
import { useLocale } from "../locale";
import type { StepProps } from "../shared";
import { Argument } from "./Argument";
import { type Call, callOf, type Given, reference } from "./call";

/** The worksheet functions: one chosen, its arguments given, its result and source seen, and inserted. */
export default function FunctionsStep({
  done,
  ...shared
}: StepProps & { done: () => void }): ReactElement {
  const text = useText().functions;
  const { host, work } = shared;
  const [chosen, setChosen] = useState(guide[0] as FunctionGuide);
  const examples = () =>
    work.run(async (watch) => {
      const sheet = exampleSheet(guide, sourceOf, text.sheet);
      await host.change({ renew: [sheet] }, watch);
      await host.goTo(sheet.planned.sheet, "A1");
      work.setTold(text.onSheet(sheet.planned.sheet, sheet.planned.rows.length));
    });
  return (
    <Stack spacing={1.25}>
      <Typography variant="h2">{text.heading}</Typography>
      <Typography variant="body2">{text.about}</Typography>
      <Choice
        label={text.choose}
        value={chosen.name}
        choices={guide.map(({ name, text: about }) => ({
          value: name,
          label: text.named(name, firstOf(about)),
        }))}
        onChoose={(name) => setChosen(guide.find((one) => one.name === name) ?? chosen)}
      />
      <OneFunction key={chosen.name} chosen={chosen} {...shared} />
      <Button variant="outlined" disabled={work.busy} onClick={examples}>
        {text.examples}
      </Button>
      <Button variant="text" onClick={done}>
        {text.close}
      </Button>
    </Stack>
  );
}

function OneFunction({ chosen, host, work }: StepProps & { chosen: FunctionGuide }): ReactElement {
  const text = useText().functions;
  const locale = useLocale();
  const [given, setGiven] = useState<readonly (Given | undefined)[]>([]);
  const call = callOf(chosen, given, locale);
  const put = (at: number, one: Given | undefined) =>
    // Of what is there then: another argument may be typed while the cells are being read.
    setGiven((before) => chosen.parameters.map((_, index) => (index === at ? one : before[index])));
  const [example] = chosen.examples;
  const point = (at: number) =>
    work.run(async () => {
      const { sheet, address, values } = await host.selectedCells();
      put(at, { cells: reference(sheet, address), values });
    });
  const insert = () =>
    work.run(async () => {
      const { sheet, address } = await host.insert(call.formula);
      work.setTold(text.inserted(sheet, address));
    });
  const at = chosen.parameters.findIndex(({ name }) => name === "basis");
  const basis = given[at];
  return (
    <>
      <Typography variant="body2">{chosen.text}</Typography>
      <Typography variant="body2">{text.gives(chosen.gives)}</Typography>
      {example && (
        <>
          <Typography variant="body2" color="text.secondary" sx={{ overflowWrap: "anywhere" }}>
            {text.example(example.formula)}
          </Typography>
          <Button
            size="small"
            variant="outlined"
            onClick={() => setGiven(example.arguments.map((one) => givenOf(one, locale.decimal)))}
          >
            {text.useExample}
          </Button>
        </>
      )}
      {chosen.parameters.map((parameter, index) => (
        <Argument
          key={parameter.name}
          parameter={parameter}
          given={given[index]}
          busy={work.busy}
          put={(one) => put(index, one)}
          point={() => point(index)}
        />
      ))}
      <Outcome
        call={call}
        source={sourceOf(
          chosen.name,
          basis && "typed" in basis && (basis.typed === "IEC" || basis.typed === "NETA")
            ? basis.typed
            : undefined,
        )}
      />
      <Button variant="contained" disabled={work.busy || call.missing.length > 0} onClick={insert}>
        {text.insert}
      </Button>
    </>
  );
}

/** What a function is for, as short as a list has room: the first words of its description. */
const firstOf = (about: string): string => (/^[^.,;:(]+/.exec(about)?.[0] ?? about).trim();

/** An argument of an example as it is given: typed, or an array as the formula writes it. */
const givenOf = (
  argument: FunctionGuide["examples"][number]["arguments"][number],
  decimal: string,
): Given =>
  Array.isArray(argument)
    ? { cells: `{${argument.map((row) => row.join(",")).join(";")}}`, values: argument }
    : {
        typed:
          typeof argument === "number"
            ? String(argument).replace(".", decimal)
            : String(argument ?? ""),
      };

/** What the call comes to, with its formula and its source; said anew whenever it changes. */
function Outcome({ call, source }: { call: Call; source: string }): ReactElement {
  const text = useText().functions;
  const { number } = useLocale();
  const results = call.result?.flat() ?? [];
  const [first] = results;
  const error =
    typeof first === "object" && first !== null && "code" in first
      ? (first as { code: string; message?: string })
      : undefined;
  const shown = typeof first === "number" ? number(first) : String(first ?? "");
  return (
    <Stack
      component="section"
      aria-label={text.result}
      aria-live="polite"
      spacing={0.5}
      sx={{ border: 1, borderColor: "divider", p: 1, overflowWrap: "anywhere" }}
    >
      <Typography sx={{ fontFamily: "monospace" }} dir="ltr">
        {call.formula}
      </Typography>
      {call.missing.length > 0 ? (
        <Typography variant="body2">{text.missing(call.missing)}</Typography>
      ) : error ? (
        <Typography color="error">
          {[error.code, error.message].filter(Boolean).join(": ")}
        </Typography>
      ) : (
        <Typography variant="h3" component="p">
          {shown}
        </Typography>
      )}
      {results.length > 1 && (
        <Typography variant="body2">{text.more(results.length - 1)}</Typography>
      )}
      <Typography variant="body2">
        {text.source}: {source}
      </Typography>
    </Stack>
  );
}
