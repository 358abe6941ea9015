import { NOT_FOUND } from "../support/audit/notFound";
import { SECOND_NOT_FOUND } from "../support/audit/secondNotFound";
import { type AuditResult, auditRun, isToldAt } from "../support/auditRun";
import { FILLED_NOT_FOUND, filledRun } from "../support/filledAudits";
import { secondRun } from "../support/secondAudit";
import { tableText } from "./tableText";

/** An auditor's own faults and harmless differences, asked for and put into words. */
export const auditorsFamily = async (): Promise<Family> =>
  familyOf(
    await auditRun(),
    NOT_FOUND,
    "put by hand into a filled workbook of an invented lineup by an auditor who had not seen the rules",
  );

/** The same of a second auditor, in the sample of metal-clad gear. */
export const secondFamily = async (): Promise<Family> =>
  familyOf(
    await secondRun(),
    SECOND_NOT_FOUND,
    "put by hand into the filled sample of metal-clad gear, of other sorts, after which what was missed was mended",
  );

/** The same of a third auditor, in both filled samples. */
export const thirdFamily = async (): Promise<Family> =>
  familyOf(
    await filledRun("third"),
    FILLED_NOT_FOUND,
    "put by hand into both filled samples by an auditor of whose faults another half is kept from whoever writes rules, after which what was missed was mended",
  );

/** The same of a fourth auditor, whose second set of faults was made to be hard to find. */
export const fourthFamily = async (): Promise<Family> =>
  familyOf(
    await filledRun("fourth"),
    FILLED_NOT_FOUND,
    "put by hand into both filled samples by an auditor whose other half is still kept from whoever writes rules, after which what was missed was mended",
  );

/** The same of a fifth auditor, who had seen neither rules nor the other auditors' faults. */
export const fifthFamily = async (): Promise<Family> =>
  familyOf(
    await filledRun("fifth"),
    FILLED_NOT_FOUND,
    "put by hand into both filled samples by an auditor whose other half is still kept from whoever writes rules, after which what was missed was mended",
  );

interface Family {
  readonly text: string;
  readonly missed: string[];
}

function familyOf(
  { faults, harmless }: Awaited<ReturnType<typeof auditRun>>,
  notFound: ReadonlyMap<string, string>,
  how: string,
): Family {
  const sorts = new Map<string, AuditResult[]>();
  for (const result of faults)
    sorts.set(result.fault.sort, [...(sorts.get(result.fault.sort) ?? []), result]);
  const alarms = harmless.filter(({ findings }) => findings.length > 0);
  const found = count(faults, "found");
  const missed = faults.filter(({ told }) => told !== "found");
  const text = [
    `${faults.length} single faults of ${sorts.size} sorts, ${how}: ${((100 * found) / faults.length).toFixed(1)} % found at a place where he looks for them. Of ${harmless.length} harmless differences ${alarms.length} raise an alarm.`,
    "",
    tableText([
      ["an auditor's fault", "put in", "found", "told elsewhere", "missed", "found by"],
      ...[...sorts].map(([sort, results]) => lineOf(sort, results)),
      lineOf("all", faults).with(-1, ""),
    ]),
    ...(missed.length === 0 ? [] : ["", "Not found:", ""]),
    ...missed.map(({ fault: { id, sort } }) => `- ${sort}: ${notFound.get(id) ?? id}`),
  ].join("\n");
  return {
    text,
    missed: [
      ...missed.map(({ fault: { id, sort } }) => `${sort}: ${id}`),
      ...alarms.map(({ fault: { id, sort } }) => `alarm: ${sort}: ${id}`),
    ],
  };
}

const count = (results: readonly AuditResult[], told: AuditResult["told"]): number =>
  results.filter((one) => one.told === told).length;

function lineOf(sort: string, results: readonly AuditResult[]): string[] {
  const rules = results.flatMap(({ fault, findings }) =>
    findings.filter((finding) => isToldAt(fault, finding)).map(({ rule }) => rule),
  );
  return [
    sort,
    String(results.length),
    String(count(results, "found")),
    String(count(results, "elsewhere")),
    String(count(results, "missed")),
    [...new Set(rules)].join(", "),
  ];
}
