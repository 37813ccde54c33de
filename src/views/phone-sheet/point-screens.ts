// The screens of the points: all of them as a list, one of them with its keypad and colours, and a place that is not on the sheet.

import { button, choice, draw, el, field, number, type FormChild } from '../forms/kit.js';
import { typedNumber } from '../forms/typed-number.js';
import { judgedField } from './judged-field.js';
import { answered, go, goOn, keypad, keeping, question, show } from './screen.js';
import { entryWords, type Entry } from './entry.js';
import { expectedAt, runSince } from './expected.js';
import { addPlace, far, keep, linerOf, rows, state, type PhoneRow } from './state.js';
import { beginWrong } from './something-wrong.js';
import { warnings } from './text.js';
import { along, clockTyped, thicknessRead, why } from './typed.js';

export function listScreen(): readonly FormChild[] {
  const all = rows();
  const done = all.filter(({ id }) => state.entries[id]).length;
  return [
    el('p', { class: 'count' }, `${done} of ${all.length} points written down`),
    el('div', { class: 'list' }, all.map(listRow)),
    button('Another place', () => go('place'), { id: 'add-place' }),
    button('Something is wrong', () => beginWrong(), { id: 'to-wrong' }),
    button('Hold-downs, current, findings', () => go('more'), { id: 'to-more' }),
    button('Finish: give back the text', () => go('finish'), { class: 'main', id: 'to-finish' }),
    button('Back to date, meter and side', () => go('start')),
  ];
}

function listRow(point: PhoneRow, index: number): FormChild {
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
  const { entry, unit } = begun(point);
  const set = (next: Entry | undefined): void => write(point, next);
  return [
    placeOf(point, state.at + 1, all.length),
    before(point),
    keys(),
    el('div', { class: 'label' }, 'or the colour that shows'),
    colours(point, entry, set),
    choice('TROUGH SHOWING (steel)', entry?.kind === 'trough', () => set({ kind: 'trough' }), 'grave'),
    el('div', { class: 'label' }, 'or not seen, because of'),
    notSeen(entry, set),
    el('div', { class: 'label' }, 'the gauge reads'),
    units(unit, entry, set),
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
    !entry && remarkLeft(point),
    basis(point),
    button('Something is wrong here', () => beginWrong(point), { id: 'wrong-here' }),
    entry && button('Clear this point', () => clear(point)),
    foot(point, entry, all.length),
  ];
}

/** What is written down of a point, and the number that typing goes on from. */
function begun(point: PhoneRow): { readonly entry: Entry | undefined; readonly unit: 'mm' | 'in' } {
  const entry = (state.entries as Partial<typeof state.entries>)[point.id];
  if (keypad.typing === '' && entry?.kind === 'thickness') {
    keypad.typing = entry.value;
    return { entry, unit: entry.unit };
  }
  return { entry, unit: entry?.kind === 'thickness' ? entry.unit : state.unit };
}

/** Writes an entry down; steel that was seen gives way only when the inspector says so. */
function write(point: PhoneRow, next: Entry | undefined): void {
  if (state.entries[point.id]?.kind === 'trough' && next?.kind !== 'trough') {
    question.instead = { entry: next, typing: keypad.typing };
    keypad.typing = '';
    show();
    return;
  }
  replace(point, next);
}

/** A remark outlives the reading it was typed beside: it goes to the next one, or stands alone. */
function replace(point: PhoneRow, next: Entry | undefined): void {
  const remarks = state.remarks as Partial<Record<string, string>>;
  const remark = remarks[point.id] ?? remarkOf(state.entries[point.id]);
  delete state.remarks[point.id];
  if (next) {
    const reason = next.kind === 'not seen' ? next.note : undefined;
    next.note = [reason, remark].filter(Boolean).join(', ');
    state.entries[point.id] = next;
  } else {
    delete state.entries[point.id];
    if (remark !== '') state.remarks[point.id] = remark;
  }
  if (next?.kind !== 'thickness') keypad.typing = '';
  answered();
  keep();
  show();
}

