import { ar } from "./ar/work";
import { de } from "./de/work";
import { en } from "./en/work";
import { es } from "./es/work";
import { fr } from "./fr/work";
import { it } from "./it/work";
import type { WorkWords } from "./language";
import { pt } from "./pt/work";

/** Words for what a crew did around its tests, in the languages of intake. */
export const WORK_WORDS: readonly WorkWords[] = [en, de, fr, es, pt, it, ar];
