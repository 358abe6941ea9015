export function bundle(entry: string, folder?: string): string;
export function load(entry: string): Promise<Record<string, unknown>>;
