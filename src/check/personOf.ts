import type { Row } from "../records/kind";

/** A crew is at several places at once. */
const CREW = /crew|team|gang|shift|kolonne|equipe|cuadrilla|brigada|فريق/i;

/** Who made a record, where that is one person. */
export function personOf({ by }: Row): string | undefined {
  const person = String(by ?? "").trim();
  return person === "" || CREW.test(person) ? undefined : person;
}
