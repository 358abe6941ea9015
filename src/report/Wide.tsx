import type { ReactElement, ReactNode } from "react";

/** A table that scrolls by itself where it is wider than the page; by keyboard too. */
export const Wide = ({ name, children }: { name: string; children: ReactNode }): ReactElement => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
  <section className="scroll" aria-label={name} tabIndex={0}>
    {children}
  </section>
);
