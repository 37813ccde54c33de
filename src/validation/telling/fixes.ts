// The few shapes that quick fixes come in.

import type { Origin } from '../../domain/model/origin.js';
import type { Fix } from '../finding.js';

/** Replace the text at `origin`. */
export function replace(
  origin: Origin,
  text: string,
  options: { readonly title?: string; readonly preferred?: boolean } = {},
): Fix {
  const title = options.title ?? `Write ${text}`;
  return { title, edits: [{ origin, text }], ...(options.preferred ? { preferred: true } : {}) };
}

/** Take out the text at `origin`. */
export function remove(origin: Origin, title: string): Fix {
  return { title, edits: [{ origin, text: '' }] };
}

/** Put text in just before `origin`. */
export function insertBefore(origin: Origin, text: string, title: string): Fix {
  return { title, edits: [{ origin: { ...origin, end: origin.start }, text }] };
}

/** Put text in just after `origin`. */
export function insertAfter(origin: Origin, text: string, title: string): Fix {
  return { title, edits: [{ origin: { ...origin, start: origin.end }, text }] };
}
