// What an inspector writes down of one point, and how it is said in a few words.

import { plain } from '../forms/kit.js';

export type Entry = (
  | { readonly kind: 'thickness'; readonly value: string; readonly unit: 'mm' | 'in' }
  | { readonly kind: 'colour'; readonly colour: string }
  | { readonly kind: 'trough' }
  | { readonly kind: 'not seen' }
) & { note?: string | undefined };

export function entryWords(entry: Entry): string {
  switch (entry.kind) {
    case 'thickness':
      return `${plain(entry.value)} ${entry.unit}`;
    case 'colour':
      return entry.colour;
    case 'trough':
      return 'TROUGH SHOWING';
    case 'not seen':
      return `not seen${entry.note ? `: ${entry.note}` : ''}`;
  }
}

/** With the remark, as it is carried along where it is no reading of this block. */
export function entryInFull(entry: Entry): string {
  const words = entry.kind === 'thickness' ? `${entry.value} ${entry.unit}` : entryWords(entry);
  return entry.note && entry.kind !== 'not seen' ? `${words}, ${entry.note}` : words;
}
