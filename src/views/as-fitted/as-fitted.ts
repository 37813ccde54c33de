// The as-fitted form: what was really fitted, panel by panel, and the reline block that comes out of it.

import type { AsFittedData, AsFittedReline, AsFittedRun } from '../../protocol/offline-forms.js';
import {
  el,
  field,
  giveBack,
  number,
  pageParts,
  plain,
  quoted,
  storeFor,
  today,
  type FormChild,
} from '../forms/kit.js';

interface Entries {
  date: string;
  meter: string;
  tonnes: string;
  by: string;
  temperature: string;
  /** By run and panel. */
  lengths: Record<string, string>;
  points: Record<string, string>;
  /** By position of the reline. */
  offcuts: Record<number, string>;
  remarks: Record<number, string>;
}

const { data, app } = pageParts<AsFittedData>();
const fresh: Entries = {
  date: today(),
  meter: '',
  tonnes: '',
  by: '',
  temperature: '',
  lengths: {},
  points: {},
  offcuts: {},
  remarks: {},
};
const store = storeFor<Entries>(`troughline as fitted ${data.key}`);
const state: Entries = { ...fresh, ...store.load() };

show();

function keep(): void {
  store.keep(state);
  document.getElementById('kept')?.replaceChildren(store.words());
  document.getElementById('back')?.replaceChildren(finish());
}

function signed(text: string): string | undefined {
  const tidy = text.trim().replace(',', '.').replace('−', '-');
  return /^-?\d+(\.\d+)?$/.test(tidy) ? tidy : undefined;
}

function lengthOf(run: AsFittedRun, panel: { readonly panel: number }): string {
  return state.lengths[panelKey(run, panel)] ?? '';
}

function panelKey(run: AsFittedRun, panel: { readonly panel: number }): string {
  return `${run.run}/${panel.panel}`;
}

function scopeLine(run: AsFittedRun): string {
  const first = run.panels[0]?.panel ?? 0;
  const last = run.panels.at(-1)?.panel ?? first;
  if (run.whole) return `scope run ${run.run}`;
  return first === last
    ? `scope panel ${first} of run ${run.run}`
    : `scope panels ${first} to ${last} of run ${run.run}`;
}

function head(kind: string): string {
  const meter = number(state.meter) === undefined ? '?' : plain(state.meter);
  const tonnes = data.tonnes && number(state.tonnes) !== undefined ? ` tonnes ${plain(state.tonnes)} t` : '';
  return `${kind} ${data.qualified} ${state.date} meter ${meter} h${tonnes} {`;
}

function blocks(): string {
  const by = state.by.trim() ? [`  by ${quoted(state.by)}`] : [];
  const found = data.relines.map((reline, index) => {
    const temperature = signed(state.temperature);
    const offcuts = (state.offcuts[index] ?? '').split(/[;\s]+/).filter((length) => number(length));
    const remark = (state.remarks[index] ?? '').trim();
    return [
      head('reline'),
      `  liner ${reline.liner}`,
      ...reline.runs.map((run) => `  ${scopeLine(run)}`),
      ...(temperature === undefined ? [] : [`  fitting temperature ${temperature} degC`]),
      ...by,
      ...reline.points.flatMap(({ name }) => {
        const read = state.points[name] ?? '';
        return number(read) === undefined ? [] : [`  ${name} thickness ${plain(read)} mm`];
      }),
      ...reline.runs.flatMap((run) => {
        const lengths = run.panels.map((panel) => lengthOf(run, panel));
        if (!lengths.every((length) => number(length) !== undefined)) return [];
        return [
          `  fitted run ${run.run} panels ${lengths.map((length) => `${plain(length)} mm`).join(', ')}`,
        ];
      }),
      ...offcuts.map((length) => `  offcut ${plain(length)} mm`),
      ...(remark ? [`  finding liner ${quoted(remark)}`] : []),
      '}',
    ].join('\n');
  });
  if (data.screw !== null) found.push([head('screw change'), `  screw ${data.screw}`, ...by, '}'].join('\n'));
  return `${found.join('\n\n')}\n`;
}

