// One's own data: pasted, dropped or chosen. They are read here and stay here.
import { make } from './dom.ts';

/**
 * Given    onOpen   called with what was read and its name
 */
export function openData(onOpen: (title: string, data: unknown) => void): HTMLElement {
  const text = make('textarea', { id: 'paste', rows: 6, spellcheck: 'false' });
  const said = make('p', { role: 'status' });
  const take = (title: string, content: string): void => {
    try {
      onOpen(title, JSON.parse(content));
      said.textContent = '';
      // What was opened is on the page; the text itself need not stay in sight.
      text.value = '';
      place.open = false;
    } catch (error) {
      said.textContent =
        error instanceof SyntaxError ? `This is not JSON: ${error.message}.` : wordsOf(error);
    }
  };
  const takeFile = async (file: File | undefined): Promise<void> => {
    if (file !== undefined) take(file.name, await file.text());
  };
  const file = make('input', {
    type: 'file',
    id: 'file',
    accept: '.json,application/json,application/fhir+json',
  });
  file.addEventListener('change', () => void takeFile(file.files?.[0]));
  document.addEventListener('dragover', (event) => event.preventDefault());
  document.addEventListener('drop', (event) => {
    event.preventDefault();
    void takeFile(event.dataTransfer?.files[0]);
  });
  const place = make(
    'details',
    { class: 'open-data' },
    make('summary', {}, 'Your own bundle'),
    make(
      'p',
      {},
      make(
        'label',
        { for: 'paste' },
        'Paste a FHIR R4 Bundle or a CDS Hooks request, or drop a file anywhere on the page. ',
      ),
      text,
    ),
    make(
      'p',
      {},
      make('button', { type: 'button', onclick: () => take('Pasted data', text.value) }, 'Open'),
      ' ',
      make('label', { for: 'file' }, 'or a file '),
      file,
    ),
    said,
  );
  return place;
}

export const wordsOf = (error: unknown): string =>
  error instanceof Error ? error.message : 'It could not be read.';
