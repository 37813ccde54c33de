// How is HTML or SVG written so that nothing an author typed can become markup?
// Text is escaped when it goes in; only `element` and `trusted` make markup, and only markup passes unescaped.

import { visibleText } from '../../domain/units/visible-text.js';

/** A finished piece of HTML or SVG. */
export interface Markup {
  readonly html: string;
}

/** Strings are text and are escaped; undefined and false are left out. */
export type Child = Markup | string | undefined | false | readonly Child[];

/** Undefined and false leave the attribute out; true writes it bare. Numbers must be finite. */
export type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

const voidElements = new Set(['br', 'hr', 'img', 'meta', 'link', 'col', 'wbr', 'input']);
const name = /^[A-Za-z][A-Za-z0-9:-]*$/;

/** `element('td', { class: 'number' }, '8.4 mm')`. Attributes keep the order in which they are given. */
export function element(tag: string, attributes: Attributes = {}, ...children: readonly Child[]): Markup {
  if (!name.test(tag)) throw new Error(`Not an element name: ${tag}`);
  const open = `<${tag}${attributesText(attributes)}>`;
  return { html: voidElements.has(tag) ? open : `${open}${childrenText(children)}</${tag}>` };
}

/** Several pieces in a row without an element of their own. */
export function group(...children: readonly Child[]): Markup {
  return { html: childrenText(children) };
}

/** Markup written by hand in our own code; never text from a file. */
export function trusted(html: string): Markup {
  return { html };
}

export function escapeHtml(text: string): string {
  return visibleText(text)
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}

function attributesText(attributes: Attributes): string {
  let text = '';
  for (const [key, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) continue;
    if (!name.test(key)) throw new Error(`Not an attribute name: ${key}`);
    if (value === true) text += ` ${key}`;
    else text += ` ${key}="${typeof value === 'number' ? plainNumber(value) : escapeHtml(value)}"`;
  }
  return text;
}

function childrenText(children: readonly Child[]): string {
  let text = '';
  for (const child of children) {
    if (child === undefined || child === false) continue;
    if (typeof child === 'string') text += escapeHtml(child);
    else if ('html' in child) text += child.html;
    else text += childrenText(child);
  }
  return text;
}

/** At most three decimals, no exponent, never NaN (that is a fault of ours and throws). */
export function plainNumber(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`Not a finite number in markup: ${value}`);
  const rounded = Math.round(value * 1000) / 1000;
  return rounded === 0 ? '0' : String(rounded);
}
