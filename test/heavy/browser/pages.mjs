// How many pages has a PDF?
/** Counts page objects; Chromium writes them uncompressed. */
export const pagesIn = (pdf) => (pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length;