function lacking(): readonly string[] {
  return [
    ...(/^\d{4}-\d{2}-\d{2}$/.test(state.date) ? [] : ['the date']),
    ...(number(state.meter) === undefined ? ['the hour meter'] : []),
  ];
}

function finish(): HTMLElement {
  const missing = lacking();
  const open = data.relines.flatMap(({ runs }) =>
    runs.flatMap((run) => {
      const blank = run.panels.filter((panel) => number(lengthOf(run, panel)) === undefined).length;
      return blank > 0 ? [`run ${run.run}: ${blank} of ${run.panels.length} lengths`] : [];
    }),
  );
  return el('div', {}, [
    el('h2', {}, 'For the records'),
    missing.length > 0 &&
      el(
        'p',
        { class: 'warn', role: 'alert' },
        `! Still missing: ${missing.join(' and ')}. The text cannot be used without it.`,
      ),
    open.length > 0 &&
      el(
        'p',
        { class: 'warn' },
        `Not measured yet: ${open.join('; ')}. Lengths of a run are written only when all are there.`,
      ),
    giveBack(blocks(), `${data.name}-as-fitted-${state.date}.trough`),
  ]);
}

/** A field for one of the entries of the whole form. */
function entry(
  words: string,
  name: 'date' | 'meter' | 'tonnes' | 'temperature' | 'by',
  more: Readonly<Record<string, string>> = {},
): HTMLElement {
  const typed = (value: string): void => {
    state[name] = value;
    keep();
  };
  return field(words, state[name], typed, { id: name, ...more });
}

/** A field for an entry that stands under a key of its own. */
function keyed<K extends string | number>(
  words: string,
  entries: Record<K, string>,
  key: K,
  more: Readonly<Record<string, string>> = {},
): HTMLElement {
  const typed = (value: string): void => {
    entries[key] = value;
    keep();
  };
  return field(words, (entries as Partial<Record<K, string>>)[key] ?? '', typed, more);
}

function relineView(reline: AsFittedReline, index: number): HTMLElement {
  return el('section', {}, [
    el('h2', {}, reline.liner),
    ...reline.runs.map((run) =>
      el('div', {}, [
        el('h3', {}, `Run ${run.run}: lengths as fitted, mm`),
        ...run.panels.map((panel) =>
          keyed(`Panel ${panel.panel} (planned ${panel.planned})`, state.lengths, panelKey(run, panel), {
            inputmode: 'decimal',
            'data-panel': panelKey(run, panel),
          }),
        ),
      ]),
    ),
    reline.points.length > 0 && el('h3', {}, 'Thickness when new, mm'),
    ...reline.points.map(({ name, at, clock }) =>
      keyed(`${name} at ${at} m, ${clock} (nominal ${reline.thickness})`, state.points, name, {
        inputmode: 'decimal',
        'data-point': name,
      }),
    ),
    keyed('Offcuts kept, mm, with spaces between', state.offcuts, index, { 'data-offcuts': String(index) }),
    keyed('Remark', state.remarks, index),
  ]);
}

function show(): void {
  const children: FormChild[] = [
    el('header', {}, [
      el('div', { class: 'who' }, data.pack),
      el('div', { class: 'look' }, 'AS FITTED'),
      el('div', { class: 'way' }, 'Write down what was measured, not what was planned.'),
    ]),
    el('div', {}, [
      entry('Date finished', 'date', { type: 'date' }),
      entry('Hour meter, h', 'meter', { inputmode: 'decimal' }),
      data.tonnes && entry('Tonnes counter, t', 'tonnes', { inputmode: 'decimal' }),
      entry('Liner temperature while fitting, °C', 'temperature', { inputmode: 'text' }),
      entry('Fitted by', 'by'),
      ...data.relines.map(relineView),
      data.screw !== null && el('p', {}, `Screw fitted: ${data.screw}`),
      el('div', { id: 'back' }),
      el('footer', { id: 'kept', role: 'status' }, ''),
    ]),
  ];
  app.replaceChildren(...children.filter((child) => child instanceof Node));
  keep();
}
