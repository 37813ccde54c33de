// What the phone sheet knows: the data of its page, what has been written down so far, and which screen is shown.

import { linerLyingAt } from './lying.js';
import type {
  Look,
  PhoneLiner,
  PhonePoint,
  PhoneSheetData,
  PhoneView,
} from '../../protocol/offline-forms.js';
import { pageParts, today } from '../forms/kit.js';
import { entryInFull, type Entry } from './entry.js';
import type { Merged, Plain } from '../forms/merge.js';
import { storeFor } from '../forms/store.js';

export type HowBad = 'slight' | 'serious' | 'urgent';

export interface ConditionAnswer {
  answer: '' | 'there' | 'closed' | 'not seen';
  /** How bad it is now, where it is still there; missing where nobody said. */
  severity?: HowBad | '' | undefined;
  note: string;
}

/** Something wrong that the records do not know yet, as it was typed. */
export interface Wrong {
  readonly kind: string;
  /** Metres or feet, or the name of a point. */
  at: string;
  clock: string;
  /** Which way the inspector looked at the clock position. */
  readonly look: Look;
  measure: string;
  aspect: string;
  temperature: string;
  wornThrough: boolean;
  severity: HowBad | '';
  note: string;
  photo: string;
}

export type Screen = 'start' | 'list' | 'point' | 'place' | 'wrong' | 'more' | 'finish';

export interface Entries {
  /** Which way the inspector looks. */
  look: Look;
  date: string;
  meter: string;
  tonnes: string;
  by: string;
  gauge: string;
  gaugeError: string;
  unit: 'mm' | 'in';
  /** By id of the point. */
  entries: Record<string, Entry>;
  /** Clock positions as typed, and which way the inspector looked then. */
  places: { readonly chainage: string; readonly clock: string; readonly look: Look }[];
  /** A place typed and not yet added. */
  placeBegun: { chainage: string; clock: string };
  /** Remarks of points whose reading was taken back, by id of the point. */
  remarks: Record<string, string>;
  /** By name of the hold-down. */
  gaps: Record<string, string>;
  /** Answers to open conditions, by how the inspection names them. */
  conditions: Record<string, ConditionAnswer>;
  wrong: Wrong[];
  /** Which of them is shown; one past the last while what is wrong is being chosen. */
  wrongAt: number;
  /** Where it was begun, and its place if that was at a point. */
  wrongBegun: { readonly at: string; readonly clock: string; readonly from: Screen };
  empty: string;
  loaded: string;
  /** Of the screw, counted. */
  speed: string;
  findings: { part: string; at: string; text: string }[];
  /** Entries that a page of before kept have no diameter. */
  flights: { at: string; depth: string; across?: string }[];
  /** Names of pictures as the phone calls them. */
  photos: string[];
  /** What another tab had where both changed one field: carried along as it was typed. */
  elsewhere: { readonly what: string; readonly typed: string }[];
  /** The phone's day when something was last typed. */
  touched: string;
  view: Screen;
  /** Position of the point that is shown. */
  at: number;
}

export const { data, app } = pageParts<PhoneSheetData>();

/** Long distances in metres, or in feet where the liner is declared in inches. */
export const far =
  data.unit === 'in' ? { unit: 'ft', words: 'Feet', mm: 304.8 } : { unit: 'm', words: 'Metres', mm: 1000 };

const fresh = (): Entries => ({
  look: data.look,
  date: believable(today()) ? today() : '',
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
  wrong: [],
  wrongAt: 0,
  wrongBegun: { at: '', clock: '', from: 'list' },
  empty: '',
  loaded: '',
  speed: '',
  findings: [],
  flights: [],
  photos: [],
  elsewhere: [],
  touched: today(),
  view: 'start',
  at: 0,
});

/** A phone's clock may be a year off; a date before the last reading, or long after the page was made, is not written down for anyone. */
export function believable(date: string): boolean {
  const longAfter = new Date(Date.parse(data.asOf) + 400 * 86_400_000).toISOString().slice(0, 10);
  return date >= lastDay() && date <= longAfter;
}

/** Of the last record that the page knows of. */
export function lastDay(): string {
  return [data.meter.date ?? '', ...data.points.map(({ last }) => last?.date ?? '')].reduce((a, b) =>
    b > a ? b : a,
  );
}

let redraw = (): void => undefined;

/** Called where another tab has typed something. */
export function redrawWith(given: () => void): void {
  redraw = given;
}

const ownAlways = ['view', 'at', 'wrongAt', 'wrongBegun', 'touched'] as const;

/** Both tabs' entries; which screen each of them shows is its own. */
function adopt(mine: Entries, { value, displaced }: Merged): void {
  const own = Object.fromEntries(ownAlways.map((name) => [name, mine[name]]));
  const told = displaced
    .filter(({ path }) => !ownAlways.some((name) => name === path[0]))
    .map(({ path, typed }) => ({ what: path[path.length - 1] ?? '', typed: inWords(path, typed) }))
    .filter(({ typed }) => typed.trim() !== '');
  Object.assign(state, value, own);
  state.elsewhere = [...state.elsewhere, ...told];
  redraw();
}

