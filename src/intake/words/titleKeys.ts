import { plainWords } from "./plainWords";

/**
 * What a column is called by: its title in plain words, and of several columns with one title its number
 * among them after a hash.
 *
 * @example titleKey("R (MΩ)#2") // "r mω#2"
 */
export const titleKey = (written: string): string => {
  const [, title, number] = /^(.*[^\s#])#(\d{1,4})$/.exec(written.trim()) ?? [];
  return title === undefined ? plainWords(written) : `${plainWords(title)}#${Number(number)}`;
};

/**
 * For each title what it may be called by, that first which counts first.
 *
 * @example titleKeys(["R", "R"])[1] // ["r#2", "r", "r"]
 */
export const titleKeys = (titles: readonly string[]): string[][] => {
  const sofar = new Map<string, number>();
  return titles.map((title) => {
    const plain = plainWords(title);
    const number = (sofar.get(plain) ?? 0) + 1;
    sofar.set(plain, number);
    return [`${plain}#${number}`, titleKey(title), plain];
  });
};

/**
 * The titles, those that were there before with their number.
 *
 * @example numbered(["R", "R", ""]) // ["R", "R#2", ""]
 */
export const numbered = (titles: readonly string[]): string[] =>
  titleKeys(titles).map(([key = ""], at) => {
    const title = titles[at] ?? "";
    const number = key.slice(key.lastIndexOf("#"));
    return title === "" || number === "#1" ? title : `${title}${number}`;
  });
