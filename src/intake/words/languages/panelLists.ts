import type { BREAKER_MEDIA, PANEL_TYPES } from "../../../lineup/equipment";

/** What a pasted list of panels calls things. */
export interface PanelListWords {
  /** Titles of its columns, as plain words. */
  readonly titles: Readonly<
    Record<
      "designation" | "name" | "type" | "section" | "breaker" | "medium" | "ratedA",
      readonly string[]
    >
  >;
  /** Words for a panel's type besides ours. */
  readonly types: readonly (readonly [word: string, type: (typeof PANEL_TYPES)[number]])[];
  /** Words for what a breaker breaks in, besides ours. */
  readonly media: readonly (readonly [word: string, medium: (typeof BREAKER_MEDIA)[number]])[];
  /** What stands for no breaker. */
  readonly none: readonly string[];
}

/**
 * The words of each language for a list of panels; what a language leaves out, it has no words for. They stand
 * apart from its other words, which come with every workbook that is opened: these only with such a list. Those
 * besides English are from memory.
 */
export const PANEL_LISTS: Readonly<
  Record<"ar" | "de" | "en" | "es" | "fr" | "pt", PanelListWords>
> = {
  en: {
    titles: {
      designation: [
        "panel",
        "designation",
        "panel designation",
        "cubicle",
        "cell",
        "compartment",
        "panel no",
        "panel number",
        "no",
        "tag",
      ],
      name: [
        "name",
        "circuit",
        "circuit name",
        "description",
        "service",
        "feeder name",
        "panel name",
        "load",
      ],
      type: ["type", "panel type", "duty", "function"],
      section: ["section", "bus section", "bus", "busbar", "busbar section"],
      breaker: [
        "breaker",
        "circuit breaker",
        "cb",
        "breaker designation",
        "breaker no",
        "breaker number",
        "breaker tag",
        "cb no",
        "cb tag",
        "device",
        "device no",
      ],
      medium: [
        "breaker",
        "circuit breaker",
        "cb",
        "medium",
        "breaker medium",
        "breaker type",
        "cb type",
        "interrupter",
        "interrupting medium",
      ],
      ratedA: [
        "rated a",
        "rated current",
        "rated current a",
        "rating",
        "breaker rating",
        "cb rating",
        "current",
        "current rating",
        "in a",
        "ir a",
        "in",
        "a",
        "amps",
        "continuous current",
        "frame",
      ],
    },
    types: [
      ["incoming", "incomer"],
      ["outgoing", "feeder"],
      ["coupler", "bus coupler"],
      ["sectionalizer", "bus coupler"],
      ["bus section", "bus coupler"],
      ["bus tie", "bus coupler"],
      ["bus riser", "riser"],
      ["transformer", "transformer feeder"],
      ["motor", "motor feeder"],
      ["measurement", "metering"],
      ["vt", "metering"],
      ["pt", "metering"],
    ],
    media: [["vcb", "vacuum"]],
    none: ["-", "–", "none", "no", "n/a"],
  },
  de: {
    titles: {
      designation: [
        "feld",
        "zelle",
        "schaltfeld",
        "feldbezeichnung",
        "feld nr",
        "feldnummer",
        "nr",
      ],
      name: ["abgang", "benennung", "name", "stromkreis", "bezeichnung", "abgangsbezeichnung"],
      type: ["art", "feldart", "feldtyp", "typ", "funktion"],
      section: ["sammelschiene", "abschnitt", "sammelschienenabschnitt", "schiene"],
      breaker: ["schalter", "leistungsschalter", "schalterbezeichnung", "betriebsmittel"],
      medium: ["schalter", "leistungsschalter", "löschmittel", "schalterart", "schaltertyp"],
      ratedA: ["bemessungsstrom", "nennstrom", "bemessungsstrom a", "nennstrom a", "strom"],
    },
    types: [
      ["einspeisung", "incomer"],
      ["einspeisefeld", "incomer"],
      ["kuppelfeld", "bus coupler"],
      ["kupplung", "bus coupler"],
      ["längskupplung", "bus coupler"],
      ["hochführung", "riser"],
      ["messfeld", "metering"],
      ["messung", "metering"],
      ["transformatorabgang", "transformer feeder"],
      ["trafo", "transformer feeder"],
      ["motorabgang", "motor feeder"],
      ["motor", "motor feeder"],
      ["abgang", "feeder"],
      ["abgangsfeld", "feeder"],
    ],
    media: [["vakuum", "vacuum"]],
    none: ["ohne", "kein", "keiner", "nein"],
  },
  es: {
    titles: {
      designation: ["celda", "cabina", "designación", "cubículo", "celda nº", "nº"],
      name: ["circuito", "salida", "nombre", "descripción", "servicio"],
      type: ["tipo", "tipo de celda", "función"],
      section: ["barra", "barras", "sección", "sección de barras", "embarrado"],
      breaker: ["interruptor", "designación del interruptor", "disyuntor"],
      medium: ["interruptor", "medio", "medio de corte", "tipo de interruptor", "disyuntor"],
      ratedA: [
        "corriente asignada",
        "corriente nominal",
        "intensidad asignada",
        "intensidad nominal",
      ],
    },
    types: [
      ["acometida", "incomer"],
      ["llegada", "incomer"],
      ["entrada", "incomer"],
      ["acoplamiento", "bus coupler"],
      ["acople", "bus coupler"],
      ["remonte", "riser"],
      ["medida", "metering"],
      ["medición", "metering"],
      ["salida transformador", "transformer feeder"],
      ["transformador", "transformer feeder"],
      ["motor", "motor feeder"],
      ["salida", "feeder"],
      ["alimentador", "feeder"],
      ["línea", "feeder"],
    ],
    media: [["vacío", "vacuum"]],
    none: ["sin", "ninguno", "no"],
  },
  fr: {
    titles: {
      designation: ["cellule", "repère", "désignation", "n°", "numéro", "repère cellule"],
      name: ["départ", "circuit", "nom", "libellé", "description"],
      type: ["type", "type de cellule", "fonction"],
      section: ["jeu de barres", "section", "demi jeu de barres", "jdb", "barre"],
      breaker: ["disjoncteur", "repère disjoncteur", "appareil"],
      medium: ["disjoncteur", "milieu de coupure", "coupure", "type de disjoncteur"],
      ratedA: ["courant assigné", "courant nominal", "calibre", "intensité nominale"],
    },
    types: [
      ["arrivée", "incomer"],
      ["couplage", "bus coupler"],
      ["remontée", "riser"],
      ["mesure", "metering"],
      ["comptage", "metering"],
      ["tt", "metering"],
      ["départ transformateur", "transformer feeder"],
      ["transformateur", "transformer feeder"],
      ["départ moteur", "motor feeder"],
      ["moteur", "motor feeder"],
      ["départ", "feeder"],
    ],
    media: [["vide", "vacuum"]],
    none: ["sans", "aucun", "non"],
  },
  pt: {
    titles: {
      designation: ["cubículo", "painel", "cela", "designação", "identificação", "coluna"],
      name: ["circuito", "saída", "nome", "descrição", "serviço"],
      type: ["tipo", "tipo de painel", "função"],
      section: ["barramento", "barra", "seção", "secção"],
      breaker: ["disjuntor", "designação do disjuntor"],
      medium: ["disjuntor", "meio", "meio de interrupção", "meio de corte", "tipo de disjuntor"],
      ratedA: ["corrente nominal", "corrente estipulada", "corrente nominal a"],
    },
    types: [
      ["entrada", "incomer"],
      ["chegada", "incomer"],
      ["acoplamento", "bus coupler"],
      ["interligação", "bus coupler"],
      ["subida de barras", "riser"],
      ["medição", "metering"],
      ["saída transformador", "transformer feeder"],
      ["transformador", "transformer feeder"],
      ["motor", "motor feeder"],
      ["saída", "feeder"],
      ["alimentador", "feeder"],
    ],
    media: [["vácuo", "vacuum"]],
    none: ["sem", "nenhum", "não"],
  },
  ar: {
    titles: {
      designation: ["الخلية", "رقم الخلية", "اللوحة", "رقم اللوحة"],
      name: ["الدائرة", "المغذي", "الوصف", "الاسم"],
      type: ["النوع", "نوع الخلية"],
      section: ["القضبان", "قضبان التوزيع", "القسم"],
      breaker: ["القاطع", "قاطع الدائرة", "رقم القاطع"],
      medium: ["القاطع", "وسط القطع", "نوع القاطع"],
      ratedA: ["التيار المقنن", "التيار الاسمي"],
    },
    types: [
      ["دخول", "incomer"],
      ["مدخل", "incomer"],
      ["رابط", "bus coupler"],
      ["ربط", "bus coupler"],
      ["قياس", "metering"],
      ["محول", "transformer feeder"],
      ["محرك", "motor feeder"],
      ["مغذي", "feeder"],
      ["خروج", "feeder"],
      ["مخرج", "feeder"],
    ],
    media: [
      ["فراغ", "vacuum"],
      ["مفرغ", "vacuum"],
    ],
    none: ["بدون", "لا يوجد", "لا"],
  },
};
