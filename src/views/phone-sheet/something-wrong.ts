// Something wrong that the records do not know yet: what it is by one tap, then where, how bad and in which words. Each becomes a
// line of the inspection, in the order in which the language reads it; what cannot be read goes along as it was typed.

import type { PhoneConditionKind } from '../../protocol/offline-forms.js';
import { button, choice, el, field, quoted, type FormChild } from '../forms/kit.js';
import { typedNumber } from '../forms/typed-number.js';
import { judgedField } from './judged-field.js';
import { go, keeping, show } from './screen.js';
import { data, far, keep, mirrored, state, type PhoneRow, type HowBad, type Wrong } from './state.js';
import {
  along,
  boltCount,
  clockTyped,
  isDeclared,
  pointNamed,
  small,
  temperatureTyped,
  wrongWhy,
} from './typed.js';

export const severities: readonly HowBad[] = ['slight', 'serious', 'urgent'];

/** Opens the choice of what is wrong; at a point, its place is filled in. */
export function beginWrong(point?: PhoneRow): void {
  state.wrongBegun = {
    at: point === undefined ? '' : placeFor(point),
    clock: point === undefined || isDeclared(point) ? '' : point.clockText,
    from: state.view,
  };
  state.wrongAt = state.wrong.length;
  go('wrong');
}

function placeFor(point: PhoneRow): string {
  return isDeclared(point) ? point.writes : (/^at ([\d.]+)/.exec(point.writes)?.[1] ?? '');
}

/** What was written down as wrong, each to be opened again, and the button for more. */
export function wrongSection(): FormChild {
  return el('section', { id: 'wrong' }, [
    el('h2', {}, 'Something wrong'),
    ...state.wrong.map((each, index) =>
      button(
        [el('strong', {}, `✓ ${inShort(each)}`)],
        () => {
          state.wrongAt = index;
          state.wrongBegun = { ...state.wrongBegun, from: state.view };
          go('wrong');
        },
        { class: 'row done', 'data-wrong': String(index) },
      ),
    ),
    button('Something is wrong: add it', () => beginWrong(), { id: 'add-wrong' }),
  ]);
}

function inShort({ kind, at, severity }: Wrong): string {
  return [kind, at.trim() && `at ${at.trim()}`, severity].filter(Boolean).join(', ');
}

export function wrongScreen(): readonly FormChild[] {
  const wrong = state.wrong[state.wrongAt];
  const kind = wrong && data.kinds.find((each) => each.kind === wrong.kind);
  return wrong && kind ? detailScreen(wrong, kind) : kindScreen();
}

function kindScreen(): readonly FormChild[] {
  const groups = [...new Set(data.kinds.map(({ group }) => group))];
  return [
    el('h2', {}, 'What is wrong?'),
    ...groups.flatMap((group) => [
      el('div', { class: 'label' }, group),
      el(
        'div',
        { class: 'grid two', role: 'group', 'aria-label': group },
        data.kinds
          .filter((each) => each.group === group)
          .map(({ kind }) => button(kind, () => chosen(kind), { 'data-kind': kind })),
      ),
    ]),
    button('Back', back, { id: 'wrong-back' }),
  ];
}

function chosen(kind: string): void {
  const { at, clock } = state.wrongBegun;
  const begun = { kind, at, clock, look: state.look, measure: '', aspect: '', temperature: '' };
  state.wrongAt = state.wrong.push({ ...begun, wornThrough: false, severity: '', note: '', photo: '' }) - 1;
  keep();
  go('wrong');
}

function back(): void {
  const { from } = state.wrongBegun;
  go(from === 'wrong' ? 'list' : from);
}

function detailScreen(wrong: Wrong, kind: PhoneConditionKind): readonly FormChild[] {
  const typed = (words: string, key: keyof Wrong & ('at' | 'clock' | 'measure' | 'temperature'), more = {}) =>
    judgedField({
      words,
      value: wrong[key],
      take: (value) => (wrong[key] = value),
      why: () => wrongWhy(wrong)[key],
      settings: { id: `wrong-${key}`, ...more },
    });
  const set = (change: () => void): void => {
    change();
    keep();
    show();
  };
  const decimal = { inputmode: 'decimal' };
  return [
    el('h2', {}, wrong.kind),
    kind.measure === 'count' && typed('How many bolts', 'measure', decimal),
    kind.measure === 'length' && typed(`How far, ${data.unit}`, 'measure', decimal),
    ...(kind.place
      ? [typed(`${far.words} from the tail`, 'at', decimal), typed('Clock as you see it (if known)', 'clock')]
      : aspectFields(wrong, kind, set, typed)),
    severityChoice('wrong', wrong.severity, (severity) => set(() => (wrong.severity = severity))),
    kind.mayBeThrough &&
      choice(
        'WORN THROUGH (steel shows)',
        wrong.wornThrough,
        () => set(() => (wrong.wornThrough = !wrong.wornThrough)),
        'grave',
      ),
    (wrong.severity === 'urgent' || wrong.wornThrough) &&
      el('p', { class: 'warn', role: 'alert' }, '! Tell the person responsible at once.'),
    field(
      'Remark',
      wrong.note,
      keeping((value) => (wrong.note = value)),
      { id: 'wrong-note' },
    ),
    field(
      'Photo, its name in the phone',
      wrong.photo,
      keeping((value) => (wrong.photo = value)),
      { id: 'wrong-photo' },
    ),
    button('Done', back, { class: 'main', id: 'wrong-done' }),
    takeOut(wrong),
  ];
}