const reasons = ['build-up', 'material in the way', 'cover not opened', 'out of reach', 'too dark'];

/** The reason chosen for not seeing a place, with which its remark begins. */
function reasonOf(entry: Entry | undefined): string | undefined {
  if (entry?.kind !== 'not seen') return undefined;
  return reasons.find((reason) => entry.note === reason || entry.note?.startsWith(`${reason}, `));
}

/** What the inspector typed beside it. */
function remarkOf(entry: Entry | undefined): string {
  return (entry?.note ?? '').slice(reasonOf(entry)?.length ?? 0).replace(/^, /, '');
}

/** Clears the reading and the remark: this is asked for in so many words. */
function clear(point: PhoneRow): void {
  const entry = state.entries[point.id];
  if (entry && entry.kind !== 'trough') delete entry.note;
  write(point, undefined);
}

/** Beside the buttons at the foot, where the thumb is. */
function steelQuestion(point: PhoneRow): FormChild {
  const { instead } = question;
  if (!instead) return undefined;
  const next = instead.entry ? entryWords(instead.entry) : 'nothing';
  const settle = (): void => {
    question.instead = undefined;
    keypad.typing = instead.typing;
    replace(point, instead.entry);
  };
  const leave = (): void => {
    question.instead = undefined;
    keypad.typing = '';
    show();
  };
  return el('div', { class: 'ask', id: 'steel-question', role: 'alert' }, [
    el('p', { class: 'warn' }, `! TROUGH SHOWING is written down here. Put ${next} in its place?`),
    button('Keep TROUGH SHOWING', leave, { class: 'main', id: 'steel-keep' }),
    button(`Steel does not show: ${next}`, settle, { id: 'steel-replace' }),
  ]);
}

/** A remark whose reading was taken back waits for the next one. */
function remarkLeft(point: PhoneRow): FormChild {
  const remark = (state.remarks as Partial<Record<string, string>>)[point.id] ?? '';
  if (remark === '') return undefined;
  const take = keeping((value) => (state.remarks[point.id] = value));
  return field('Remark (waits for a reading)', remark, take, { id: 'note' });
}

type Set = (next: Entry | undefined) => void;

/** A key of the keypad or of a keyboard, at the point that is shown. */
export function typeSign(sign: string): void {
  const point = rows()[state.at];
  if (!point || question.instead) return;
  const { unit } = begun(point);
  if (sign === '⌫') keypad.typing = keypad.typing.slice(0, -1);
  else if (sign === '.' && keypad.typing.includes('.')) return;
  else if (keypad.typing.length < 6) keypad.typing += sign;
  // A lone point is the beginning of a number: kept on the display, not yet a reading.
  const typed = keypad.typing;
  write(point, number(typed) === undefined ? undefined : { kind: 'thickness', value: typed, unit });
  // eslint-disable-next-line @typescript-eslint/no-unnecessary-condition -- writing may have asked something
  if (keypad.typing !== typed && !question.instead) {
    keypad.typing = typed;
    show();
  }
}

