import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useState } from "react";
import type { Report } from "../../check/check";
import { isOpen } from "../../check/findings/finding";
import { countWords, matrix } from "../../check/progress/matrix";
import { namedInstruments } from "../../records/instruments";
import { useText } from "../../report/text";
import { CountChips } from "../CountChips";
import { useLocale } from "../locale";
import type { StepProps } from "../shared";
import { Compare } from "./Compare";
import { MakeFolder } from "./MakeFolder";

/** What the records come to: counts by record, what is open, which instruments were used. */
export default function HandOverStep({ host, book, work, read, go }: StepProps): ReactElement {
  const messages = useText();
  const text = messages.handOver;
  const locale = useLocale();
  const [final, setFinal] = useState<Report>();
  const checked = book?.report;
  const report = final && final.context.book === checked?.context.book ? final : checked;
  if (!report)
    return (
      <Typography>
        {book ? messages.check.cannot(book.uncheckable ?? "") : messages.notRead}
      </Typography>
    );
  const { context, findings, counts } = report;
  const { project, ratings } = context.lineup;
  const table = matrix(context);
  const open = findings.filter((finding) => finding.weight !== "note" && isOpen(finding));
  const used = usedInstruments(report.context);
  const instrument = (id: string) => {
    const known = context.instruments?.get(id.toLowerCase());
    return known
      ? `${id} · ${known.serial}${typeof known.due === "number" ? `, ${text.due(locale.day(known.due))}` : ""}`
      : `${id}: ${text.notListed}`;
  };
  const copy = () =>
    work.run(async () => {
      const lines = [
        `${project.name}, ${project.site}, ${ratings.voltagekV} kV`,
        countWords(counts, messages.findings),
        "",
        text.byRecord,
        ...table.kinds.map(
          ({ id, title }) => `${title}\t${countWords(table.total(id), messages.findings)}`,
        ),
        "",
        text.punch,
        ...open.map(
          ({ weight, sheet, address, message }) =>
            `${messages.check.weights[weight]}\t${sheet}!${address}\t${message}`,
        ),
        "",
        text.instruments,
        ...used.map(instrument),
        "",
        messages.caution,
      ];
      try {
        await navigator.clipboard.writeText(lines.join("\n"));
        work.setTold(text.copied);
      } catch {
        work.setProblem(text.cannotCopy);
      }
    });
  const checkFinally = () =>
    work.run(async () => {
      const { check } = await import("../engine");
      const found = check(context.book, context.today, context.text, true);
      if (found.ok) setFinal(found.report);
      work.setTold(text.checked);
    });
  const updatePunch = () =>
    work.run(async (watch) => {
      const { openItems, punchChanges } = await import("../../check/punch/punchWrites");
      await host.change(punchChanges(report), watch);
      await read(watch);
      work.setTold(text.punchUpdated(openItems(report)));
    });
  return (
    <Stack spacing={2}>
      <Box>
        <Typography variant="h2">{text.heading}</Typography>
        <Typography>
          {project.name}, {project.site}
        </Typography>
      </Box>
      <CountChips counts={counts} label={messages.state.counts} all />
      <Button variant="contained" onClick={checkFinally} disabled={work.busy || report === final}>
        {text.check}
      </Button>
      <Button variant="outlined" onClick={copy} disabled={work.busy}>
        {text.copy}
      </Button>
      <Button variant="outlined" onClick={updatePunch} disabled={work.busy}>
        {text.updatePunch}
      </Button>
      <MakeFolder host={host} work={work} />
      <Compare report={report} work={work} go={go} />
      <Box component="section" aria-labelledby="by-record">
        <Typography id="by-record" variant="h3">
          {text.byRecord}
        </Typography>
        <Box component="dl" sx={{ m: 0 }}>
          {table.kinds.map(({ id, title }) => (
            <Box key={id} sx={{ py: 0.5, borderBottom: 1, borderColor: "divider" }}>
              <dt>{title}</dt>
              <Box component="dd" sx={{ m: 0 }}>
                <CountChips
                  counts={table.total(id)}
                  label={countWords(table.total(id), messages.findings)}
                />
              </Box>
            </Box>
          ))}
        </Box>
      </Box>
      <Box component="section" aria-labelledby="punch">
        <Typography id="punch" variant="h3">
          {text.punch} ({locale.number(open.length)})
        </Typography>
        {open.length === 0 && <Typography>{text.punchNone}</Typography>}
        <Box component="ol" sx={{ paddingInlineStart: 3, my: 0.5 }}>
          {open.slice(0, 200).map(({ rule, weight, sheet, address, message }) => (
            <li key={`${rule}${sheet}${address}${message}`}>
              <Typography variant="body2" sx={{ overflowWrap: "anywhere" }}>
                {messages.check.weights[weight]} · {sheet}!{address}: {message}
              </Typography>
            </li>
          ))}
        </Box>
        {open.length > 200 && <Typography>{messages.state.more(open.length - 200)}</Typography>}
      </Box>
      <Box component="section" aria-labelledby="instruments">
        <Typography id="instruments" variant="h3">
          {text.instruments}
        </Typography>
        {used.map((id) => (
          <Typography key={id} variant="body2">
            {instrument(id)}
          </Typography>
        ))}
      </Box>
    </Stack>
  );
}

/** Ids of the instruments that records name, each once. */
const usedInstruments = ({
  tables,
}: NonNullable<NonNullable<StepProps["book"]>["report"]>["context"]) =>
  [
    ...new Set(
      tables.flatMap(({ rows }) => rows.flatMap(({ instrument }) => namedInstruments(instrument))),
    ),
  ].sort();