function aspectFields(
  wrong: Wrong,
  kind: PhoneConditionKind,
  set: (change: () => void) => void,
  typed: (words: string, key: 'temperature', more: object) => HTMLElement,
): readonly FormChild[] {
  return [
    el(
      'div',
      { class: 'grid two', role: 'group', 'aria-label': `What of the ${wrong.kind}` },
      kind.aspects.map((aspect) =>
        choiceOf('wrong', aspect, wrong.aspect === aspect, () =>
          set(() => (wrong.aspect = wrong.aspect === aspect ? '' : aspect)),
        ),
      ),
    ),
    typed(`Temperature, ${data.unit === 'in' ? '°F' : '°C'} (if measured)`, 'temperature', {}),
  ];
}

/** A button that says of what it is, so that the same words elsewhere are another button. */
export function choiceOf(of: string, words: string, chosen: boolean, tap: () => void): HTMLElement {
  const made = choice(words, chosen, tap);
  made.dataset['of'] = `${of}: ${words}`;
  return made;
}

/** Three buttons; a second tap on one takes it back. */
export function severityChoice(
  of: string,
  severity: string,
  take: (severity: HowBad | '') => void,
): HTMLElement {
  return el('div', {}, [
    el('div', { class: 'label' }, 'How bad'),
    el(
      'div',
      { class: 'grid three', role: 'group', 'aria-label': 'How bad' },
      severities.map((each) =>
        choiceOf(of, each, severity === each, () => take(severity === each ? '' : each)),
      ),
    ),
  ]);
}

/** Asks first; a second tap on the same spot keeps it. */
function takeOut(wrong: Wrong): HTMLElement {
  const asked = el('div', { role: 'alert' });
  const remove = (): void => {
    state.wrong.splice(state.wrong.indexOf(wrong), 1);
    keep();
    back();
  };
  const ask = button(
    'Take this out',
    () => {
      ask.replaceWith(button('Keep it', show, { class: 'main', id: 'wrong-keep' }));
      asked.append(
        el('p', { class: 'warn' }, `! Take out ${inShort(wrong)}?`),
        button('Yes, take it out', remove, { id: 'wrong-out-sure' }),
      );
    },
    { id: 'wrong-out' },
  );
  return el('div', {}, [ask, asked]);
}

/** What the records would miss of it, for the finish. */
export function wrongLacking(): readonly string[] {
  return state.wrong.flatMap((wrong) => {
    const kind = data.kinds.find((each) => each.kind === wrong.kind);
    if (!kind) return [];
    const lacks = [
      kind.place && wrong.at.trim() === '' && 'where it is',
      kind.needed && wrong.measure.trim() === '' && (kind.measure === 'count' ? 'how many' : 'how far'),
      wrong.severity === '' && wrong.temperature.trim() === '' && 'how bad it is',
    ].filter((each) => each !== false);
    return lacks.length === 0 ? [] : [`${inShort(wrong)}: it does not say ${lacks.join(', ')}.`];
  });
}

export function wrongLines(): readonly string[] {
  return state.wrong.flatMap(linesOf);
}

/** One line, or two where a bearing is noisy and was measured. */
function linesOf(wrong: Wrong): readonly string[] {
  const { kind, aspect, wornThrough, severity, note, photo } = wrong;
  const reasons = wrongWhy(wrong);
  const counts = data.kinds.find((each) => each.kind === kind)?.measure === 'count';
  const measure = reasons.measure === '' ? typedNumber(wrong.measure, counts ? boltCount : small) : undefined;
  const size = measure?.kind === 'read' ? `${measure.text}${counts ? '' : ` ${data.unit}`}` : '';
  const temperature = temperatureTyped(wrong.temperature);
  const heat = temperature === undefined ? '' : `temperature ${temperature}`;
  const end = [
    placeWords(wrong),
    wornThrough ? 'worn through' : '',
    severity,
    photo.trim() && `photo ${quoted(photo)}`,
    note.trim() && quoted(note),
  ];
  const line = (...words: readonly string[]): string => `  ${words.filter((word) => word !== '').join(' ')}`;
  if (aspect !== '' && heat !== '') return [line(kind, aspect, ...end), line(kind, heat)];
  return [line(kind, size, aspect === '' ? heat : aspect, ...end)];
}

function placeWords(wrong: Wrong): string {
  const point = pointNamed(wrong.at);
  const at = typedNumber(wrong.at, along);
  const place = point !== undefined ? `at ${point}` : at.kind === 'read' ? `at ${at.text} ${far.unit}` : '';
  const clock = clockTyped(wrong.clock);
  if (clock === undefined) return place;
  return `${place} clock ${wrong.look === state.look ? clock : mirrored(clock)}`.trim();
}
