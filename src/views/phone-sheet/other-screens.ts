// The screens beside the points: hold-downs, current, flights and findings; and the finished text.

import { button, el, field, giveBack, type FormChild } from '../forms/kit.js';
import { judgeAgain, judgedField } from './judged-field.js';
import { openConditionFields, unansweredConditions } from './open-conditions.js';
import { go, keeping, show } from './screen.js';
import { data, far, keep, rows, startAfresh, state, store } from './state.js';
import { wrongSection } from './something-wrong.js';
import { blockText, missing, suspicious } from './text.js';
import { along, ampere, flightWhy, small, turns, unread, why } from './typed.js';

export function moreScreen(): readonly FormChild[] {
  const decimal = { inputmode: 'decimal' };
  return [
    openConditionFields(),
    wrongSection(),
    openFindings(),
    holdDowns(),
    el('h2', {}, 'Motor current, A'),
    judgedField({
      words: 'Empty',
      value: state.empty,
      take: (value) => (state.empty = value),
      why: () => why(state.empty, ampere),
      settings: { id: 'empty', ...decimal },
    }),
    judgedField({
      words: 'Loaded',
      value: state.loaded,
      take: (value) => (state.loaded = value),
      why: () => why(state.loaded, ampere),
      settings: { id: 'loaded', ...decimal },
    }),
    el('h2', {}, 'Speed of the screw, rpm'),
    judgedField({
      words: 'Counted',
      value: state.speed,
      take: (value) => (state.speed = value),
      why: () => why(state.speed, turns),
      settings: { id: 'speed', ...decimal },
    }),
    el('h2', {}, 'Flight of the screw'),
    el('div', {}, state.flights.map(flightFields)),
    button(
      'Add a place of the flight',
      added(() => state.flights.push({ at: '', depth: '', across: '' })),
      {
        id: 'add-flight',
      },
    ),
    el('h2', {}, 'Findings'),
    el('div', {}, state.findings.map(findingFields)),
    button(
      'Add a finding',
      added(() => state.findings.push({ part: '', at: '', text: '' })),
      {
        id: 'add-finding',
      },
    ),
    el('h2', {}, 'Photos'),
    el('div', {}, state.photos.map(photoField)),
    button(
      'Name a photo',
      added(() => state.photos.push('')),
      { id: 'add-photo' },
    ),
    button('Back to the list', () => go('list'), { class: 'main', id: 'more-back' }),
  ];
}

/** Found last time, so that it is looked at again; a tap writes it down as found now. */
function openFindings(): FormChild {
  if (data.open.length === 0) return undefined;
  const items = data.open.map((found) => {
    const words = [found.part, found.place && `at ${found.place}`].filter(Boolean).join(' ');
    const again = (): void => {
      state.findings.push({ part: found.part, at: found.at, text: stillSo(found.text) });
    };
    const isWritten = state.findings.some(({ text, at }) => text === stillSo(found.text) && at === found.at);
    return el('div', { class: 'finding' }, [
      el('p', {}, `${found.date}${words && `, ${words}`}: ${found.text}`),
      isWritten
        ? el('p', { class: 'hint' }, '✓ written down below as still so')
        : button('Still so', added(again), { 'aria-label': `Still so: ${found.text}` }),
    ]);
  });
  return el('section', { id: 'open' }, [el('h2', {}, 'Open from last time: look again'), ...items]);
}

function stillSo(text: string): string {
  return `still: ${text.replace(/^still: /, '')}`;
}

function photoField(name: string, index: number): FormChild {
  const take = keeping((value) => (state.photos[index] = value));
  return field(`Photo ${index + 1}: its name in the phone, like IMG_0231.jpg`, name, take, {
    'data-photo': String(index),
  });
}

function added(add: () => void): () => void {
  return () => {
    add();
    keep();
    show();
  };
}

function holdDowns(): FormChild {
  if (data.holdDowns.length === 0) return undefined;
  const gaps = state.gaps as Partial<Record<string, string>>;
  const fields = data.holdDowns.map(({ name, place, last }) =>
    judgedField({
      words: `${name} at ${place}${last === '' ? '' : ` (last ${last})`}`,
      value: gaps[name] ?? '',
      take: (value) => (state.gaps[name] = value),
      why: () => why(gaps[name] ?? '', small),
      settings: { inputmode: 'decimal', 'data-gap': name },
    }),
  );
  return el('section', {}, [el('h2', {}, `Hold-down gaps, ${data.unit}`), ...fields]);
}

