import type { WorkWords } from "../language";

/** German. */
export const de: WorkWords = {
  left: {
    things: [
      "brucken?",
      "drahtbrucken?",
      "leitung(?:en)?",
      "klemmen?",
      "erdung(?:en)?",
      "sicherung(?:en)?",
      "kurzschluss-",
      "adern?",
    ],
    still: [
      "noch (?:drin|drauf|gesetzt|offen|gebruckt|eingelegt|abgeklemmt)",
      "nicht (?:wieder|entfernt|zuruckgebaut)",
      "belassen",
    ],
    settled: ["wieder (?:eingelegt|geschlossen|angeschlossen|entfernt)", "danach"],
  },
  repeated: {
    again: ["wiederholt", "erneut gemessen", "zweite messung", "erst(?:er|e) (?:wert|messung)"],
    plain: ["gleich-", "wie vorher", "auf wunsch"],
    explained: ["wiederholt nach", "nach [^ ]+ wiederholt"],
    first: ["erst(?:er|e) (?:wert|messung)"],
  },
  remade: {
    done: ["ausgetauscht", "ersetzt", "zerlegt", "neu (?:verdrahtet|aufgelegt)"],
    idle: ["noch", "messgerat-", "messleitung-", "batterie-", "lampen?", "schild-"],
  },
  compared: ["vergleich-", "verglichen", "gegengepruft", "auch", "ebenfalls"],
  lists: {
    punch: ["mangelliste", "restpunkt(?:e|liste)", "mangel nr"],
    repairs: ["siehe (?:blatt )?(?:reparatur|instandsetzung)-"],
    history: ["siehe (?:messwert)?(?:verlauf|historie)"],
  },
};
