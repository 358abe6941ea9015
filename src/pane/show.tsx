import CssBaseline from "@mui/material/CssBaseline";
import { ThemeProvider } from "@mui/material/styles";
import useMediaQuery from "@mui/material/useMediaQuery";
import { type ReactElement, useEffect, useMemo } from "react";
import { createRoot } from "react-dom/client";
import { inExcel as finished } from "../excel/inExcel";
import { messagesFor } from "../messages/messages";
import { TextContext } from "../report/text";
import type { WorkbookHost } from "./host";
import { LocaleContext, localeOf } from "./locale";
import { Pane } from "./Pane";
import { themeFor } from "./theme";

const inExcel = <T,>(work: (context: Excel.RequestContext) => Promise<T>): Promise<T> =>
  finished((all) => Excel.run(all), work);

// Each way into the workbook comes with its first use.
const excel: WorkbookHost = {
  read: async (watch, options) => {
    const { readExcel } = await import("../excel/read/readSheets");
    return inExcel((context) => readExcel(context, { ...watch, ...options }));
  },
  reread: async (snapshot, rows) => {
    const { rereadRows } = await import("../excel/read/rereadRows");
    return inExcel((context) => rereadRows(context, snapshot, rows));
  },
  listen: async (told) => {
    const { listen } = await import("../excel/watchEdits");
    return inExcel((context) => listen(context, told));
  },
  build: async (plan, watch) => {
    const { buildOnto } = await import("../excel/build/undoBuild");
    return inExcel((context) => buildOnto(context, plan, watch));
  },
  undoBuild: async (built, after, watch) => {
    const { undoBuild } = await import("../excel/build/undoBuild");
    return inExcel((context) => undoBuild(context, built, after, watch));
  },
  fill: async (cells, watch) => {
    const { applyFills } = await import("../excel/fillCells");
    return inExcel((context) => applyFills(context, cells, watch));
  },
  mark: async (findings, watch) => {
    const { markFindings } = await import("../excel/write/writeMarks");
    return inExcel((context) => markFindings(context, findings, watch));
  },
  addBeside: async (tables, watch) => {
    const { addBeside } = await import("../excel/write/besideTables");
    return Excel.run((context) => addBeside(context, tables, watch));
  },
  removeBeside: async (watch) => {
    const { removeBeside } = await import("../excel/write/besideTables");
    return Excel.run((context) => removeBeside(context, watch));
  },
  clearMarks: async (watch) => {
    const { clearMarks } = await import("../excel/write/writeMarks");
    return inExcel((context) => clearMarks(context, watch));
  },
  change: async (changes, watch) => {
    const { applyChanges } = await import("../excel/build/changeSheets");
    return inExcel((context) => applyChanges(context, changes, watch));
  },
  selected: async () => {
    const { selectedCell } = await import("../excel/goToCell");
    return Excel.run(selectedCell);
  },
  selectedCells: async () => {
    const { selectedCells } = await import("../excel/read/selectedCells");
    return Excel.run(selectedCells);
  },
  insert: async (formula) => {
    const { insertFormula } = await import("../excel/read/selectedCells");
    return Excel.run((context) => insertFormula(context, formula));
  },
  file: async () => {
    const { bookFile } = await import("../excel/bookFile");
    return bookFile(Office.context.document);
  },
  goTo: async (sheet, address) => {
    const { goTo } = await import("../excel/goToCell");
    return inExcel((context) => goTo(context, sheet, address));
  },
};

/** Light or dark as Office is, or where it does not say, as the system is. */
function useMode(): "light" | "dark" {
  const dark = useMediaQuery("(prefers-color-scheme: dark)");
  return (Office.context?.officeTheme?.isDarkTheme ?? dark) ? "dark" : "light";
}

function App({ language }: { language: string }): ReactElement {
  const mode = useMode();
  const locale = useMemo(() => localeOf(language), [language]);
  const text = useMemo(() => messagesFor(language), [language]);
  useEffect(() => void performance.mark("gearproof pane shown"), []);
  const theme = useMemo(() => themeFor(mode, locale.direction), [mode, locale]);
  return (
    <LocaleContext value={locale}>
      <TextContext value={text}>
        <ThemeProvider theme={theme}>
          <CssBaseline />
          <Pane host={excel} />
        </ThemeProvider>
      </TextContext>
    </LocaleContext>
  );
}

/** Puts the pane on the page. */
export async function show(element: HTMLElement): Promise<void> {
  const language = Office.context?.displayLanguage || navigator.language || "en";
  const { direction } = localeOf(language);
  element.dir = direction;
  const app = <App language={language} />;
  createRoot(element).render(
    direction === "rtl" ? (await import("./Mirrored")).mirrored(app) : app,
  );
}
