import type { RuleTexts } from "../../ruleWords";

/** Rules of the sheets that tell the lineup, of the project's settings and of its concessions. */
export const project = {
  "names-differ": {
    title: "Names that differ between sheets",
    finds:
      "a remark, document or criterion that names a drawing or the specification at another revision than the latest approved one; the head of a sheet of somebody's own that names another project than the lineup, or another circuit than that of its one panel",
    why: "Tested to a superseded drawing, or a sheet of another job: a reader cannot tell which.",
    satisfies: "the revision or name put right, or the latest approved revision in the lineup",
    quiet:
      "for documents of which the lineup gives no revision, for names of which one is a part of the other, and for heads without such a label",
    document: (row: string, header: string, number: string, named: string, approved: string) =>
      `${row}: "${header}" names ${number} at revision ${named}; the latest approved revision in the lineup is ${approved}. Put right what is wrong.`,
    head: (sort: "project" | "circuit", name: string, right: string) =>
      `The head of this sheet names the ${sort} "${name}", the lineup "${right}". Is it a sheet of another ${sort === "project" ? "job" : "panel"}?`,
  },
  "sheets-differ": {
    title: "Sheets that show a different lineup",
    finds:
      "a cell of the cover, panels, equipment, criteria or settings sheet that shows another thing than the lineup that the records are judged by; more than five of a sheet together",
    why: "People read the sheet and the check reads the lineup, so both must agree.",
    satisfies: "the change made in the lineup and built onto the workbook",
    quiet:
      "where they agree, whatever the order of rows; for what is noted besides on the cover; for a user's own workbook, which has none of these sheets",
    message: (line: string, header: string, found: string, wanted: string) =>
      `${line}: "${header}" shows ${found}; the lineup that the records are judged by has ${wanted}. Change the lineup and build it onto the workbook again, or put the cell right.`,
    further: (message: string, further: number, addresses: readonly string[]) =>
      `${message} The sheet shows ${further} more such differences, at ${addresses.join(", ")}${further > addresses.length ? " and further on" : ""}.`,
    noSheet: (sheet: string) =>
      `The workbook has no sheet "${sheet}", on which people read what the records are judged by; build the lineup onto the workbook again.`,
  },
  "unknown-rule-weight": {
    title: "A weight for an unknown rule",
    finds: "a weight in the project's settings for a rule that the check does not have",
    why: "The project means to weigh something, and it weighs as before.",
    satisfies: "the rule's name as the reference writes it",
    quiet: "for every rule of the reference",
    message: (id: string) =>
      `The project sets a weight for the rule "${id}", which the check does not have; use the rule's name from the reference.`,
  },
  "concession-incomplete": {
    title: "A concession without reason, name or date",
    finds:
      "a row of the table of concessions that lacks its reason, its name or its date, or whose date lies in the future",
    why: "Nobody can be asked about it, and it accepts nothing.",
    satisfies: "what it lacks",
    quiet: "for blank rows",
    lacks: (rule: string, place: string, header: string) =>
      `The concession of "${rule}" for ${place || "nothing"} has no "${header}"; it accepts nothing until it has.`,
    wrongDate: (rule: string, place: string, header: string) =>
      `The concession of "${rule}" for ${place || "nothing"} has a "${header}" that is not a date or lies in the future; it accepts nothing until that is corrected.`,
  },
  "concession-unsound": {
    title: "A concession that nobody would take",
    finds:
      "a concession without a reason in words, by the one who tested, or dated before the record that it accepts; and one of a disruptive discharge, a missing permit, a hold point passed over, or a withstand test before its insulation",
    why: "What an engineer may accept has a reason that another can follow; what safety on site asks for is not accepted by a word.",
    satisfies:
      "the reason and the document that says so, by somebody with the authority for it, after the test; or the defect repaired and the test repeated",
    quiet: "for concessions that lack something or match nothing: other rules report that",
    message: (rule: string, place: string, why: string) =>
      `The concession of "${rule}" for ${place || "nothing"} accepts nothing: ${why}.`,
    reasons: {
      never:
        "what it is of is not accepted by a word; what was passed over is made good, what broke down is repaired and tested again",
      noWords: "it gives no reason in words; say why, and by which document",
      tester: (by: string) => `it is by ${by}, who made the test; somebody else has to accept it`,
      early: (day: string) => `it is dated before the record of ${day} that it accepts`,
    },
  },
  "concession-stale": {
    title: "A concession of nothing",
    finds:
      "a complete concession that matches no finding any more: the finding is gone, or the value is another than the one accepted",
    why: "What was accepted is not what is there now.",
    satisfies: "the concession removed, or granted again for what is there now",
    quiet:
      "for concessions that lack something: another rule reports that; for a value that stands with the unit of its column",
    message: (rule: string, place: string, found: string, present: readonly string[]) => {
      const what = `The concession of "${rule}" for ${place}`;
      if (present.length > 0)
        return `${what} ${found === "" ? 'says nothing under "Found"' : `accepts ${found}`}, and the finding there has ${present.join(" or ")}. Grant it for that value, or remove it.`;
      return `${what}${found === "" ? "" : `, found ${found},`} matches no finding any more: the finding is gone, or its value has changed. Remove the concession, or grant it again for the present value.`;
    },
  },
  "list-odd": {
    title: "Impossible entry in a list",
    finds:
      "an item of the punch list closed before it was raised, on a day to come, without a day or note, in a state that the list does not know, accepted by its own owner, or of a panel that the lineup has not; a reading of the history replaced before it was taken, or on a day to come",
    why: "Nobody trusts the rest of a list with entries that cannot be true.",
    satisfies: "the day, state, note or name put right",
    quiet:
      "for new items without a state, open items without a note, items of the check's own that it keeps up itself, blank days of the history, and items of the lineup as a whole",
    future: (header: string, day: string) =>
      `"${header}" is ${day}, which is in the future. Correct the date.`,
    before: (header: string, day: string, first: string, other: string) =>
      `"${header}" is ${day}, before "${first}" of ${other}. Correct the dates.`,
    noState: (states: readonly string[]) =>
      `The item has no state that the list knows. Choose one of ${states.join(", ")}.`,
    noNote: (state: string) =>
      `The item is "${state}" without a closing note. Write how it was closed and by whom, or open it again.`,
    noDay: "The item is closed but has no closing date. Enter the date.",
    byOwner: (owner: string) =>
      `The item was accepted by ${owner}, who is its owner. Somebody else has to accept it.`,
    noPanel: (panel: string) =>
      `The lineup has no panel or bus section "${panel}". Correct the name.`,
  },
  "name-to-come": {
    title: "Placeholder in place of a name",
    finds:
      "a word that stands for nothing, such as TBA, pending or a dash, where a permit, revision, document, instrument or person has to be named",
    why: "Work under a permit that has no number yet was work without one.",
    satisfies: "the number or name, or the cell left blank until there is one",
    quiet:
      "in remarks, where the lineup gives the same word, as of a first revision, for instruments, of which another rule tells, and for whatever has a digit in it",
    message: (row: string, header: string, word: string) =>
      `${row}: "${header}" says "${word}", which identifies nothing. Enter the number or name, or leave it blank until it is known.`,
  },
} satisfies RuleTexts;