function keys(): FormChild {
  const signs = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '.', '0', '⌫'];
  const named: Readonly<Record<string, string>> = { '⌫': 'delete', '.': 'point' };
  return el(
    'div',
    { class: 'pad', role: 'group', 'aria-label': 'Thickness' },
    signs.map((sign) => button(sign, () => typeSign(sign), { 'aria-label': named[sign] ?? sign })),
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

function colours(point: PhoneRow, entry: Entry | undefined, set: Set): FormChild {
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
  const chosen = reasonOf(entry);
  const other = entry?.kind === 'not seen' && chosen === undefined;
  return el('div', { class: 'grid two' }, [
    ...reasons.map((reason) =>
      choice(reason, chosen === reason, () => set({ kind: 'not seen', note: reason })),
    ),
    choice('not seen', other, () => set({ kind: 'not seen' })),
  ]);
}

function placeOf(point: PhoneRow, place: number, count: number): FormChild {
  return el('section', { class: 'place' }, [
    el('div', {}, [
      el('h1', { class: 'point' }, [point.label, el('small', {}, ` ${place} of ${count}`)]),
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

function before(point: PhoneRow): FormChild {
  const { last, expect } = point;
  const expected = expectedAt(point);
  const words = expected?.words ?? ('words' in expect ? expect.words : '');
  return el('div', { class: 'before' }, [
    el('div', {}, [
      el('span', {}, 'Last: '),
      el('strong', {}, last ? `${last.words}, ${last.date}` : 'no reading'),
    ]),
    words !== '' && el('div', { id: 'expect' }, [el('span', {}, 'Expect: '), el('strong', {}, words)]),
  ]);
}

/** What the expectation was reckoned from. */
function basis(point: PhoneRow): FormChild {
  if (!('basis' in point.expect) || !expectedAt(point)) return undefined;
  const reckoned = runSince()?.by === 'counter' ? 'the meter typed' : `duty up to ${state.date}`;
  return el('p', { class: 'basis' }, `Expected by ${reckoned}; ${point.expect.basis}.`);
}

/** Beside the buttons at the foot, so that the keypad never moves under a finger. */
function foot(point: PhoneRow, entry: Entry | undefined, count: number): FormChild {
  const isLast = state.at + 1 >= count;
  const read = entry?.kind === 'thickness' ? thicknessRead(entry) : undefined;
  const found = [
    ...(read?.kind === 'unreadable' ? [`Cannot be read: ${read.why}. It is kept as typed.`] : []),
    ...warnings(point, entry),
  ];
  const steel = steelQuestion(point);
  if (steel) return el('nav', {}, steel);
  return el('nav', {}, [
    el(
      'div',
      { class: 'warn', role: 'alert' },
      found.map((text) => el('p', {}, `! ${text}`)),
    ),
    button('◀', () => goOn(Math.max(0, state.at - 1)), {
      'aria-label': 'previous point',
      disabled: state.at === 0,
    }),
    button('List', () => go('list'), { id: 'list' }),
    button(isLast ? 'Done ▶' : 'Next ▶', () => goOn(state.at + 1, isLast), {
      class: 'main',
      id: 'next',
    }),
  ]);
}

/** The trough as a clock face, with the point on its wall. */
function face({ clock, clockText }: PhoneRow): SVGElement {
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
  const begun = state.placeBegun;
  const warning = el('p', { class: 'warn', role: 'alert' });
  const add = (): void => {
    const at = typedNumber(begun.chainage, along);
    const clock = clockTyped(begun.clock);
    if (at.kind !== 'read') {
      warning.textContent = `${far.words} from 0 to ${along.most}.`;
    } else if (clock === undefined) {
      warning.textContent = 'A clock position like 7:30, from 1:00 to 12:59.';
    } else {
      state.placeBegun = { chainage: '', clock: '' };
      go('point', addPlace({ chainage: at.text, clock, look: state.look }));
    }
  };
  return [
    el('h2', {}, 'Another place'),
    judgedField({
      words: `${far.words} from the tail end`,
      value: begun.chainage,
      take: (value) => (begun.chainage = value),
      why: () => why(begun.chainage, along),
      settings: { id: 'chainage', inputmode: 'decimal' },
    }),
    judgedField({
      words: 'Clock as you see it, like 7:30',
      value: begun.clock,
      take: (value) => (begun.clock = value),
      why: () =>
        begun.clock.trim() === '' || clockTyped(begun.clock) !== undefined
          ? ''
          : 'it is no clock position like 7:30',
      settings: { id: 'clock' },
    }),
    warning,
    button('Add', add, { class: 'main', id: 'place-add' }),
    button('Back', () => go('list')),
  ];
}
