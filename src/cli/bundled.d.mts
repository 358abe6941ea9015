export function bundled(entry: string): Promise<string>;
export function load(entry: string): Promise<Record<string, unknown>>;
