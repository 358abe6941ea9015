import type { WorkWords } from "../language";

/** Italian. */
export const it: WorkWords = {
  left: {
    things: [
      "ponticell[oi]",
      "cavallott[oi]",
      "fil[oi]",
      "terr[ae]",
      "mess[ae] a terra",
      "fusibil[ei]",
      "interblocc(?:o|hi)",
      "sezionator[ei]",
    ],
    still: [
      "lasciat[oaie]",
      "ancora (?:inserit|apert|collegat|scollegat|mont)-",
      "non (?:rimoss|tolt|ripristinat|ricollegat|richius)-",
      "da (?:rimuovere|togliere|ripristinare|ricollegare|richiudere)",
    ],
    settled: [
      "(?:rimoss|tolt|ripristinat|ricollegat|richius)[oaie] (?:dopo|poi|in seguito)",
      "(?:poi|e) (?:rimoss|tolt|ripristinat|ricollegat|richius)-",
    ],
  },
  repeated: {
    again: [
      "ripetut[oaie]",
      "misurat[oa] di nuovo",
      "rimisurat[oa]",
      "seconda misura",
      "prima (?:lettura|misura)",
      "primo valore",
    ],
    plain: ["stess[oa]", "ugual[ei]", "su richiesta"],
    explained: ["ripetut[oaie] dopo"],
    first: ["prima (?:lettura|misura)", "primo valore"],
  },
  remade: {
    done: ["sostituit[oaie]", "smontat[oaie]", "rifatt[oaie]", "ricablat[oaie]"],
    idle: ["pil[ae]", "batteri[ae]", "lampad[ae]", "etichett[ae]", "cavett[oi]", "strument[oi]"],
  },
  compared: ["confront-", "verificat-", "anche"],
  lists: {
    punch: ["lista (?:dei )?(?:difetti|punti aperti|riserve)"],
    repairs: ["(?:vedi|vedere) (?:il foglio )?riparazion-"],
    history: ["(?:vedi|vedere) (?:lo )?storico"],
  },
};
