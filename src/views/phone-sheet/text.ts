// What the phone sheet writes: the block that goes into the records, an entry in a few words, and what makes a second look worth
// while. A warning never stops anyone from writing down what was seen.

import type { PhonePoint } from '../../protocol/offline-forms.js';
import { number, plain, quoted } from '../forms/kit.js';
import { data, far, inMillimetres, linerOf, rows, state, type Entry } from './state.js';

export function entryWords(entry: Entry): string {
  switch (entry.kind) {
    case 'thickness':
      return `${plain(entry.value)} ${entry.unit}`;
    case 'colour':
      return entry.colour;
    case 'trough':
      return 'TROUGH SHOWING';
    case 'not seen':
      return `not seen${entry.note ? `: ${entry.note}` : ''}`;
  }
}

export function warnings(point: PhonePoint, entry: Entry | undefined): readonly string[] {
  switch (entry?.kind) {
    case 'trough':
      return ['Steel shows. Tell the person responsible at once.'];
    case 'thickness': {
      const mm = inMillimetres(entry);
      return mm === undefined ? [] : thicknessWarnings(point, mm);
    }
    case 'colour': {
      const { layers } = point.expect;
      return layers && !layers.includes(entry.colour)
        ? [`Expected ${layers.join(' or ')}. Clean the place and look again.`]
        : [];
    }
    default:
      return [];
  }
}

function thicknessWarnings(point: PhonePoint, mm: number): readonly string[] {
  const liner = linerOf(point);
  const { last, expect } = point;
  const found: string[] = [];
  if (liner && mm > liner.thickness + 1)
    found.push(`Thicker than the liner when new (${liner.thicknessWords}). Gauge, unit or place?`);
  else if (last && last.thickness !== null && mm > last.thickness + 0.6)
    found.push(
      `Thicker than last time (${last.words} on ${last.date}). Right point, right side, gauge set to zero?`,
    );
  else if (expect.most !== undefined && mm > expect.most + 0.05)
    found.push(`Thicker than expected (${expect.words}). Look again.`);
  if (expect.least !== undefined && mm < expect.least - 0.05)
    found.push(
      `Thinner than expected (${expect.words}). Measure again; if it stays, tell the person responsible.`,
    );
  if (liner && mm <= liner.condemn)
    found.push(`At or below the condemn limit (${liner.condemnWords}). Tell the person responsible at once.`);
  return found;
}

/** The inspection as a block of the language. */
export function blockText(): string {
  const currents = [currentWords('empty', state.empty), currentWords('loaded', state.loaded)].flat();
  const gaugeError = number(state.gaugeError) ? ` ± ${plain(state.gaugeError)} ${data.unit}` : '';
  return `${[
    `inspection ${data.qualified} ${state.date} meter ${meterWords()} {`,
    ...(state.by.trim() ? [`  by ${quoted(state.by)}`] : []),
    `  view ${data.look}`,
    ...(state.gauge ? [`  gauge ${state.gauge}${gaugeError}`] : []),
    ...rows().flatMap((point) => {
      const entry = state.entries[point.id];
      return entry ? rowOf(point, entry) : [];
    }),
    ...data.holdDowns.flatMap(({ name, at }) => {
      const gap = state.gaps[name] ?? '';
      return number(gap) === undefined ? [] : [`  hold-down at ${at} m gap ${plain(gap)} ${data.unit}`];
    }),
    ...state.flights.flatMap(({ at, depth }) =>
      number(at) === undefined || number(depth) === undefined
        ? []
        : [`  flight at ${plain(at)} ${far.unit} depth ${plain(depth)} ${data.unit}`],
    ),
    ...(currents.length > 0 ? [`  current ${currents.join(' ')}`] : []),
    ...state.findings.flatMap(({ part, at, text }) => {
      if (!text.trim()) return [];
      const place = number(at) === undefined ? '' : ` at ${plain(at)} ${far.unit}`;
      return [`  finding${part ? ` ${part}` : ''}${place} ${quoted(text)}`];
    }),
    '}',
  ].join('\n')}\n`;
}

function meterWords(): string {
  const meter = number(state.meter) === undefined ? '?' : plain(state.meter);
  const tonnes = data.tonnes && number(state.tonnes) !== undefined ? ` tonnes ${plain(state.tonnes)} t` : '';
  return `${meter} h${tonnes}`;
}

function currentWords(which: string, value: string): readonly string[] {
  return number(value) === undefined ? [] : [`${which} ${plain(value)} A`];
}

function rowOf(point: PhonePoint, entry: Entry): readonly string[] {
  const note = entry.note ? ` ${quoted(entry.note)}` : '';
  switch (entry.kind) {
    case 'thickness':
      if (number(entry.value) === undefined) return [];
      return [`  ${point.writes} thickness ${plain(entry.value)} ${entry.unit}${note}`];
    case 'colour':
      return [`  ${point.writes} colour ${entry.colour}${note}`];
    case 'trough':
      return [`  ${point.writes} trough showing${note}`];
    case 'not seen':
      return [`  ${point.writes} not seen${note}`];
  }
}

/** What the records cannot do without. */
export function missing(): readonly string[] {
  return [
    ...(/^\d{4}-\d{2}-\d{2}$/.test(state.date) ? [] : ['the date']),
    ...(number(state.meter) === undefined ? ['the hour meter'] : []),
    ...(data.tonnes && number(state.tonnes) === undefined ? ['the tonnes counter'] : []),
  ];
}
