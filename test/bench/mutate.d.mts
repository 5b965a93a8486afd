/** One malformed variant of one of the files, as JSON text; the same seed gives the same variant. */
export function variantOf(files: readonly unknown[], seed: number): string;
