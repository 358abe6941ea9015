import { plain } from "../../quantities/doubtIn";
import { type Row, verdictOf } from "../../records/kind";
import { overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";
import { remarksOf } from "./remarkContradicts";

/** What is put in, lifted or taken out for a test (common practice, no source), without accents. */
const THING =
  /\b(?:jumpers?|bridged?|bridges|links?|wires?|leads?|earths?|grounds?|earthing|grounding|shorts?|shorting|shorted|secondar(?:y|ies)|fuses?|interlocks?|trips?|keys?|clamps?|sets?|brucken?|drahtbrucken?|leitung(?:en)?|klemmen?|erdung(?:en)?|sicherung(?:en)?|kurzschluss\w*|pont|ponts|shunts?|cavaliers?|liaisons?|fils?|terres?|fusibles?|puentes?|hilos?|tierras?|enclavamientos?|pontes?|fios?|terras?|fusive(?:l|is))\b/;
/** That it stands so still. */
const LEFT =
  /\bleft (?:in|on|open|out|off|lifted|short\w*|disconnected|bridged|closed)\b|\bstill (?:in|on|open|out|off|lifted|short\w*|there|fitted|bridged|disconnected)\b|\bnot (?:yet )?(?:been )?(?:put back|removed|restored|reconnected|refitted|reinstated|taken (?:off|out)|found)\b|\bto be (?:closed|removed|restored|put back|reconnected|refitted|taken (?:off|out))\b|\btemporary \w+ (?:fitted|in place|on)\b|\bbelieved\b|\bnoch (?:drin|drauf|gesetzt|offen|gebruckt|eingelegt|abgeklemmt)\b|\bnicht (?:wieder|entfernt|zuruckgebaut)\b|\bbelassen\b|\blaissee?s?\b|\bencore (?:en place|pose\w*|ouvert\w*)|\b(?:pas|non) (?:retire\w*|enleve\w*|remis\w*)|\bdejad[oa]s?\b|\bsin (?:retirar|quitar|reponer)\b|\bno (?:retirad|quitad|repuest)[oa]s?\b|\btodavia (?:puest|abiert)[oa]s?\b|\bdeixad[oa]s?\b|\bpor retirar\b|\bnao (?:retirad|recolocad|repost)[oa]s?\b|\bainda (?:ligad|abert|colocad)[oa]s?\b/;
/** That it is as it has to be, or was seen to since. */
const SETTLED =
  /\b(?:none|nothing|never|no \w+) (?:was |were )?(?:left|still)|\b(?:as (?:drawn|on the drawing|found|ordered|agreed)|by design|normally|since removed|back in|put in again)\b|\b(?:removed|restored|reconnected|refitted|reinstated|closed|put back|taken off|taken out|found) (?:again|since|after\w*|on \d|later)|\b(?:then|later|since|afterwards?|and) (?:removed|restored|reconnected|refitted|reinstated|closed|put back|taken off|taken out)\b|\b(?:wieder (?:eingelegt|geschlossen|angeschlossen|entfernt)|danach|retire\w* apres|retirad[oa]s? (?:despues|depois))\b/;

/** A remark that tells of something put in, lifted or taken out for a test, and still so. */
export const leftForTest: Rule = {
  id: "left-for-test",
  reads: "table",
  find: (table, context) => {
    const remarks = remarksOf(table, context);
    if (!remarks) return [];
    const says = context.text.rules["left-for-test"];
    const look = (row: number, _stored: Row, judged: Row): Finding[] => {
      // What is not in order by its answer, another rule tells.
      if (verdictOf(judged) === "Fail") return [];
      return remarks
        .of(row)
        .filter(({ text }) => isLeft(text))
        .slice(0, 1)
        .map(({ address, column, text }) => ({
          rule: "left-for-test",
          weight: table.kind.stages ? "stop" : "query",
          ...where(table, row, "remarks"),
          address,
          column,
          message: says.message(rowName(table, row), text.trim().slice(0, 160)),
          found: text.trim().slice(0, 80),
        }));
    };
    return overRows(table, look, remarks.rows).map(({ finding }) => finding);
  },
};

function isLeft(remark: string): boolean {
  const text = plain(remark);
  return LEFT.test(text) && THING.test(text) && !SETTLED.test(text);
}
