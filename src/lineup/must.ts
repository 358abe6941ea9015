import type { Told } from "../messages/told";

/** The key by which the messages say what a field must be. */
export type Must = keyof Told["lineup"]["must"];

/** What a schema says where a field is not as it must be: a key of the messages, which put it into words. */
export const must = (key: Must): string => key;
