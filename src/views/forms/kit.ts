// What the offline forms for phones share. It writes only text into the page (never markup) and hands the finished text back.

export type FormChild = Node | string | false | null | undefined;

export interface ElementSettings {
  readonly tap?: (event: Event) => void;
  readonly typed?: (value: string) => void;
  readonly [attribute: string]: unknown;
}

export function el<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  settings: ElementSettings = {},
  children: FormChild | readonly FormChild[] = [],
): HTMLElementTagNameMap[K] {
  const node = document.createElement(tag);
  const { tap, typed, ...attributes } = settings;
  if (tap) node.addEventListener('click', tap);
  if (typed) node.addEventListener('input', () => typed('value' in node ? String(node.value) : ''));
  for (const [name, value] of Object.entries(attributes)) {
    if (value === true) node.setAttribute(name, '');
    else if (value !== false && value !== undefined) node.setAttribute(name, String(value));
  }
  for (const child of Array.isArray(children) ? (children as readonly FormChild[]) : [children as FormChild])
    // Array.isArray knows no readonly arrays
    if (child) node.append(child);
  return node;
}

export function draw(
  tag: string,
  settings: Readonly<Record<string, string | number>>,
  text?: string,
): SVGElement {
  const node = document.createElementNS('http://www.w3.org/2000/svg', tag) as SVGElement; // every element of that name space is one
  for (const [name, value] of Object.entries(settings)) node.setAttribute(name, String(value));
  if (text !== undefined) node.textContent = text;
  return node;
}

export function button(
  words: FormChild | readonly FormChild[],
  tap: (event: Event) => void,
  more: ElementSettings = {},
): HTMLButtonElement {
  return el('button', { type: 'button', tap, ...more }, words);
}

export function choice(words: string, chosen: boolean, tap: () => void, kind = ''): HTMLButtonElement {
  const classes = ['choice', chosen && 'chosen', kind].filter(Boolean).join(' ');
  return button(`${chosen ? '✓ ' : ''}${words}`, tap, {
    class: classes,
    'aria-pressed': chosen ? 'true' : 'false',
  });
}

export function field(
  words: string,
  value: string,
  typed: (value: string) => void,
  more: ElementSettings = {},
): HTMLLabelElement {
  const input = el('input', { value, typed, autocomplete: 'off', ...more });
  return el('label', { class: 'field' }, [el('span', {}, words), input]);
}

export function number(text: string): number | undefined {
  const tidy = text.trim().replace(',', '.');
  return /^(\d+\.?\d*|\.\d+)$/.test(tidy) ? Number(tidy) : undefined;
}

/** A number as the language reads it: no leading zeros, no bare point. */
export function plain(text: string): string {
  const tidy = text.trim().replace(',', '.');
  return (tidy.startsWith('.') ? `0${tidy}` : tidy).replace(/^0+(?=\d)/, '').replace(/\.$/, '');
}

export function quoted(text: string): string {
  return `"${oneLine(text).replace(/"/g, "'")}"`;
}

/** Without what would end a line of the records, whole in every other way. */
export function oneLine(text: string): string {
  return text.replace(/[\u0000-\u001f\u007f\u2028\u2029]/g, ' ').trim();
}

export function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** The data that the generator put into the page, and the element to show the form in. */
export function pageParts<T>(): { readonly data: T; readonly app: HTMLElement } {
  const data = document.getElementById('data');
  const app = document.getElementById('app');
  if (!data || !app) throw new Error('The page has no data or no place for the form.');
  return { data: JSON.parse(data.textContent) as T, app }; // our own generator wrote it, as src/protocol/offline-forms.ts says
}

/** The finished text with buttons to copy, share and save it. “Copied” is said where the browser says that it was copied. */
export function giveBack(text: string, name: string): HTMLElement {
  const rows = String(Math.min(16, text.split('\n').length));
  const box = el('textarea', { id: 'block', readonly: true, rows, 'aria-label': 'The text for the records' });
  box.value = text;
  const told = el('p', { class: 'count', role: 'status', id: 'told' });
  const say = (words: string): void => {
    told.textContent = words;
  };
  const byHand = (): void => {
    box.focus();
    box.select();
    // Whether it worked, nobody can tell a page, so it is not said.
    document.execCommand('copy');
    say('Not known to be copied. The text is selected: hold it and choose Copy.');
  };
  const copy = (): void => {
    // Missing where the page is no secure context, as a file on a phone is not.
    const clipboard = navigator.clipboard as Clipboard | undefined;
    if (clipboard) clipboard.writeText(text).then(() => say('Copied.'), byHand);
    else byHand();
  };
  const save = (): void => {
    const address = URL.createObjectURL(new Blob([text], { type: 'text/plain' }));
    const link = el('a', { href: address, download: name });
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(address), 10_000);
    say(`Saved as ${name}.`);
  };
  const share = (): void => {
    navigator.share({ title: name, text }).catch(() => undefined);
  };
  return el('div', {}, [
    box,
    button('Copy', copy, { class: 'main', id: 'copy' }),
    'share' in navigator && button('Share', share),
    button('Save as a file', save, { id: 'save' }),
    told,
  ]);
}
