// What the compiled core exports that loads late. Each takes one record as JSON text and returns one as JSON text.

export default function init(options: { module_or_path: URL | string }): Promise<unknown>;
export function moves(ask: string): string;
export function measure(ask: string): string;
export function facts(ask: string): string;
export function shop(ask: string): string;
export function keeping(ask: string): string;
export function offers(ask: string): string;
export function recipe(ask: string): string;
export function link(ask: string): string;
export function linked(ask: string): string;
export function recipe_out(ask: string): string;
