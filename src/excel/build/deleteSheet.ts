/**
 * Takes a sheet away. One that is very hidden is shown first: Excel refuses to delete it as it is (Office.js
 * reference, Worksheet.delete).
 */
export function deleteSheet(sheet: Excel.Worksheet): void {
  sheet.visibility = "Visible";
  sheet.delete();
}
