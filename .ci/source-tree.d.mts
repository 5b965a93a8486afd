export function sourceTree(): string;
export function withTree(text: string): string;
