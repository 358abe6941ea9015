import { deflateSync, Inflate, strFromU8, strToU8 } from "fflate";
import * as z from "zod/mini";
import { synonymFile } from "../intake/words/synonyms";
import type { Lineup } from "../lineup/lineup";
import { readLineup } from "../records/readLineup";
import { BookError } from "../sheets/bookError";
import { type BuiltFormulas, builtFormulas } from "../sheets/cells/builtFormulas";
import { exportMapping } from "../sheets/kept/exportMapping";
import { lastIntake } from "../sheets/kept/lastIntake";
import { layoutMap } from "../sheets/kept/layoutMap";
import { placedReadings } from "../sheets/kept/placedReadings";
import type { Remembered } from "../sheets/kept/remembered";
import { surveyAnswers } from "../sheets/kept/surveyAnswers";
import { beyond, limitOf } from "../sheets/plan/limits";

/** Namespace of our custom XML part, by which it is found again in any workbook. */
export const NAMESPACE = "urn:gearproof:memory:1";

/** What a workbook remembers for us, beyond its cells. */
export interface Memory {
  readonly lineup: Lineup;
  /** The formulas that its last build wrote. */
  readonly formulas?: BuiltFormulas;
}

/** What a workbook remembers that is built for a lineup now. */
export const builtNow = (lineup: Lineup): Memory => ({ lineup, formulas: builtFormulas(lineup) });

/** The custom XML part that holds a memory. */
export const memoryXml = ({ lineup, formulas }: Memory): string =>
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<gearproof xmlns="${NAMESPACE}"${formulas ? ` formulas="${[...formulas].join(" ")}"` : ""}>${escaped(JSON.stringify(lineup))}</gearproof>`;

/** The memory that a custom XML part holds; undefined where it is not ours or cannot be understood. */
export function readMemoryXml(xml: string): Memory | undefined {
  if (!xml.includes(NAMESPACE)) return undefined;
  const json = contentIn(xml);
  const lineup = json === undefined ? undefined : readLineup(unescaped(json));
  if (!lineup?.ok) return undefined;
  const formulas = formulasIn(xml);
  return { lineup: lineup.value, ...(formulas ? { formulas } : {}) };
}

/** The marks of formulas in the start of our element. */
function formulasIn(xml: string): BuiltFormulas | undefined {
  const from = xml.indexOf("<gearproof ");
  const start = xml.slice(from, xml.indexOf(">", from));
  const [, marks] = start.match(/ formulas="([0-9a-z ]*)"/) ?? [];
  return marks === undefined ? undefined : new Set(marks.split(" "));
}

/** Namespace of a second part of ours, for what is remembered of readings; a workbook may lack it. */
export const REMEMBERED_NAMESPACE = "urn:gearproof:remembered:1";

// What a later version remembers besides is passed over, and a part of it that is spoilt costs no other.
const rememberedParts = z.object({
  mappings: z._default(z.catch(z.array(exportMapping), []), []),
  maps: z._default(z.catch(z.array(layoutMap), []), []),
  last: z.catch(z.optional(lastIntake), undefined),
  before: z.catch(z.optional(lastIntake), undefined),
  placed: z.catch(z.optional(placedReadings), undefined),
  noted: z.catch(z.optional(z.record(z.string(), z.string())), undefined),
  words: z.catch(z.optional(synonymFile), undefined),
  survey: z.catch(z.optional(surveyAnswers), undefined),
});

/** The custom XML part that holds what is remembered. */
export const rememberedXml = (remembered: Remembered): string =>
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<gearproof xmlns="${REMEMBERED_NAMESPACE}">${packed(JSON.stringify(remembered))}</gearproof>`;

/** Text from this length on is deflated: Excel on the web takes and gives no more than 5 MB at once. */
const LONG = 100_000;
const DEFLATED = "deflate:";

const packed = (json: string): string =>
  json.length < LONG
    ? escaped(json)
    : `${DEFLATED}${btoa(strFromU8(deflateSync(strToU8(json)), true))}`;

const unpacked = (text: string): string =>
  text.startsWith(DEFLATED)
    ? strFromU8(inflated(strToU8(atob(text.slice(DEFLATED.length)), true)))
    : unescaped(text);

/** So many deflated bytes are unpacked at once: no more than a thousand times as many come of them. */
const PIECE = 4096;

/** @throws {BookError} where it comes to more than a workbook may remember */
function inflated(packed: Uint8Array): Uint8Array {
  const most = limitOf("remembered");
  const pieces: Uint8Array[] = [];
  let length = 0;
  const stream = new Inflate((piece) => {
    length += piece.length;
    if (length > most) throw beyond("remembered");
    pieces.push(piece);
  });
  for (let at = 0; at < packed.length || at === 0; at += PIECE)
    stream.push(packed.subarray(at, at + PIECE), at + PIECE >= packed.length);
  const whole = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** What stands in our element; undefined where it is not there, or not closed. */
function contentIn(xml: string): string | undefined {
  const from = xml.indexOf(">", xml.indexOf("<gearproof ")) + 1;
  const to = xml.lastIndexOf("</gearproof>");
  return xml.includes("<gearproof ") && from > 0 && to >= from ? xml.slice(from, to) : undefined;
}

/** What a custom XML part remembers; undefined where it is not ours or cannot be understood. */
export function readRememberedXml(xml: string): Remembered | undefined {
  if (!xml.includes(REMEMBERED_NAMESPACE)) return undefined;
  const json = contentIn(xml);
  try {
    return json === undefined ? undefined : rememberedParts.parse(JSON.parse(unpacked(json)));
  } catch (error) {
    if (error instanceof BookError) throw error;
    return undefined;
  }
}

export const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

export const unescaped = (text: string): string =>
  text
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&apos;", "'")
    .replaceAll("&amp;", "&");
