import createCache from "@emotion/cache";
import { CacheProvider } from "@emotion/react";
import rtlPlugin from "@mui/stylis-plugin-rtl";
import type { ReactElement } from "react";

const cache = createCache({ key: "rtl", stylisPlugins: [rtlPlugin] });

/** The pane with every style mirrored, for languages written from right to left. */
export const mirrored = (app: ReactElement): ReactElement => (
  <CacheProvider value={cache}>{app}</CacheProvider>
);
