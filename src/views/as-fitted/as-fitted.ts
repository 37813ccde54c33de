// The as-fitted form: how much of each run was really fitted, panel by panel, and the text for the records that comes out of it.
// Every run is answered for on its own; nothing is written that was not said to be fitted.

import type {
  AsFittedData,
  AsFittedPanel,
  AsFittedReline,
  AsFittedRun,
} from '../../protocol/offline-forms.js';
import { choice, el, field, giveBack, pageParts, today, type FormChild } from '../forms/kit.js';
import { keepingFocus } from '../forms/focus.js';
import { storeFor } from '../forms/store.js';
import { typedNumber } from '../forms/typed-number.js';
import { blocks, leftOf } from './block.js';
import { dateDoubt, hours, lengthDoubt, meterDoubt, temperatureDoubt, thicknessDoubt } from './fields.js';
import {
  firstOf,
  fittedPanels,
  freshEntries,
  isAnswered,
  isFitted,
  lastOf,
  lengthRead,
  panelKey,
  progressOf,
  unwritten,
  type FittedEntries,
  type Progress,
} from './entries.js';

const { data, app } = pageParts<AsFittedData>();
const store = storeFor<FittedEntries>({
  key: `troughline as fitted ${data.key}`,
  adopt: (_mine, { value, displaced }) => {
    Object.assign(state, value);
    for (const { path, typed } of displaced)
      if (typeof typed === 'string' && typed.trim() !== '')
        state.elsewhere.push({ what: path.join(' '), typed });
    show();
  },
  mine: () => state,
});
const state: FittedEntries = { ...freshEntries(today()), ...store.load() };

show();

function keep(): void {
  store.keep(state);
  document.getElementById('kept')?.replaceChildren(store.words());
  document.getElementById('back')?.replaceChildren(finish());
}

/** After an answer that changes which fields there are. */
function again(id: string): void {
  show();
  document.getElementById(id)?.focus({ preventScroll: true });
}

function lacking(): readonly string[] {
  return [
    ...(/^\d{4}-\d{2}-\d{2}$/.test(state.date) ? [] : ['the date']),
    ...(typedNumber(state.meter, hours).kind === 'read' ? [] : ['the hour meter']),
  ];
}

function warning(text: string | false): HTMLElement | false {
  return text !== false && el('p', { class: 'warn', role: 'alert' }, text);
}

function finish(): HTMLElement {
  const missing = lacking();
  const runs = data.relines.flatMap((reline) => reline.runs);
  const unanswered = [
    ...runs.filter((run) => !isAnswered(state, run)).map((run) => `run ${run.run}`),
    ...(data.screw !== null && state.screw === '' ? ['the screw'] : []),
  ];
  const left = [
    ...leftOf(data, state, runs),
    ...(data.screw !== null && state.screw !== 'done' ? ['change screw'] : []),
  ];
  const open = runs.flatMap((run) => {
    const fitted = fittedPanels(state, run);
    const blank = fitted.filter((panel) => lengthRead(data, state, run, panel) === undefined).length;
    return blank > 0 ? [`run ${run.run}: ${blank} of ${fitted.length} lengths`] : [];
  });
  const lost = unwritten(data, state);
  return el('div', {}, [
    el('h2', {}, 'For the records'),
    warning(
      missing.length > 0 && `! Still missing: ${missing.join(' and ')}. The text cannot be used without it.`,
    ),
    warning(
      unanswered.length > 0 &&
        `! Not answered yet: ${unanswered.join(', ')}. What nobody says was fitted is not written as fitted.`,
    ),
    warning(lost.length > 0 && `! Not written: ${lost.join('; ')}.`),
    open.length > 0 &&
      el(
        'p',
        { class: 'warn' },
        `Not measured yet: ${open.join('; ')}. Lengths of a run are recorded only when all are there.`,
      ),
    el(
      'p',
      { id: 'left' },
      left.length > 0 ? `Left of the job: ${left.join('; ')}.` : 'Nothing is left of the job.',
    ),
    giveBack(blocks(data, state), `${data.name}-as-fitted-${state.date}.trough`),
  ]);
}

