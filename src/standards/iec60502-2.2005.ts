import { afterLaying as afterLaying2014, cables as cables2014 } from "./iec60502-2.2014";

const of2005 = <T extends { readonly source: object }>(test: T): T => ({
  ...test,
  source: { ...test.source, edition: "2005" },
});

export const cables: typeof cables2014 = of2005(cables2014);

/** As in 2014, without the test at very low frequency, which that edition added. */
export const afterLaying = {
  ACu0: of2005(afterLaying2014.ACu0),
  ACu: of2005(afterLaying2014.ACu),
  DC: of2005(afterLaying2014.DC),
} as const;
