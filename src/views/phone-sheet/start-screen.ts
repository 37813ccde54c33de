// The first screen: what to mind before anything is opened, date, meter, and who looks with what.

import { button, choice, el, field, type FormChild } from '../forms/kit.js';
import { judgedField } from './judged-field.js';
import { go, keeping, show } from './screen.js';
import { data, keep, state } from './state.js';
import { meterWarning } from './text.js';
import { gaugeErrorWhy, hoursField, tonnesField, why } from './typed.js';

export function startScreen(): readonly FormChild[] {
  const warning = el('p', { class: 'warn', role: 'status' });
  const judgeMeter = (value: string): void => {
    state.meter = value;
    warning.textContent = meterWarning();
  };
  judgeMeter(state.meter);
  return [
    cautions(),
    isolations(),
    field(
      'Date',
      state.date,
      keeping((value) => (state.date = value)),
      { type: 'date', id: 'date' },
    ),
    judgedField({
      words: 'Hour meter, h',
      value: state.meter,
      take: judgeMeter,
      why: () => why(state.meter, hoursField),
      settings: { id: 'meter', inputmode: 'decimal' },
    }),
    el('p', { id: 'meter-hint', class: 'hint' }, meterHint()),
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
  const { last, date, about } = data.meter;
  if (last === null) return '';
  return `Last: ${last} h on ${date ?? ''}${about === null ? '' : `. About ${about} h expected on ${data.asOf}.`}`;
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
