export const functionTest = {
  title: "Function tests",
  purpose:
    "Operation, interlocks, indications and alarms of each panel against the schematic, and the interlocks between panels. What a panel does not have is not applicable, and the remarks say why.",
  cautions: [
    "With the main circuit isolated, proved dead and earthed, under the site's permit system; breakers are in their test position.",
    "Breakers and springs move without warning: warn, keep clear, and say aloud what is about to be operated.",
    "Block trips and transfers that reach other gear, and record what was blocked and put back.",
    "An interlock is tried by trying to defeat it only as far as the maker allows. Local code and licensed practice come first.",
  ],
};
