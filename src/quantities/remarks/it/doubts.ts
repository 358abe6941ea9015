import type { DoubtWords } from "../language";

/** Italian. */
export const it: DoubtWords = {
  doubts: {
    discharge: [
      "scarica (?:disruptiva|superficiale|verso terra)",
      "perforazion-",
      "arco elettrico",
      "scintill-",
      "crepiti-",
      "effetto corona",
      "fumo",
      "odore di bruciato",
      "bruciat-",
      "tensione crollata",
      "crollo di tensione",
    ],
    repeat: [
      "da (?:ripetere|rifare|rimisurare|riprovare)",
      "(?:va|vanno|deve essere|devono essere) (?:ripetut|rifatt)-",
      "in attesa",
      "provvisori-",
    ],
    estimated: [
      "(?:lettura|valore) (?:in calo|instabile|oscillante)",
      "stimat-",
      "presunt-",
      "copiat[oa] d-",
      "dubbi[oa]",
    ],
    "not measured": ["non (?:e stat[oa] )?(?:misurat|provat|eseguit|rilevat|accessibil|possibil)-"],
    "cut short": [
      "solo fino a",
      "interrott-",
      "solo (?:per )?\\d[\\d.,]* ?(?:s|secondi|min|minuti|k?v)",
    ],
    attempts: [
      "chiuso due volte",
      "(?:chiuso|aperto|scattato) da solo",
      "(?:secondo|terzo|quarto) tentativo",
    ],
    defective: [
      "(?:ostruit|inceppat|grippat)[oaie]",
      "da (?:spostare|pulire|sigillare|raddrizzare)",
      "non (?:si accende|segnala)",
      "difettos-",
      "guast-",
      "danneggiat-",
      "rott[oaie]",
      "manca(?:no|nte|nti)?",
      "allentat-",
      "filetto spanato",
    ],
    borrowed: ["in prestito", "prestat-", "non tarat-", "taratura scaduta"],
  },
  negations: ["non", "nessun", "nessuna", "senza", "mai", "assenza"],
  contrasts: ["tranne", "tuttavia"],
  settled: [
    "ripetut[oa] dopo",
    "dopo (?:la |il |l.)?(?:pulizia|riparazione|asciugatura|sostituzione)",
    "riparat-",
    "sostituit-",
    "ri-?serrat-",
  ],
  ahead: ["deve", "devono", "sara", "saranno", "(?:va|vanno) (?:riparat|sostituit|serrat)-"],
};
