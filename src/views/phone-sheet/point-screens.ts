// The screens of the points: all of them as a list, one of them with its keypad and colours, and a place that is not on the sheet.

import type { PhonePoint } from '../../protocol/offline-forms.js';
import { button, choice, draw, el, field, number, plain, type FormChild } from '../forms/kit.js';
import { go, keeping, keypad, show } from './screen.js';
import { data, far, hours, keep, linerOf, rows, state, type Entry } from './state.js';
import { entryWords, warnings } from './text.js';

export function listScreen(): readonly FormChild[] {
  const all = rows();
  const done = all.filter(({ id }) => state.entries[id]).length;
  return [
    el('p', { class: 'count' }, `${done} of ${all.length} points written down`),
    el('div', { class: 'list' }, all.map(listRow)),
    button('Another place', () => go('place'), { id: 'add-place' }),
    button('Hold-downs, current, findings', () => go('more'), { id: 'to-more' }),
    button('Finish: give back the text', () => go('finish'), { class: 'main', id: 'to-finish' }),
    button('Back to date and meter', () => go('start')),
  ];
}

function listRow(point: PhonePoint, index: number): FormChild {
  const entry = state.entries[point.id];
  return button(
    [
      el('strong', {}, point.label),
      el('span', { class: 'clock' }, point.clockText),
      el('span', { class: 'where' }, point.where[0] ?? ''),
      el('span', { class: 'value' }, entry ? `✓ ${entryWords(entry)}` : 'open'),
    ],
    () => go('point', index),
    { class: `row${entry ? ' done' : ''}` },
  );
}

export function pointScreen(): readonly FormChild[] {
  const all = rows();
  const point = all[state.at];
  if (!point) {
    state.view = 'list';
    return listScreen();
  }
  const entry = state.entries[point.id];
  const begun = keypad.typing === '' && entry?.kind === 'thickness' ? entry : undefined;
  if (begun) keypad.typing = begun.value;
  const unit = begun?.unit ?? state.unit;
  const set = (next: Entry | undefined): void => write(point, next);
  return [
    placeOf(point),
    before(point),
    el(
      'div',
      { class: 'display', id: 'display', role: 'status' },
      entry ? entryWords(entry) : keypad.typing || 'nothing yet',
    ),
    keys(unit, set),
    units(unit, entry, set),
    el('div', { class: 'label' }, 'or the colour that shows'),
    colours(point, entry, set),
    choice('TROUGH SHOWING (steel)', entry?.kind === 'trough', () => set({ kind: 'trough' }), 'grave'),
    el('div', { class: 'label' }, 'or not seen, because of'),
    notSeen(entry, set),
    entry &&
      field(
        'Remark',
        entry.note ?? '',
        keeping((value) => {
          entry.note = value;
          state.entries[point.id] = entry;
        }),
        { id: 'note' },
      ),
    entry && button('Clear this point', () => set(undefined)),
    foot(warnings(point, entry), all.length),
  ];
}

/** Writes an entry down; a remark stays when only the reading changes. */
function write(point: PhonePoint, next: Entry | undefined): void {
  const entry = state.entries[point.id];
  const stays = next && entry?.note && next.note === undefined;
  if (stays && next.kind !== 'not seen' && entry.kind !== 'not seen') next.note = entry.note;
  if (next) state.entries[point.id] = next;
  else delete state.entries[point.id];
  if (next?.kind !== 'thickness') keypad.typing = '';
  keep();
  show();
}

type Set = (next: Entry | undefined) => void;

function keys(unit: 'mm' | 'in', set: Set): FormChild {
  const type = (sign: string): void => {
    if (sign === '⌫') keypad.typing = keypad.typing.slice(0, -1);
    else if (sign === '.' && keypad.typing.includes('.')) return;
    else if (keypad.typing.length < 6) keypad.typing += sign;
    // A lone point is the beginning of a number: kept on the display, not yet a reading.
    const begun = keypad.typing;
    set(number(begun) === undefined ? undefined : { kind: 'thickness', value: begun, unit });
    if (keypad.typing !== begun) {
      keypad.typing = begun;
      show();
    }
  };
  const signs = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '.', '0', '⌫'];
  const named: Readonly<Record<string, string>> = { '⌫': 'delete', '.': 'point' };
  return el(
    'div',
    { class: 'pad' },
    signs.map((sign) => button(sign, () => type(sign), { 'aria-label': named[sign] ?? sign })),
  );
}

function units(unit: 'mm' | 'in', entry: Entry | undefined, set: Set): FormChild {
  const take = (each: 'mm' | 'in'): void => {
    state.unit = each;
    if (entry?.kind === 'thickness') return set({ kind: 'thickness', value: entry.value, unit: each });
    keep();
    show();
  };
  return el(
    'div',
    { class: 'grid two' },
    (['mm', 'in'] as const).map((each) => choice(each, unit === each, () => take(each))),
  );
}

function colours(point: PhonePoint, entry: Entry | undefined, set: Set): FormChild {
  const layers = linerOf(point)?.layers ?? [];
  return el(
    'div',
    { class: 'grid two' },
    layers.map(({ name }) =>
      choice(name, entry?.kind === 'colour' && entry.colour === name, () =>
        set({ kind: 'colour', colour: name }),
      ),
    ),
  );
}

