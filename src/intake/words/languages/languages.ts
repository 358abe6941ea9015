import { ar } from "./ar";
import { de } from "./de";
import { en } from "./en";
import { es } from "./es";
import { fr } from "./fr";
import { it } from "./it";
import type { Language } from "./language";
import { pt } from "./pt";

/** The language of the records themselves. */
export const OWN_LANGUAGE = en;

/** Other languages that exports come in, that first which counts first. */
export const OTHER_LANGUAGES: readonly Language[] = [de, fr, es, pt, it, ar];

export const LANGUAGES: readonly Language[] = [OWN_LANGUAGE, ...OTHER_LANGUAGES];
