import { createTheme, type Theme } from "@mui/material/styles";

/**
 * Plain, high in contrast, with large hit areas: for a narrow pane and a site laptop in sunlight.
 *
 * @param mode as Office or the system has it
 * @param direction as the language is written
 */
export const themeFor = (mode: "light" | "dark", direction: "ltr" | "rtl"): Theme =>
  createTheme({
    direction,
    palette: {
      mode,
      ...(mode === "light"
        ? {
            primary: { main: "#24404d" },
            secondary: { main: "#7a4e00" },
            text: { primary: "#1b2a33", secondary: "#45545d" },
            background: { default: "#ffffff", paper: "#ffffff" },
          }
        : {
            primary: { main: "#b7d3df", contrastText: "#10191e" },
            secondary: { main: "#f0c069" },
            text: { primary: "#eef3f5", secondary: "#bccad1" },
            background: { default: "#151f25", paper: "#1b272e" },
            divider: "#4b5d67",
          }),
    },
    shape: { borderRadius: 2 },
    spacing: 8,
    typography: {
      fontFamily: "Arial, Helvetica, sans-serif",
      fontSize: 14,
      h1: { fontSize: "1.125rem", fontWeight: 700 },
      h2: { fontSize: "1rem", fontWeight: 700, marginBottom: 6 },
      h3: { fontSize: "0.875rem", fontWeight: 700 },
      button: { textTransform: "none", fontWeight: 700 },
    },
    components: {
      MuiButton: {
        defaultProps: { disableElevation: true },
        styleOverrides: {
          root: {
            minHeight: 44,
            // Where the system draws no backgrounds, a filled button is told by its edge.
            "@media (forced-colors: active)": { "&.MuiButton-contained": { border: "1px solid" } },
          },
        },
      },
      MuiButtonBase: { defaultProps: { disableRipple: true } },
      MuiTab: { styleOverrides: { root: { minWidth: 0, minHeight: 48, padding: "6px 4px" } } },
      MuiCssBaseline: {
        styleOverrides: {
          ":root":
            mode === "light"
              ? { "--ink": "#1b2a33", "--paper": "#ffffff", "--caution": "#fff3c9" }
              : { "--ink": "#eef3f5", "--paper": "#1b272e", "--caution": "#4a3b10" },
          // Text that is not translated keeps its own order within a mirrored pane.
          ...(direction === "rtl"
            ? {
                ":is(p, span, dt, dd, li, h1, h2, h3, th, td, strong, label, input, summary)": {
                  unicodeBidi: "plaintext",
                },
                ":is(p, dt, dd, li, h1, h2, h3, th, td, input)": { textAlign: "right" },
              }
            : {}),
          ":focus-visible": { outline: "3px solid currentColor", outlineOffset: 1 },
          "@media (forced-colors: active)": {
            ":root": { "--ink": "CanvasText", "--paper": "Canvas", "--caution": "Canvas" },
            "svg .standing": { fill: "Canvas !important" },
            "svg .standing-word": { fill: "CanvasText !important" },
            ".Mui-selected": { textDecoration: "underline", textUnderlineOffset: 6 },
          },
        },
      },
    },
  });
