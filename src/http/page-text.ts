// The built-in page: plain HTML, one script, one style sheet. Everything on it comes from the answer any client gets.
import { caution } from '../presenters/caution.ts';

export function pageHtml(guidelines: readonly string[], defaultGuideline: string): string {
  const options = guidelines
    .map((id) => `<option${id === defaultGuideline ? ' selected' : ''}>${escapeHtml(id)}</option>`)
    .join('');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Hypertension in pregnancy: try the service</title>
<link rel="stylesheet" href="page.css">
<script src="page.js" defer></script>
</head>
<body>
<main>
<h1>Hypertension in pregnancy</h1>
<p>A FHIR bundle in; what it is, how urgent, what to do now and what is missing out. The example is invented.</p>
<aside aria-label="Caution"><strong>Caution</strong><ul>${caution.map((line) => `<li>${escapeHtml(line)}</li>`).join('')}</ul></aside>
<form id="ask">
<p><label for="guideline">Guideline</label> <select id="guideline">${options}</select>
<label for="as-of">As of</label> <input id="as-of" size="28" spellcheck="false"></p>
<p><label for="bundle">FHIR R4 Bundle</label><br><textarea id="bundle" rows="18" spellcheck="false"></textarea></p>
<p><button type="submit">Assess</button></p>
</form>
<section aria-live="polite"><h2>Answer</h2><div id="answer"><p>Press Assess.</p></div>
<details><summary>The whole answer as FHIR</summary><pre id="whole"></pre></details></section>
<p>For programs: <a href="cds-services">CDS Hooks discovery</a>; <code>POST /fhir/$assess-hypertension</code>.</p>
<noscript><p>The form needs script. The service itself does not: send the bundle with any HTTP client.</p></noscript>
</main>
</body>
</html>
`;
}

export function escapeHtml(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

export const pageScript = `'use strict';
const byId = (id) => document.getElementById(id);
const make = (tag, text) => Object.assign(document.createElement(tag), { textContent: text });
const list = (tag, heading, items) => {
  if (items.length === 0) return [];
  const element = document.createElement(tag);
  element.append(...items.map((item) => make('li', item)));
  return [make('h3', heading), element];
};
const named = (parameters, name) => parameters.filter((each) => each.name === name);
const part = (parameter, name) => {
  const found = (parameter.part || []).find((each) => each.name === name) || {};
  const key = Object.keys(found).find((each) => each.startsWith('value'));
  return key === undefined ? '' : String(found[key]);
};
function show(bundle) {
  const response = bundle.entry.map((entry) => entry.resource).find((each) => each.resourceType === 'GuidanceResponse');
  const output = response.contained[0].parameter;
  const classes = named(output, 'classification').map((each) => each.valueCode);
  const set = named(output, 'account').flatMap((account) => named(account.part, 'entries'));
  byId('answer').replaceChildren(
    make('p', named(output, 'urgency')[0].valueCode + ': ' + classes.join(', ')),
    ...list('ol', 'What to do, in this order', named(output, 'actions').map((each) => part(each, 'sentence'))),
    ...list('ul', 'Missing', named(output, 'missing').map((each) => part(each, 'what') + ': ' + part(each, 'how'))),
    ...list('ul', 'Why', named(output, 'urgencyBecause').map((each) => part(each, 'sentence'))),
    ...list('ul', 'Set aside', set.filter((each) => part(each, 'outcome') === 'set-aside')
      .map((each) => part(each, 'reference') + ': ' + part(each, 'message'))),
  );
}
function showError(outcome) {
  byId('answer').replaceChildren(...list('ul', 'Not answered', outcome.issue.map((each) => each.details.text)));
}
async function ask(event) {
  event.preventDefault();
  const query = new URLSearchParams({ guideline: byId('guideline').value, asOf: byId('as-of').value });
  const headers = { 'Content-Type': 'application/fhir+json' };
  const response = await fetch('fhir/$assess-hypertension?' + query, { method: 'POST', headers, body: byId('bundle').value });
  const body = await response.json();
  byId('whole').textContent = JSON.stringify(body, null, 2);
  (response.ok ? show : showError)(body);
}
byId('ask').addEventListener('submit', (event) => {
  ask(event).catch(() => byId('answer').replaceChildren(make('p', 'The service cannot be reached.')));
});
fetch('example.json').then((response) => response.json()).then(({ asOf, bundle }) => {
  byId('as-of').value = asOf;
  byId('bundle').value = JSON.stringify(bundle, null, 2);
});
`;

export const pageStyle = `:root { color-scheme: light dark; font: 1rem/1.5 system-ui, sans-serif; }
main { max-width: 60rem; margin: 0 auto; padding: 1rem; }
aside { border: 2px solid; padding: 0 1rem; }
aside ul { margin: 0.25rem 0; }
textarea { width: 100%; box-sizing: border-box; font-family: monospace; }
pre { overflow: auto; }
#answer > p { font-weight: bold; font-size: 1.2rem; }
button { font-size: 1.1rem; padding: 0.4rem 1.2rem; }
`;