function notSeen(entry: Entry | undefined, set: Set): FormChild {
  const reasons = ['build-up', 'material in the way', 'cover not opened', 'out of reach', 'too dark'];
  const note = entry?.kind === 'not seen' ? (entry.note ?? '') : undefined;
  const other = note !== undefined && !reasons.includes(note);
  return el('div', { class: 'grid two' }, [
    ...reasons.map((reason) =>
      choice(reason, note === reason, () => set({ kind: 'not seen', note: reason })),
    ),
    choice('not seen', other, () => set({ kind: 'not seen', note: '' })),
  ]);
}

function placeOf(point: PhonePoint): FormChild {
  return el('section', { class: 'place' }, [
    el('div', {}, [
      el('div', { class: 'point' }, point.label),
      el('div', { class: 'at' }, `${point.clockText} o’clock`),
      el(
        'div',
        { class: 'facts' },
        point.where.map((text) => el('div', {}, text)),
      ),
    ]),
    face(point),
  ]);
}

function before({ last, expect }: PhonePoint): FormChild {
  return el('div', { class: 'before' }, [
    el('div', {}, [
      el('span', {}, 'Last: '),
      el('strong', {}, last ? `${last.words}, ${last.date}` : 'no reading'),
    ]),
    expect.words !== '' && el('div', {}, [el('span', {}, 'Expect: '), el('strong', {}, expect.words)]),
  ]);
}

/** Beside the buttons at the foot, so that the keypad never moves under a finger. */
function foot(found: readonly string[], count: number): FormChild {
  const isLast = state.at + 1 >= count;
  return el('nav', {}, [
    el(
      'div',
      { class: 'warn', role: 'alert' },
      found.map((text) => el('p', {}, `! ${text}`)),
    ),
    button('◀', () => go('point', Math.max(0, state.at - 1)), {
      'aria-label': 'previous point',
      disabled: state.at === 0,
    }),
    button('List', () => go('list'), { id: 'list' }),
    button(isLast ? 'Done ▶' : 'Next ▶', () => (isLast ? go('list') : go('point', state.at + 1)), {
      class: 'main',
      id: 'next',
    }),
  ]);
}

/** The trough as a clock face, with the point on its wall. */
function face({ clock, clockText }: PhonePoint): SVGElement {
  const angle = ((clock - 3) * Math.PI) / 6;
  const isAbove = clock > 9 || clock < 3;
  const x = isAbove ? (clock > 9 ? 18 : 102) : 60 + 42 * Math.cos(angle);
  const y = isAbove ? Math.max(14, 52 + 42 * Math.sin(angle)) : 52 + 42 * Math.sin(angle);
  const picture = draw('svg', {
    viewBox: '0 0 120 116',
    class: 'face',
    role: 'img',
    'aria-label': `Clock face, point at ${clockText}`,
  });
  const wall = { d: 'M18 8V52A42 42 0 0 0 102 52V8', fill: 'none', stroke: '#000', 'stroke-width': 5 };
  const ray = { x1: 60, y1: 52, x2: x, y2: y, stroke: '#000', 'stroke-width': 2, 'stroke-dasharray': '4 3' };
  const figure = { 'text-anchor': 'middle', 'font-size': 15, 'font-weight': 'bold' };
  picture.append(
    draw('path', wall),
    draw('text', { x: 112, y: 57, ...figure }, '3'),
    draw('text', { x: 60, y: 114, ...figure }, '6'),
    draw('text', { x: 8, y: 57, ...figure }, '9'),
    draw('line', ray),
    draw('circle', { cx: x, cy: y, r: 8, fill: '#fff', stroke: '#000', 'stroke-width': 4 }),
    draw('circle', { cx: x, cy: y, r: 3, fill: '#000' }),
  );
  return picture;
}

export function placeScreen(): readonly FormChild[] {
  let chainage = '';
  let clock = '';
  const warning = el('p', { class: 'warn', role: 'alert' });
  const add = (): void => {
    const at = number(chainage);
    const written = clock.trim().replace('.', ':');
    const tidy = /^\d{1,2}$/.test(written) ? `${written}:00` : written;
    if (at === undefined || at * far.mm > data.length) {
      warning.textContent = `${far.words} from 0 to ${Math.floor((data.length / far.mm) * 100) / 100}.`;
    } else if (hours(tidy) === undefined) {
      warning.textContent = 'A clock position like 7:30, from 1:00 to 12:59.';
    } else {
      state.places.push({ chainage: plain(chainage), clock: tidy });
      go('point', rows().length - 1);
    }
  };
  return [
    el('h2', {}, 'Another place'),
    field(`${far.words} from the tail end`, '', (value) => (chainage = value), {
      id: 'chainage',
      inputmode: 'decimal',
    }),
    field('Clock as you see it, like 7:30', '', (value) => (clock = value), { id: 'clock' }),
    warning,
    button('Add', add, { class: 'main', id: 'place-add' }),
    button('Back', () => go('list')),
  ];
}
