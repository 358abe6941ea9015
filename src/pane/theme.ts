import { createTheme } from "@mui/material/styles";

/** Plain, high in contrast, with large hit areas: for a narrow pane and a site laptop in sunlight. */
export const theme = createTheme({
  palette: {
    primary: { main: "#24404d" },
    secondary: { main: "#7a4e00" },
    text: { primary: "#1b2a33", secondary: "#45545d" },
    background: { default: "#ffffff" },
  },
  shape: { borderRadius: 2 },
  typography: {
    fontFamily: "Arial, Helvetica, sans-serif",
    fontSize: 14,
    h1: { fontSize: "1.25rem", fontWeight: 700 },
    h2: { fontSize: "1rem", fontWeight: 700 },
    button: { textTransform: "none", fontWeight: 700 },
  },
  components: {
    MuiButton: {
      defaultProps: { disableElevation: true },
      styleOverrides: { root: { minHeight: 44 } },
    },
    MuiButtonBase: { defaultProps: { disableRipple: true } },
  },
});
