// The first screen: what to mind before anything is opened, date, meter, and who looks with what.

import { button, choice, el, field, today, type FormChild } from '../forms/kit.js';
import { meterExpected } from './expected.js';
import { judgedField } from './judged-field.js';
import { asideView } from './resume-screen.js';
import { go, keeping, show } from './screen.js';
import { data, keep, state } from './state.js';
import { dateWarning, meterWarning } from './text.js';
import { gaugeErrorWhy, hoursField, tonnesField, why } from './typed.js';

export function startScreen(): readonly FormChild[] {
  const warning = el('p', { class: 'warn', role: 'status' });
  const judgeMeter = (value: string): void => {
    state.meter = value;
    warning.textContent = marked(meterWarning());
  };
  const dateTold = el('p', { class: 'warn', role: 'status' });
  const hint = el('p', { id: 'meter-hint', class: 'hint' });
  const judgeDate = (value: string): void => {
    state.date = value;
    dateTold.textContent = marked(dateWarning());
    warning.textContent = marked(meterWarning());
    hint.textContent = meterHint();
  };
  judgeDate(state.date);
  return [
    cautions(),
    isolations(),
    ...sides(),
    field('Date', state.date, keeping(judgeDate), { type: 'date', id: 'date' }),
    state.date === '' &&
      el(
        'p',
        { class: 'hint' },
        `This phone’s own date is ${today()}. Type the date if it is not the right one.`,
      ),
    dateTold,
    judgedField({
      words: 'Hour meter, h',
      value: state.meter,
      take: judgeMeter,
      why: () => why(state.meter, hoursField),
      settings: { id: 'meter', inputmode: 'decimal' },
    }),
    hint,
    warning,
    tonnesCounter(),
    field(
      'Who looks',
      state.by,
      keeping((value) => (state.by = value)),
      { id: 'by' },
    ),
    el('div', { class: 'label' }, 'Gauge'),
    el('div', { class: 'grid two' }, ['ultrasonic', 'depth gauge', 'calliper', 'by eye'].map(gaugeChoice)),
    judgedField({
      words: `Gauge is right to ± ${data.unit} (if known)`,
      value: state.gaugeError,
      take: (value) => (state.gaugeError = value),
      why: gaugeErrorWhy,
      settings: { id: 'gauge-error', inputmode: 'decimal' },
    }),
    button('Go to the points', () => go('list'), { class: 'main', id: 'to-list' }),
    asideView(),
  ];
}

function marked(words: string): string {
  return words === '' ? '' : `! ${words}`;
}

/** Chosen where the inspector stands; every clock position of the page follows. */
function sides(): readonly FormChild[] {
  const words = { downstream: 'away from me', upstream: 'towards me' } as const;
  const moved = state.places.filter(({ look }) => look !== state.look).length;
  return [
    el('div', { class: 'label' }, 'I look so that the material moves'),
    el(
      'div',
      { class: 'grid one', role: 'group', 'aria-label': 'Which way I look' },
      (['downstream', 'upstream'] as const).map((look) =>
        choice(`${words[look]} (${look})`, state.look === look, () => {
          state.look = look;
          keep();
          show();
        }),
      ),
    ),
    moved > 0 &&
      el(
        'p',
        { class: 'hint' },
        `${moved} added ${moved === 1 ? 'place is' : 'places are'} shown from this side now, ` +
          `and ${moved === 1 ? 'stays' : 'stay'} where ${moved === 1 ? 'it was' : 'they were'}.`,
      ),
  ];
}

function cautions(): FormChild {
  return el('section', { class: 'caution' }, [
    el('h2', {}, 'Before you open anything'),
    ...data.cautions.map(({ heading, text }) => el('p', {}, [el('strong', {}, heading), ` ${text}`])),
  ]);
}

function isolations(): FormChild {
  if (data.isolations.length === 0) return undefined;
  const items = data.isolations.map((text) => el('li', {}, text));
  return el('section', {}, [el('h2', {}, 'Isolation points declared'), el('ul', {}, items)]);
}

function meterHint(): string {
  const { last, date } = data.meter;
  if (last === null) return '';
  const about = meterExpected();
  return `Last: ${last} h on ${date ?? ''}${about === undefined ? '' : `. About ${about} h expected on ${state.date}.`}`;
}

function tonnesCounter(): FormChild {
  if (!data.tonnes) return undefined;
  const { last, date } = data.tonnes;
  const words = `Tonnes counter, t${last === null ? '' : ` (last ${last} t on ${date ?? ''})`}`;
  return judgedField({
    words,
    value: state.tonnes,
    take: (value) => (state.tonnes = value),
    why: () => why(state.tonnes, tonnesField),
    settings: { id: 'tonnes', inputmode: 'decimal' },
  });
}

function gaugeChoice(kind: string): FormChild {
  return choice(kind, state.gauge === kind, () => {
    state.gauge = state.gauge === kind ? '' : kind;
    keep();
    show();
  });
}
