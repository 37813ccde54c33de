// What the phone sheet writes: the block that goes into the records, an entry in a few words, and what makes a second look worth
// while. A warning never stops anyone from writing down what was seen.

import { oneLine, quoted } from '../forms/kit.js';
import { typedNumber, type NumberField } from '../forms/typed-number.js';
import { entryWords, type Entry } from './entry.js';
import { daysBetween, expectedAt } from './expected.js';
import { conditionLines } from './open-conditions.js';
import { wrongLacking, wrongLines } from './something-wrong.js';
import { believable, data, far, lastDay, linerOf, rows, state, type PhoneRow } from './state.js';
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
  turns,
  wide,
} from './typed.js';

export function warnings(point: PhoneRow, entry: Entry | undefined): readonly string[] {
  switch (entry?.kind) {
    case 'trough':
      return ['Steel shows. Tell the person responsible at once.'];
    case 'thickness': {
      const mm = inMillimetres(entry);
      return mm === undefined ? [] : thicknessWarnings(point, mm);
    }
    case 'colour': {
      const expected = expectedAt(point);
      return expected && !expected.layers.includes(entry.colour)
        ? [`Expected ${expected.words}. Clean the place and look again.`]
        : [];
    }
    default:
      return [];
  }
}

/** A date that the phone's clock or a slip may have put a year off; empty where there is nothing to say. */
export function dateWarning(): string {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(state.date) || believable(state.date)) return '';
  return state.date < lastDay()
    ? `Before the last inspection on ${lastDay()}. Is the year right?`
    : `More than a year after this page was made on ${data.asOf}. Is the year right?`;
}

/** A meter that runs back, or ahead of the clock; empty where there is nothing to say. */
export function meterWarning(): string {
  const read = typedNumber(state.meter, hoursField);
  const { last, date } = data.meter;
  if (read.kind !== 'read' || last === null) return '';
  if (read.value < last) return `Lower than last time (${last} h). New meter, or misread?`;
  const most = date !== null && believable(state.date) ? 24 * (daysBetween(date, state.date) + 1) : Infinity;
  return read.value - last > most
    ? `${Math.round(read.value - last)} h since ${date ?? ''}, and the clock has gone on ${most} h at most. Misread?`
    : '';
}

/** Everything that is worth a second look before the text is given back, each with what was written down. */
export function suspicious(): readonly string[] {
  const tonnes = data.tonnes ? typedNumber(state.tonnes, tonnesField) : undefined;
  const last = data.tonnes?.last ?? null;
  const meter = meterWarning();
  const date = dateWarning();
  return [
    ...(date === '' ? [] : [`Date ${state.date}: ${date}`]),
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
    ...wrongLacking(),
  ];
}

function thicknessWarnings(point: PhoneRow, mm: number): readonly string[] {
  const liner = linerOf(point);
  const { last } = point;
  const expected = expectedAt(point);
  const found: string[] = [];
  if (liner && mm > liner.thickness + 1)
    found.push(`Thicker than the liner when new (${liner.thicknessWords}). Gauge, unit or place?`);
  else if (last && last.thickness !== null && mm > last.thickness + 0.6)
    found.push(
      `Thicker than last time (${last.words} on ${last.date}). Right point, right side, gauge set to zero?`,
    );
  else if (expected && mm > expected.most + 1e-6)
    found.push(`Thicker than expected (${expected.words}). Look again.`);
  const isAtLimit = liner !== undefined && mm <= liner.condemn;
  if (expected && mm < expected.least - 1e-6)
    found.push(
      `Thinner than expected (${expected.words}). Measure again${isAtLimit ? '.' : '; if it stays, tell the person responsible.'}`,
    );
  if (isAtLimit)
    found.push(`At or below the condemn limit (${liner.condemnWords}). Tell the person responsible at once.`);
  return found;
}

/** The inspection as a block of the language; what cannot be read as a value stands in it as a comment. */
export function blockText(): string {
  const currents = [currentWords('empty', state.empty), currentWords('loaded', state.loaded)].flat();
  const speed = read(state.speed, turns);
  const gaugeError = gaugeErrorWhy() === '' ? read(state.gaugeError, small) : undefined;
  return `${[
    `inspection ${data.qualified} ${state.date || '?'} meter ${meterWords()} {`,
    ...(state.by.trim() ? [`  by ${quoted(state.by)}`] : []),
    `  view ${state.look}`,
    ...(state.gauge
      ? [`  gauge ${state.gauge}${gaugeError === undefined ? '' : ` ± ${gaugeError} ${data.unit}`}`]
      : []),
    ...rows().flatMap((point) => {
      const entry = (state.entries as Partial<typeof state.entries>)[point.id];
      return entry ? rowOf(point, entry) : [];
    }),
    ...conditionLines(),
    ...wrongLines(),
    ...data.holdDowns.flatMap(({ name, at }) => {
      const gap = read((state.gaps as Partial<Record<string, string>>)[name] ?? '', small);
      return gap === undefined ? [] : [`  hold-down at ${at} m gap ${gap} ${data.unit}`];
    }),
    ...state.flights.flatMap((flight) => {
      const at = read(flight.at, along);
      const [depth, across] = [read(flight.depth, small), read(flight.across ?? '', wide)];
      if (at === undefined) return [];
      const place = `  flight at ${at} ${far.unit}`;
      return [
        ...(depth === undefined ? [] : [`${place} depth ${depth} ${data.unit}`]),
        ...(across === undefined ? [] : [`${place} outside diameter ${across} ${data.unit}`]),
      ];
    }),
    ...(currents.length > 0 ? [`  current ${currents.join(' ')}`] : []),
    ...(speed === undefined ? [] : [`  speed ${speed} rpm`]),
    ...state.findings.flatMap(({ part, at, text }) => {
      if (!text.trim()) return [];
      const place = read(at, along);
      return [
        `  finding${part ? ` ${part}` : ''}${place === undefined ? '' : ` at ${place} ${far.unit}`} ${quoted(text)}`,
      ];
    }),
    ...state.photos.flatMap((name) => (name.trim() === '' ? [] : [`  photo ${quoted(name)}`])),
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

function rowOf(point: PhoneRow, entry: Entry): readonly string[] {
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
