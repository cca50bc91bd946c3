// What the core of an embedded glass exports. It takes one record as JSON text and returns one as JSON text.

export default function init(options: { module_or_path: URL | string }): Promise<unknown>;
export function embed(ask: string): string;