/** Beside a field: why it deserves a second look, with the numbers; nothing stops anybody from writing down what is so. */
function doubted(make: (typed: (value: string) => void) => HTMLElement, doubt: () => string): HTMLElement {
  const told = el('span', { class: 'why', role: 'status' });
  const judge = (): void => {
    const words = doubt();
    told.textContent = words === '' ? '' : `! ${words}`;
  };
  const made = make(judge);
  judge();
  made.append(told);
  return made;
}

/** A field for one of the entries of the whole form. */
function entry(
  words: string,
  name: 'date' | 'meter' | 'tonnes' | 'temperature' | 'by',
  more: Readonly<Record<string, string>> = {},
  doubt: (value: string) => string = () => '',
): HTMLElement {
  return doubted(
    (judge) => {
      const typed = (value: string): void => {
        state[name] = value;
        keep();
        judge(value);
      };
      return field(words, state[name], typed, { id: name, ...more });
    },
    () => doubt(state[name]),
  );
}

/** A field for an entry that stands under a key of its own. */
function keyed<K extends string | number>(
  words: string,
  entries: Record<K, string>,
  key: K,
  more: Readonly<Record<string, string>> = {},
  doubt: (value: string) => string = () => '',
): HTMLElement {
  const now = (): string => (entries as Partial<Record<K, string>>)[key] ?? '';
  return doubted(
    (judge) => {
      const typed = (value: string): void => {
        entries[key] = value;
        keep();
        judge(value);
      };
      return field(words, now(), typed, more);
    },
    () => doubt(now()),
  );
}

function answer(words: string, id: string, chosen: boolean, tap: () => void): HTMLElement {
  const button = choice(words, chosen, () => {
    tap();
    again(id);
  });
  button.id = id;
  return button;
}

function progressView(run: AsFittedRun): HTMLElement {
  const key = String(run.run);
  const answers: readonly (readonly [Progress, string])[] = [
    ['done', 'Done'],
    ['part', 'A part'],
    ['not done', 'Not done'],
  ];
  return el('div', { role: 'group', 'aria-label': `How much of run ${run.run} was fitted` }, [
    ...answers
      .filter(([progress]) => progress !== 'part' || run.panels.length > 1)
      .map(([progress, words]) =>
        answer(words, `run-${key}-${progress.replace(' ', '-')}`, progressOf(state, run) === progress, () => {
          state.progress[key] = progress;
        }),
      ),
    ...(progressOf(state, run) === 'part'
      ? [
          panelChoice(run, 'Fitted from panel', `run-${key}-first`, firstOf(state, run), state.firstFitted),
          panelChoice(run, 'up to panel', `run-${key}-last`, lastOf(state, run), state.lastFitted),
        ]
      : []),
  ]);
}

function panelChoice(
  run: AsFittedRun,
  words: string,
  id: string,
  chosen: string,
  entries: Record<string, string>,
): HTMLElement {
  const typed = (value: string): void => {
    entries[String(run.run)] = value;
    again(id);
  };
  const numbers = ['', ...run.panels.map(({ panel }) => String(panel))];
  const options = numbers.map((value) =>
    el('option', { value, selected: value === chosen }, value === '' ? '?' : value),
  );
  return el('label', { class: 'field' }, [el('span', {}, words), el('select', { id, typed }, options)]);
}

