import type { Sense } from "../words/languages/language";
import { partNamed } from "../words/partNamed";

/** What a line of an export says about where it belongs, as written; blank where it says nothing. */
export interface Place {
  readonly object: string;
  readonly part: string;
  readonly position: string;
  readonly stage: string;
  /** Parts that the words around its table speak of. */
  readonly about?: ReadonlySet<Sense>;
}

/** Where one name may end and the next begin: `+K01 CB`, `H03/Q0`, `H03-Q0`. */
const BETWEEN = /[\s/:;,·–-]+/g;

/**
 * What a panel and its part written in one cell may say, each way to part them: the beginning names the
 * panel or section, the rest the part, or the part and its phase or operation. None where the part has a
 * cell of its own.
 *
 * @param isObject whether a text names a panel or section
 * @example splitPlaces({ object: "H03 Q0 L1", part: "", position: "", stage: "" }, (text) => text === "H03")[1] // part "Q0", position "L1"
 */
export const splitPlaces = (place: Place, isObject: (text: string) => boolean): Place[] =>
  place.object !== "" && place.part !== ""
    ? []
    : partings(place.object || place.part)
        .filter(([object]) => isObject(object))
        .flatMap(([object, rest]): Place[] => [
          { ...place, object, part: rest },
          ...partings(rest).flatMap(([part, more]): Place[] => [
            { ...place, object, part, position: `${place.position} ${more}`.trim() },
            { ...place, object, part: partNamed(part, more) },
          ]),
        ]);

/** A text in two, at each place where it can be parted. */
const partings = (text: string): [string, string][] =>
  [...text.matchAll(BETWEEN)].flatMap(({ index, 0: mark }): [string, string][] => {
    const [one, other] = [text.slice(0, index).trim(), text.slice(index + mark.length).trim()];
    return one === "" || other === "" ? [] : [[one, other]];
  });
