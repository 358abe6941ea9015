export function bundled(entry: string): string;
export function load(entry: string): Promise<Record<string, unknown>>;
