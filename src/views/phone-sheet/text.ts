// What the phone sheet writes: the block that goes into the records, an entry in a few words, and what makes a second look worth
// while. A warning never stops anyone from writing down what was seen.

import type { PhonePoint } from '../../protocol/offline-forms.js';
import { oneLine, plain, quoted } from '../forms/kit.js';
import { typedNumber, type NumberField } from '../forms/typed-number.js';
import { conditionLines } from './open-conditions.js';
import { data, far, linerOf, rows, state, type Entry } from './state.js';
import {
  along,
  ampere,
  gaugeErrorWhy,
  hoursField,
  inMillimetres,
  small,
  thicknessRead,
  tonnesField,
  unread,
} from './typed.js';

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

/** A meter that runs back; empty where there is nothing to say. */
export function meterWarning(): string {
  const read = typedNumber(state.meter, hoursField);
  const { last } = data.meter;
  return read.kind === 'read' && last !== null && read.value < last
    ? `Lower than last time (${last} h). New meter, or misread?`
    : '';
}

/** Everything that is worth a second look before the text is given back, each with what was written down. */
export function suspicious(): readonly string[] {
  const tonnes = data.tonnes ? typedNumber(state.tonnes, tonnesField) : undefined;
  const last = data.tonnes?.last ?? null;
  const meter = meterWarning();
  return [
    ...(meter === '' ? [] : [`Hour meter ${state.meter}: ${meter}`]),
    ...(tonnes?.kind === 'read' && last !== null && tonnes.value < last
      ? [`Tonnes counter ${state.tonnes}: lower than last time (${last} t).`]
      : []),
    ...rows().flatMap((point) => {
      const entry = (state.entries as Partial<typeof state.entries>)[point.id];
      return entry
        ? warnings(point, entry).map((text) => `${point.label}, ${entryWords(entry)}: ${text}`)
        : [];
    }),
  ];
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

/** The inspection as a block of the language; what cannot be read as a value stands in it as a comment. */
export function blockText(): string {
  const currents = [currentWords('empty', state.empty), currentWords('loaded', state.loaded)].flat();
  const gaugeError = gaugeErrorWhy() === '' ? read(state.gaugeError, small) : undefined;
  return `${[
    `inspection ${data.qualified} ${state.date || '?'} meter ${meterWords()} {`,
    ...(state.by.trim() ? [`  by ${quoted(state.by)}`] : []),
    `  view ${data.look}`,
    ...(state.gauge
      ? [`  gauge ${state.gauge}${gaugeError === undefined ? '' : ` ± ${gaugeError} ${data.unit}`}`]
      : []),
    ...rows().flatMap((point) => {
      const entry = (state.entries as Partial<typeof state.entries>)[point.id];
      return entry ? rowOf(point, entry) : [];
    }),
    ...conditionLines(),
    ...data.holdDowns.flatMap(({ name, at }) => {
      const gap = read((state.gaps as Partial<Record<string, string>>)[name] ?? '', small);
      return gap === undefined ? [] : [`  hold-down at ${at} m gap ${gap} ${data.unit}`];
    }),
    ...state.flights.flatMap((flight) => {
      const [at, depth] = [read(flight.at, along), read(flight.depth, small)];
      return at === undefined || depth === undefined
        ? []
        : [`  flight at ${at} ${far.unit} depth ${depth} ${data.unit}`];
    }),
    ...(currents.length > 0 ? [`  current ${currents.join(' ')}`] : []),
    ...state.findings.flatMap(({ part, at, text }) => {
      if (!text.trim()) return [];
      const place = read(at, along);
      return [
        `  finding${part ? ` ${part}` : ''}${place === undefined ? '' : ` at ${place} ${far.unit}`} ${quoted(text)}`,
      ];
    }),
    ...unreadComments(),
    '}',
  ].join('\n')}\n`;
}

function unreadComments(): readonly string[] {
  const found = unread();
  if (found.length === 0) return [];
  return [
    '  // Typed on the sheet and not read as a value, so not counted; what is meant is for a person to say:',
    ...found.map(({ what, typed, why }) => `  //   ${oneLine(`${what}: “${typed}” (${why})`)}`),
  ];
}

/** As the language writes it; undefined for what is blank or cannot be read. */
function read(typed: string, field: NumberField): string | undefined {
  const found = typedNumber(typed, field);
  return found.kind === 'read' ? found.text : undefined;
}

function meterWords(): string {
  const tonnes = data.tonnes ? read(state.tonnes, tonnesField) : undefined;
  return `${read(state.meter, hoursField) ?? '?'} h${tonnes === undefined ? '' : ` tonnes ${tonnes} t`}`;
}

function currentWords(which: string, value: string): readonly string[] {
  const amperes = read(value, ampere);
  return amperes === undefined ? [] : [`${which} ${amperes} A`];
}

function rowOf(point: PhonePoint, entry: Entry): readonly string[] {
  const note = entry.note?.trim() ? ` ${quoted(entry.note)}` : '';
  switch (entry.kind) {
    case 'thickness': {
      const thickness = thicknessRead(entry);
      return thickness.kind === 'read'
        ? [`  ${point.writes} thickness ${thickness.text} ${entry.unit}${note}`]
        : [];
    }
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
    ...(read(state.meter, hoursField) === undefined ? ['the hour meter'] : []),
    ...(data.tonnes && read(state.tonnes, tonnesField) === undefined ? ['the tonnes counter'] : []),
  ];
}
