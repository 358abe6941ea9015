import type { WorkWords } from "../language";

/** Spanish. */
export const es: WorkWords = {
  left: {
    things: ["puentes?", "hilos?", "tierras?", "fusibles?", "enclavamientos?"],
    still: [
      "dejad[oa]s?",
      "sin (?:retirar|quitar|reponer)",
      "no (?:retirad|quitad|repuest)[oa]s?",
      "todavia (?:puest|abiert)[oa]s?",
    ],
    settled: ["(?:retirad|quitad|repuest)[oa]s? (?:despues|luego)"],
  },
  repeated: {
    again: [
      "repetid[oa]s?",
      "medid[oa] de nuevo",
      "primera? (?:lectura|valor|medida)",
      "primer valor",
    ],
    plain: ["mism[oa]s?", "igual-", "a peticion"],
    explained: ["repetid[oa]s? (?:tras|despues)"],
    first: ["primera? (?:lectura|valor|medida)"],
  },
  remade: {
    done: ["reemplazad[oa]s?", "sustituid[oa]s?", "desmontad[oa]s?"],
    idle: ["pilas?", "lamparas?", "etiquetas?", "cables? de medida"],
  },
  compared: ["compar-", "verific-", "tambien"],
  lists: {
    punch: ["lista de pendientes", "lista de defectos", "punch list"],
    repairs: ["(?:ver|vease) (?:la hoja )?reparacion-"],
    history: ["(?:ver|vease) (?:el )?historial"],
  },
};
