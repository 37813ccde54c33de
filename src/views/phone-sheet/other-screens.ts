// The screens beside the points: hold-downs, current, flights and findings; and the finished text.

import { button, el, field, giveBack, type FormChild } from '../forms/kit.js';
import { go, keeping, show } from './screen.js';
import { data, far, keep, rows, startAfresh, state, store } from './state.js';
import { blockText, missing } from './text.js';

export function moreScreen(): readonly FormChild[] {
  const decimal = { inputmode: 'decimal' };
  return [
    holdDowns(),
    el('h2', {}, 'Motor current, A'),
    field(
      'Empty',
      state.empty,
      keeping((value) => (state.empty = value)),
      { id: 'empty', ...decimal },
    ),
    field(
      'Loaded',
      state.loaded,
      keeping((value) => (state.loaded = value)),
      { id: 'loaded', ...decimal },
    ),
    el('h2', {}, 'Flight depth'),
    el('div', {}, state.flights.map(flightFields)),
    button(
      'Add a flight depth',
      added(() => state.flights.push({ at: '', depth: '' })),
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
    button('Back to the list', () => go('list'), { class: 'main', id: 'more-back' }),
  ];
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
  const fields = data.holdDowns.map(({ name, place, last }) =>
    field(
      `${name} at ${place}${last === '' ? '' : ` (last ${last})`}`,
      state.gaps[name] ?? '',
      keeping((value) => (state.gaps[name] = value)),
      { inputmode: 'decimal', 'data-gap': name },
    ),
  );
  return el('section', {}, [el('h2', {}, `Hold-down gaps, ${data.unit}`), ...fields]);
}

function flightFields(flight: { at: string; depth: string }, index: number): FormChild {
  return el('div', { class: 'finding' }, [
    field(
      `${far.words} from the tail`,
      flight.at,
      keeping((value) => (flight.at = value)),
      {
        inputmode: 'decimal',
        'data-flight-at': String(index),
      },
    ),
    field(
      `Depth left, ${data.unit}`,
      flight.depth,
      keeping((value) => (flight.depth = value)),
      {
        inputmode: 'decimal',
        'data-flight-depth': String(index),
      },
    ),
  ]);
}

const parts = ['hold-down', 'brace', 'cover', 'flight', 'drive', 'trough', 'liner', 'bolt'];

function findingFields(finding: { part: string; at: string; text: string }, index: number): FormChild {
  const part = el('select', { 'aria-label': 'part' }, [
    el('option', { value: '' }, 'part'),
    ...parts.map((name) => el('option', { value: name, selected: finding.part === name }, name)),
  ]);
  part.addEventListener('change', () => {
    finding.part = part.value;
    keep();
  });
  return el('div', { class: 'finding' }, [
    part,
    field(
      `${far.words} from the tail (if known)`,
      finding.at,
      keeping((value) => (finding.at = value)),
      {
        inputmode: 'decimal',
      },
    ),
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

function deleteButton(): FormChild {
  let sure = false;
  const words = 'Delete everything on this phone';
  const made = button(
    words,
    () => {
      if (!sure) {
        sure = true;
        made.textContent = 'Tap again to delete it for good';
        return;
      }
      store.drop();
      startAfresh();
      show();
    },
    { class: 'grave', id: 'delete' },
  );
  return made;
}
