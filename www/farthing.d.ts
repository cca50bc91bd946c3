// What the compiled core exports that a first visit needs. Each takes one record as JSON text and returns one as JSON text.

export default function init(options: { module_or_path: URL | string }): Promise<unknown>;
export function answer(ask: string): string;
export function tables(ask: string): string;
export function shelf(ask: string): string;
