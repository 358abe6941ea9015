import { beyond, limitOf } from "../../sheets/plan/limits";
import { damaged } from "../package/readArchive";
import { TagReader } from "./tagReader";
import { textIn } from "./textIn";

/** The texts that cells share, each made when it is first asked for. */
export interface SharedTexts {
  readonly count: number;
  readonly text: (index: number) => string;
  /** The text where it is all of one look and nothing says how it is spoken. */
  readonly plain: (index: number) => string | undefined;
}

export const NO_TEXTS: SharedTexts = { count: 0, text: () => "", plain: () => undefined };

const LT = 60;

/** @param bytes of the part of shared strings */
export function sharedTexts(bytes: Uint8Array, part: string): SharedTexts {
  let places = new Uint32Array(2048);
  let count = 0;
  const most = limitOf("texts");
  const tags = new TagReader(bytes, part);
  tags.enter("sst");
  while (!tags.closed && tags.nextChild()) {
    const isText = tags.isNamed("si");
    tags.skipAttributes();
    const from = tags.at;
    tags.skipContent();
    if (!isText) continue;
    if (count === most) throw beyond("texts");
    if (count * 2 === places.length) {
      const longer = new Uint32Array(places.length * 2);
      longer.set(places);
      places = longer;
    }
    places[count * 2] = from;
    places[count * 2 + 1] = tags.contentEnd;
    count += 1;
  }
  const text = (index: number) => {
    if (index >= count) throw damaged(({ book }) => book.why.noText(index, count, part));
    return textIn(bytes, places[index * 2] ?? 0, places[index * 2 + 1] ?? 0, part);
  };
  /** One element alone has two tags, or is one that closes itself. */
  const isPlain = (index: number) => {
    let count = 0;
    for (let at = places[index * 2] ?? 0; at < (places[index * 2 + 1] ?? 0); at++)
      if (bytes[at] === LT) count += 1;
    return count === 2;
  };
  return { count, text, plain: (index) => (isPlain(index) ? text(index) : undefined) };
}
