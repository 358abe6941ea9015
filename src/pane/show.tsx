import CssBaseline from "@mui/material/CssBaseline";
import { ThemeProvider } from "@mui/material/styles";
import { createRoot } from "react-dom/client";
import { goTo, readExcel } from "../workbook/excel";
import { type Host, Pane } from "./Pane";
import { theme } from "./theme";

const excel: Host = {
  read: () => Excel.run(readExcel),
  goTo: (sheet, address) => Excel.run((context) => goTo(context, sheet, address)),
};

/** Puts the pane on the page. */
export function show(element: HTMLElement): void {
  createRoot(element).render(
    <ThemeProvider theme={theme}>
      <CssBaseline />
      <Pane host={excel} />
    </ThemeProvider>,
  );
}
