/** The place of a panel or section on the page. */
export const anchor = (object: string): string => `p-${encodeURIComponent(object)}`;