function inWords([first]: readonly string[], typed: Plain): string {
  if (typeof typed === 'string') return typed;
  return first === 'entries' ? entryInFull(typed as unknown as Entry) : JSON.stringify(typed); // the other tab is this page
}

export const store = storeFor<Entries>({
  key: `troughline inspection ${data.key}`,
  whole: (path) => path[0] === 'placeBegun' || (path[0] === 'entries' && path.length === 2),
  adopt,
  mine: () => state,
});
export const state: Entries = { ...fresh(), ...store.load() };

/** Whether what was found on the phone is of another day, so that somebody must say whether it goes on. */
export const resume = { asked: state.touched !== today() && !isBlank(state) };

/** Nothing seen is written down, whoever looked and with what. */
export function isBlank(entries: Entries): boolean {
  const words = [entries.meter, entries.tonnes, entries.empty, entries.loaded, entries.speed];
  const lists = [
    entries.places,
    entries.findings,
    entries.flights,
    entries.photos,
    entries.elsewhere,
    entries.wrong,
  ];
  const named = [entries.entries, entries.remarks, entries.gaps, entries.conditions];
  return (
    words.every((typed) => typed.trim() === '') &&
    lists.every((list) => list.length === 0) &&
    named.every((each) => Object.keys(each).length === 0) &&
    entries.placeBegun.chainage + entries.placeBegun.clock === ''
  );
}

/** Another round; the present one is put aside on the phone. */
export function startAnother(): void {
  if (!isBlank(state)) store.putAside({ ...state });
  startAfresh();
  keep();
}

/** One that was put aside, in place of the present one. */
export function takeBack(index: number): void {
  const taken = store.takeBack(index);
  if (!taken) return;
  if (!isBlank(state)) store.putAside({ ...state });
  Object.assign(state, fresh(), taken, { view: 'start' });
  keep();
}

export function startAfresh(): void {
  Object.assign(state, fresh());
}

export function keep(): void {
  state.touched = today();
  store.keep(state);
  document.getElementById('kept')?.replaceChildren(store.words());
  document.getElementById('not-kept')?.replaceChildren(notKept());
}

/** Stays at the head of every screen while the browser stores nothing. */
export function notKept(): string {
  return store.works() ? '' : 'NOT KEPT on this phone: copy the text before you close.';
}

/** A place to be looked at, as someone meets it who looks the way that is chosen. */
export type PhoneRow = Omit<PhonePoint, 'seen'> & PhoneView;

/** The points of the sheet, and the places that were added to them. */
export function rows(): readonly PhoneRow[] {
  const added = state.places.map(({ chainage, clock, look }): PhoneRow => {
    const clockText = look === state.look ? clock : mirrored(clock);
    const liner = linerLyingAt(data, Number(chainage) * far.mm);
    return {
      id: placeId(chainage, look === 'downstream' ? clock : mirrored(clock)),
      label: `${chainage} ${far.unit} at ${clockText}`,
      writes: `at ${chainage} ${far.unit} clock ${clockText}`,
      where: [],
      clock: hours(clockText) ?? 6,
      clockText,
      liner: liner?.name ?? '',
      fitted: liner?.thickness ?? 0,
      last: null,
      expect: { words: '' },
    };
  });
  return [...data.points.map(({ seen, ...point }) => ({ ...point, ...seen[state.look] })), ...added];
}

/** Position of the place among the rows; one that is there already is not added again. */
export function addPlace(place: Entries['places'][number]): number {
  const known = rows().length;
  state.places.push(place);
  const all = rows();
  const at = all.findIndex(({ id }) => id === all[known]?.id);
  if (at < known) state.places.pop();
  return at;
}

/** One place, one entry, whichever tab added it. */
function placeId(chainage: string, clock: string): string {
  return `place ${Number(chainage)} ${clock}`;
}

/** Entries of points that the page does not have any more, since it was made again of a changed machine. */
export function homeless(): readonly (readonly [string, Entry])[] {
  const known = new Set(rows().map(({ id }) => id));
  return Object.entries(state.entries).filter(([id]) => !known.has(id));
}

export function linerOf(point: PhoneRow): PhoneLiner | undefined {
  return data.liners.find(({ name }) => name === point.liner) ?? data.liners[0];
}

/** Of a clock position as it is written, 7:30; undefined for anything else. */
export function hours(clock: string): number | undefined {
  const parts = /^(\d{1,2}):([0-5]\d)$/.exec(clock);
  const hour = Number(parts?.[1]);
  if (!parts || hour < 1 || hour > 12) return undefined;
  return (hour % 12) + Number(parts[2]) / 60 || 12;
}

/** The same place seen from the other side. */
export function mirrored(clock: string): string {
  const found = hours(clock);
  if (found === undefined) return clock;
  const minutes = (720 - Math.round(found * 60)) % 720;
  return `${Math.floor(minutes / 60) || 12}:${String(minutes % 60).padStart(2, '0')}`;
}