function flightFields(flight: { at: string; depth: string; across?: string }, index: number): FormChild {
  const group = { class: 'finding', role: 'group', 'aria-label': `Flight ${index + 1}` };
  const pair = el('div', group, [
    judgedField({
      words: `${far.words} from the tail`,
      value: flight.at,
      take: (value) => (flight.at = value),
      why: () => flightWhy(flight).at,
      settings: { inputmode: 'decimal', 'data-flight-at': String(index) },
    }),
    judgedField({
      words: `Depth left, ${data.unit}`,
      value: flight.depth,
      take: (value) => (flight.depth = value),
      why: () => flightWhy(flight).depth,
      settings: { inputmode: 'decimal', 'data-flight-depth': String(index) },
    }),
    judgedField({
      words: `Outside diameter, ${data.unit}`,
      value: flight.across ?? '',
      take: (value) => (flight.across = value),
      why: () => flightWhy(flight).across,
      settings: { inputmode: 'decimal', 'data-flight-across': String(index) },
    }),
  ]);
  // Each of them says when another is missing.
  pair.addEventListener('input', () => judgeAgain(pair));
  return pair;
}

const parts = [
  'hold-down',
  'brace',
  'cover',
  'hatch',
  'flight',
  'drive',
  'trough',
  'liner',
  'bolt',
  'guard',
  'emergency stop',
];

function findingFields(finding: { part: string; at: string; text: string }, index: number): FormChild {
  const part = el('select', { 'aria-label': 'part' }, [
    el('option', { value: '' }, 'part'),
    ...parts.map((name) => el('option', { value: name, selected: finding.part === name }, name)),
  ]);
  part.addEventListener('change', () => {
    finding.part = part.value;
    keep();
  });
  const group = { class: 'finding', role: 'group', 'aria-label': `Finding ${index + 1}` };
  return el('div', group, [
    part,
    judgedField({
      words: `${far.words} from the tail (if known)`,
      value: finding.at,
      take: (value) => (finding.at = value),
      why: () => why(finding.at, along),
      settings: { inputmode: 'decimal', 'data-finding-at': String(index) },
    }),
    field(
      'What',
      finding.text,
      keeping((value) => (finding.text = value)),
      {
        'data-finding': String(index),
      },
    ),
  ]);
}

export function finishScreen(): readonly FormChild[] {
  const lacking = missing();
  const open = rows().filter(({ id }) => !state.entries[id]);
  return [
    lacking.length > 0 &&
      el(
        'p',
        { class: 'warn', role: 'alert' },
        `! Still missing: ${lacking.join(' and ')}. The text cannot be used without it.`,
      ),
    lacking.length > 0 && button('Fill it in', () => go('start'), { class: 'main' }),
    open.length > 0 &&
      el(
        'p',
        { class: 'warn' },
        `Open: ${open.map(({ label }) => label).join(', ')}. ` +
          'Open points stay unknown in the records; that is right if nobody looked.',
      ),
    listed(
      'unread',
      'Cannot be read, and stands in the text as it was typed:',
      unread().map((each) => `${each.what}: “${each.typed}” (${each.why})`),
    ),
    listed('unanswered', 'Open conditions without an answer stay open:', unansweredConditions()),
    listed('suspicious', 'Worth a second look before you leave:', suspicious()),
    giveBack(blockText(), `${data.name}-${state.date}.trough`),
    button('Back to the list', () => go('list')),
    el(
      'p',
      {},
      'The engineer puts this text into a file of the estate. Keep it on the phone until that is done.',
    ),
    deleteButton(),
  ];
}

function listed(id: string, words: string, found: readonly string[]): FormChild {
  if (found.length === 0) return undefined;
  const items = found.map((text) => el('li', {}, text));
  return el('section', { class: 'warn', id }, [el('p', {}, `! ${words}`), el('ul', {}, items)]);
}

/** Asks first, and moves away from under the finger: a second tap on the same spot keeps everything. */
function deleteButton(): FormChild {
  const asked = el('div', { role: 'alert' });
  let sure = false;
  const made = button(
    'Delete everything on this phone',
    () => {
      if (sure) {
        store.drop();
        startAfresh();
        show();
        return;
      }
      sure = true;
      made.textContent = 'Tap again to delete it for good';
      const written = Object.keys(state.entries).length;
      asked.append(
        el(
          'p',
          { class: 'warn' },
          `! Delete all that was typed, ${written} ${written === 1 ? 'point' : 'points'} among it? It does not come back.`,
        ),
        button('Keep everything', show, { class: 'main', id: 'delete-keep' }),
      );
    },
    { class: 'grave', id: 'delete' },
  );
  return el('div', {}, [asked, made]);
}
