// What the phone sheet knows: the data of its page, what has been written down so far, and which screen is shown.

import type { PhoneLiner, PhonePoint, PhoneSheetData } from '../../protocol/offline-forms.js';
import { pageParts, storeFor, today } from '../forms/kit.js';

export type Entry = (
  | { readonly kind: 'thickness'; readonly value: string; readonly unit: 'mm' | 'in' }
  | { readonly kind: 'colour'; readonly colour: string }
  | { readonly kind: 'trough' }
  | { readonly kind: 'not seen' }
) & { note?: string | undefined };

export interface ConditionAnswer {
  answer: '' | 'there' | 'closed' | 'not seen';
  note: string;
}

export type Screen = 'start' | 'list' | 'point' | 'place' | 'more' | 'finish';

export interface Entries {
  date: string;
  meter: string;
  tonnes: string;
  by: string;
  gauge: string;
  gaugeError: string;
  unit: 'mm' | 'in';
  /** By id of the point. */
  entries: Record<string, Entry>;
  places: { readonly chainage: string; readonly clock: string }[];
  /** A place typed and not yet added. */
  placeBegun: { chainage: string; clock: string };
  /** Remarks of points whose reading was taken back, by id of the point. */
  remarks: Record<string, string>;
  /** By name of the hold-down. */
  gaps: Record<string, string>;
  /** Answers to open conditions, by how the inspection names them. */
  conditions: Record<string, ConditionAnswer>;
  empty: string;
  loaded: string;
  findings: { part: string; at: string; text: string }[];
  flights: { at: string; depth: string }[];
  view: Screen;
  /** Position of the point that is shown. */
  at: number;
}

export const { data, app } = pageParts<PhoneSheetData>();

/** Long distances in metres, or in feet where the liner is declared in inches. */
export const far =
  data.unit === 'in' ? { unit: 'ft', words: 'Feet', mm: 304.8 } : { unit: 'm', words: 'Metres', mm: 1000 };

const fresh = (): Entries => ({
  date: today(),
  meter: '',
  tonnes: '',
  by: '',
  gauge: '',
  gaugeError: '',
  unit: data.unit,
  entries: {},
  places: [],
  placeBegun: { chainage: '', clock: '' },
  remarks: {},
  gaps: {},
  conditions: {},
  empty: '',
  loaded: '',
  findings: [],
  flights: [],
  view: 'start',
  at: 0,
});

export const store = storeFor<Entries>(`troughline inspection ${data.key}`);
export const state: Entries = { ...fresh(), ...store.load() };

export function startAfresh(): void {
  Object.assign(state, fresh());
}

export function keep(): void {
  store.keep(state);
  document.getElementById('kept')?.replaceChildren(store.words());
  document.getElementById('not-kept')?.replaceChildren(notKept());
}

/** Stays at the head of every screen while the browser stores nothing. */
export function notKept(): string {
  return store.works() ? '' : 'NOT KEPT on this phone: copy the text before you close.';
}

/** The points of the sheet, and the places that were added to them. */
export function rows(): readonly PhonePoint[] {
  const added = state.places.map(({ chainage, clock }, index): PhonePoint => ({
    id: `place ${index}`,
    label: `${chainage} ${far.unit} at ${clock}`,
    writes: `at ${chainage} ${far.unit} clock ${clock}`,
    where: [],
    clock: hours(clock) ?? 6,
    clockText: clock,
    liner: data.liners[0]?.name ?? '',
    last: null,
    expect: { words: '' },
  }));
  return [...data.points, ...added];
}

export function linerOf(point: PhonePoint): PhoneLiner | undefined {
  return data.liners.find(({ name }) => name === point.liner) ?? data.liners[0];
}

/** Of a clock position as it is written, 7:30; undefined for anything else. */
export function hours(clock: string): number | undefined {
  const parts = /^(\d{1,2}):([0-5]\d)$/.exec(clock);
  const hour = Number(parts?.[1]);
  if (!parts || hour < 1 || hour > 12) return undefined;
  return (hour % 12) + Number(parts[2]) / 60 || 12;
}
