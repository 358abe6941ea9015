import type { SheetWords } from "./words";

/** Italian, as far as its words are its own; many titles are written as in Spanish or Portuguese. */
export const it: SheetWords = {
  titles: {
    spread: [".*\\bscarto\\b.*"],
    by: ["(?:eseguito|provato|misurato) da", "collaudatore"],
    position: ["(?:polo|fase|collegamento)(?: .*)?"],
    operation: ["manovra"],
    panel: ["(?:scomparto|quadro|cella)(?: .*)?"],
  },
  kinds: {},
  before: ["prima"],
  after: ["dopo"],
  closing: ["chiusura"],
  opening: ["apertura"],
  pass: ["conforme", "positivo", "a norma"],
  fail: ["non conforme", "negativo"],
  yes: ["sì"],
  no: ["nessuna"],
  notApplicable: ["non applicabile"],
  notDone: ["da fare"],
  summaries: ["totale", "minimo", "massimo"],
  atLeast: ["almeno", "minimo", "non inferiore a", "non meno di"],
  atMost: ["al più", "al massimo", "massimo", "non superiore a", "non oltre", "non più di"],
  limit: ["limite", "ammesso", "tolleranza"],
  rated: ["nominale"],
  one: ["un"],
};
