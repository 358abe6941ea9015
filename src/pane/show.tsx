import CssBaseline from "@mui/material/CssBaseline";
import { ThemeProvider } from "@mui/material/styles";
import { createRoot } from "react-dom/client";
import { applyPlan, clearMarks, goTo, markFindings, readExcel } from "../workbook/excel";
import type { Host } from "./host";
import { Pane } from "./Pane";
import { theme } from "./theme";

const excel: Host = {
  read: (watch) => Excel.run((context) => readExcel(context, watch)),
  build: (plan, watch) => Excel.run((context) => applyPlan(context, plan, watch)),
  mark: (findings, watch) => Excel.run((context) => markFindings(context, findings, watch)),
  clearMarks: (watch) => Excel.run((context) => clearMarks(context, watch)),
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
