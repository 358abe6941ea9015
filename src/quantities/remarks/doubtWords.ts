import { ar } from "./ar/doubts";
import { de } from "./de/doubts";
import { en } from "./en/doubts";
import { es } from "./es/doubts";
import { fr } from "./fr/doubts";
import { it } from "./it/doubts";
import type { DoubtWords } from "./language";
import { pt } from "./pt/doubts";

/** Words of doubt, in the languages of intake. */
export const DOUBT_WORDS: readonly DoubtWords[] = [en, de, fr, es, pt, it, ar];
