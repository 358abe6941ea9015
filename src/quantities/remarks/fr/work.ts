import type { WorkWords } from "../language";

/** French. */
export const fr: WorkWords = {
  left: {
    things: ["ponts?", "shunts?", "cavaliers?", "liaisons?", "fils?", "terres?", "fusibles?"],
    still: [
      "laissee?s?",
      "encore (?:en place|pose(?:e|s|es)?|ouverte?s?)",
      "(?:pas|non) (?:retire|enleve|remis)-",
    ],
    settled: ["(?:retire|enleve|remis)e?s? apres"],
  },
  repeated: {
    again: ["repetee?s?", "mesuree? (?:de|a) nouveau", "premiere (?:valeur|mesure)"],
    plain: ["identique-", "meme", "a la demande"],
    explained: ["repetee?s? apres"],
    first: ["premiere (?:valeur|mesure)"],
  },
  remade: {
    done: ["remplacee?s?", "demontee?s?"],
    idle: ["piles?", "lampes?", "etiquettes?", "cordons?"],
  },
  compared: ["compar-", "verifi-", "aussi", "egalement"],
  lists: {
    punch: ["liste des reserves", "reserve n"],
    repairs: ["voir (?:la feuille )?reparations?"],
    history: ["voir (?:l.)?historique"],
  },
};