/** Length and thickness of one panel, side by side. */
function panelView(reline: AsFittedReline, run: AsFittedRun, panel: AsFittedPanel): HTMLElement {
  const key = panelKey(run, panel);
  return el('div', {}, [
    el(
      'p',
      { class: 'label' },
      `Panel ${panel.panel}: planned ${panel.planned} long, ${reline.thickness} thick`,
    ),
    el('div', { class: 'grid pair' }, [
      keyed(
        'Length',
        state.lengths,
        key,
        {
          inputmode: 'decimal',
          'data-panel': key,
          'aria-label': `Panel ${panel.panel} of run ${run.run}: length`,
        },
        (typed) => lengthDoubt(data, panel, typed),
      ),
      keyed(
        'Thickness',
        state.thicknesses,
        key,
        {
          inputmode: 'decimal',
          'data-thickness': key,
          'aria-label': `Panel ${panel.panel} of run ${run.run}: thickness`,
        },
        (typed) => thicknessDoubt(data, reline, typed),
      ),
    ]),
  ]);
}

function runView(reline: AsFittedReline, run: AsFittedRun): HTMLElement {
  const fitted = fittedPanels(state, run);
  return el('div', {}, [
    el('h3', {}, `Run ${run.run}: was it fitted?`),
    progressView(run),
    fitted.length > 0 &&
      el('h3', {}, `Run ${run.run}: panels as fitted, ${data.unit}, in the order of the work`),
    ...fitted.map((panel) => panelView(reline, run, panel)),
  ]);
}

function relineView(reline: AsFittedReline, index: number): HTMLElement {
  const points = reline.points.filter((point) => isFitted(state, reline.runs, point));
  return el('section', {}, [
    el('h2', {}, reline.liner),
    ...reline.runs.map((run) => runView(reline, run)),
    points.length > 0 && el('h3', {}, `Thickness at the inspection points when new, ${data.unit}`),
    ...points.map(({ name, at, clock }) =>
      keyed(
        `${name} at ${at}, ${clock} (nominal ${reline.thickness})`,
        state.points,
        name,
        {
          inputmode: 'decimal',
          'data-point': name,
        },
        (typed) => thicknessDoubt(data, reline, typed),
      ),
    ),
    keyed(`Offcuts kept, ${data.unit}, with spaces between`, state.offcuts, index, {
      'data-offcuts': String(index),
    }),
    keyed('Remark', state.remarks, index),
  ]);
}

function screwView(screw: string): HTMLElement {
  const set = (progress: Progress) => (): void => {
    state.screw = progress;
  };
  return el('div', {}, [
    el('h3', {}, `Screw ${screw}: was it changed?`),
    el('div', { role: 'group', 'aria-label': 'Whether the screw was changed' }, [
      answer('Done', 'screw-done', state.screw === 'done', set('done')),
      answer('Not done', 'screw-not-done', state.screw === 'not done', set('not done')),
    ]),
  ]);
}

function show(): void {
  const children: FormChild[] = [
    el('header', {}, [
      el('div', { class: 'who' }, data.pack),
      el('div', { class: 'look' }, 'AS FITTED'),
      el('div', { class: 'way' }, 'Write down what was fitted and measured, not what was planned.'),
    ]),
    el('div', {}, [
      entry('Date finished', 'date', { type: 'date' }, (typed) => dateDoubt(data, typed)),
      entry('Hour meter, h', 'meter', { inputmode: 'decimal' }, (typed) => meterDoubt(data, typed)),
      data.tonnes && entry('Tonnes counter, t', 'tonnes', { inputmode: 'decimal' }),
      entry(
        `Liner temperature while fitting, ${data.unit === 'in' ? '°F' : '°C'}`,
        'temperature',
        { inputmode: 'text' },
        (typed) => temperatureDoubt(data, typed),
      ),
      entry('Fitted by', 'by'),
      ...data.relines.map(relineView),
      data.screw !== null && screwView(data.screw),
      el('div', { id: 'back' }),
      el('footer', { id: 'kept', role: 'status' }, ''),
    ]),
  ];
  keepingFocus(app, () => app.replaceChildren(...children.filter((child) => child instanceof Node)));
  keep();
}
