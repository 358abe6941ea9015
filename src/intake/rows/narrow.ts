import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import { type Answer, answer, type Result, refuse } from "../../quantities/result";
import { plainWords } from "../words/plainWords";
import { pointKey, pointKeys } from "../words/pointKey";
import type { Candidate } from "./candidates";
import { type Lost, lost, someNames } from "./lost";
import type { RecordRows } from "./recordRows";

const TITLES = { position: "Combination", stage: "Stage" } as const;

/**
 * The candidates that agree in one key. Those whose kind knows no stage agree with every stage; a line
 * that names a position means a row that has one.
 */
export const narrow = <T extends RecordRows>(
  rows: readonly Candidate<T>[],
  key: "position" | "stage",
  written: string,
  read: (text: string) => Result<string, Told>,
): Answer<readonly Candidate<T>[]> | Lost => {
  const without = rows.filter((row) => row[key] === "");
  if (without.length === rows.length && (key === "stage" || written === "")) return answer(rows);
  const choices = someNames(rows.map((row) => row[key]));
  const object = rows[0]?.object;
  if (written === "")
    return without.length > 0
      ? answer(without)
      : refuse("none", ({ intake: { rows: text } }) =>
          text.noName(text.names[key], TITLES[key], choices),
        );
  const named = key === "position" ? atPosition(rows, written) : [];
  if (named.length > 0) return answer(named);
  const wanted = read(written);
  if (!wanted.ok)
    return key === "position"
      ? lost(
          key,
          written,
          rows.map((row) => row[key]),
          wanted.say,
        )
      : wanted;
  const agreeing = agreeingIn(rows, key, wanted.value);
  return agreeing.length > 0
    ? answer(agreeing)
    : lost(
        key,
        written,
        rows.map((row) => row[key]),
        ({ intake: { rows: text } }) =>
          choices === ""
            ? text.noRowBy(object, text.names[key])
            : text.unknown(text.names[key], quoted(written), object, choices),
      );
};

/** The rows at a position as it is written, or at the same point of a test. */
const atPosition = <T extends RecordRows>(rows: readonly Candidate<T>[], written: string) => {
  const verbatim = rows.filter(({ position }) => plainWords(position) === plainWords(written));
  if (verbatim.length > 0) return verbatim;
  const points = rows.filter(({ position }) => isPoint(position));
  for (const key of pointKeys(written)) {
    const found = points.filter(({ position }) => pointKey(position) === key);
    if (found.length > 0) return found;
  }
  return [];
};

/** A point of a test, such as a multiple of a pick-up or a share of full scale, and no phase. */
const isPoint = (position: string): boolean => !/^L[123]/.test(position);

/** The candidates whose key is what is wanted. */
const agreeingIn = <T extends RecordRows>(
  rows: readonly Candidate<T>[],
  key: "position" | "stage",
  wanted: string,
): readonly Candidate<T>[] => {
  const exact = rows.filter((row) => row[key] === wanted);
  if (key === "stage") return [...exact, ...rows.filter((row) => row[key] === "")];
  if (exact.length > 0) return exact;
  const toEarth = rows.filter((row) => row.table.kind.phasesToEarth && `${row[key]}-E` === wanted);
  return toEarth.length > 0 ? toEarth : onlyToEarth(rows, wanted);
};

/** The rows of a phase to earth that is named alone, where there are none of it to another phase or across its pole. */
const onlyToEarth = <T extends RecordRows>(
  rows: readonly Candidate<T>[],
  phase: string,
): readonly Candidate<T>[] => {
  const isOf = ({ position }: Candidate<T>) => position.split(/[- ]/).includes(phase);
  const ofPhase = rows.filter(isOf);
  return /^L[123]$/.test(phase) && ofPhase.every(({ position }) => position === `${phase}-E`)
    ? ofPhase
    : [];
};
