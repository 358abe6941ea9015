import type { WorkWords } from "../language";

/** Portuguese. */
export const pt: WorkWords = {
  left: {
    things: ["pontes?", "fios?", "terras?", "fusive(?:l|is)"],
    still: [
      "deixad[oa]s?",
      "por retirar",
      "nao (?:retirad|recolocad|repost)[oa]s?",
      "ainda (?:ligad|abert|colocad)[oa]s?",
    ],
    settled: ["(?:retirad|recolocad|repost)[oa]s? depois"],
  },
  repeated: {
    again: ["repetid[oa]s?", "medid[oa] novamente", "primeir[oa] (?:leitura|valor|medida)"],
    plain: ["mesm[oa]s?", "igual", "iguais", "a pedido"],
    explained: ["repetid[oa]s? (?:apos|depois)"],
    first: ["primeir[oa] (?:leitura|valor|medida)"],
  },
  remade: {
    done: ["substituid[oa]s?", "desmontad[oa]s?"],
    idle: ["pilhas?", "lampadas?", "etiquetas?", "cabos? de medida"],
  },
  compared: ["compar-", "verific-", "tambem"],
  lists: {
    punch: ["lista de pendencias", "lista de defeitos"],
    repairs: ["ver (?:a folha )?repar-"],
    history: ["ver (?:o )?historico"],
  },
};
