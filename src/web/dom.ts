// Elements in one call. Text is always text: nothing here reads markup.

type Value = string | number | boolean | undefined | ((event: Event) => void);
export type Attributes = Readonly<Record<string, Value>>;
export type Child = Node | string | undefined;

/** An HTML element; an attribute named `on…` is a listener, false and undefined leave one out. */
export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  dress(element, attributes);
  element.append(...children.filter((child) => child !== undefined));
  return element;
}

const svgNamespace = 'http://www.w3.org/2000/svg';

export function draw<K extends keyof SVGElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly Child[]
): SVGElementTagNameMap[K] {
  const element = document.createElementNS(svgNamespace, tag);
  dress(element, attributes);
  element.append(...children.filter((child) => child !== undefined));
  return element;
}

function dress(element: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) continue;
    if (typeof value === 'function') element.addEventListener(name.slice(2), value);
    else element.setAttribute(name, value === true ? '' : String(value));
  }
}

/** The element of an id that page.html holds. */
export function byId(id: string): HTMLElement {
  const element = document.getElementById(id);
  if (element === null) throw new Error(`The page has no element ${id}.`);
  return element;
}

export function list(tag: 'ul' | 'ol', items: readonly (string | Node)[], attributes: Attributes = {}) {
  return make(tag, attributes, ...items.map((item) => make('li', {}, item)));
}

/** A heading and a list; nothing when the list is empty. */
export function listed(heading: string, items: readonly (string | Node)[], tag: 'ul' | 'ol' = 'ul'): Node[] {
  return items.length === 0 ? [] : [make('h3', {}, heading), list(tag, items)];
}

/** A text offered as a file; nothing leaves the browser. */
export function save(name: string, type: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  make('a', { href: address, download: name }).click();
  URL.revokeObjectURL(address);
}
