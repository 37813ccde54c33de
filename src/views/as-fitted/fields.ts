// How each field of the as-fitted form is read, in the machine's own units, and what makes a second look worth while. What cannot be
// read with certainty is told and carried along as it was typed.

import type { AsFittedData, AsFittedPanel, AsFittedReline } from '../../protocol/offline-forms.js';
import { typedNumber, type NumberField, type TypedNumber } from '../forms/typed-number.js';

export const hours: NumberField = { units: ['h', 'hrs', 'hours'], most: 9_999_999, counter: true };
export const tonnes: NumberField = { units: ['t', 'tonnes'], most: 999_999_999, counter: true };

export function lengthField(unit: 'mm' | 'in'): NumberField {
  return unit === 'in'
    ? { units: ['in', 'inch', 'inches', '"'], most: 400 }
    : { units: ['mm', 'millimetres'], most: 10_000 };
}

export function inMillimetres(value: number, unit: 'mm' | 'in'): number {
  return unit === 'in' ? value * 25.4 : value;
}

/** As the language writes it, with its unit; the unit typed, else the machine's. Cold is below zero, so a sign is read. */
export function temperatureTyped(typed: string, unit: 'mm' | 'in'): TypedNumber & { readonly unit: string } {
  const own = unit === 'in' ? 'degF' : 'degC';
  const tidy = typed.trim().replace('−', '-').replace(',', '.');
  if (tidy === '') return { kind: 'blank', unit: own };
  const found = /^([+-]?\d+(?:\.\d+)?) ?(?:(?:°|deg ?)?([CF]))?$/i.exec(tidy);
  if (!found) return { kind: 'unreadable', why: 'it is no temperature', unit: own };
  const text = (found[1] ?? '').replace(/^\+/, '');
  const named = found[2]?.toUpperCase();
  return { kind: 'read', text, value: Number(text), unit: named === undefined ? own : `deg${named}` };
}

/** Offcuts, one after the other with blanks between; each with or without its unit. */
export function offcutsTyped(
  typed: string,
  field: NumberField,
): readonly (TypedNumber & { readonly typed: string })[] {
  return typed
    .split(/[;\n]|\s+(?=[\d.,])/)
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) => ({ ...typedNumber(part, field), typed: part }));
}

/** More than what a tape, a saw and the cutting to fit leave is asked about (judgement: 20 mm). */
const sameLength = 20;

export function lengthDoubt(data: AsFittedData, panel: AsFittedPanel, typed: string): string {
  const read = typedNumber(typed, lengthField(data.unit));
  if (read.kind !== 'read') return '';
  const off = inMillimetres(read.value, data.unit) - panel.length;
  if (Math.abs(off) <= sameLength) return '';
  return `${inUnit(Math.abs(off), data.unit)} ${off < 0 ? 'shorter' : 'longer'} than planned (${panel.planned} ${data.unit}). Measured right?`;
}

/** The share that the records ask about: stated tolerance apart, one twentieth and three times a depth gauge. */
export function thicknessDoubt(data: AsFittedData, reline: AsFittedReline, typed: string): string {
  const read = typedNumber(typed, lengthField(data.unit));
  if (read.kind !== 'read') return '';
  const mm = inMillimetres(read.value, data.unit);
  const off = mm - reline.nominal;
  if (Math.abs(off) <= 0.05 * reline.nominal + 0.6) return '';
  return `${inUnit(Math.abs(off), data.unit)} ${off < 0 ? 'thinner' : 'thicker'} than bought (${reline.thickness} ${data.unit}). Gauge, unit or another product?`;
}

export function temperatureDoubt(data: AsFittedData, typed: string): string {
  const read = temperatureTyped(typed, data.unit);
  if (read.kind !== 'read') return '';
  const celsius = read.unit === 'degF' ? (read.value - 32) / 1.8 : read.value;
  return celsius < -25 || celsius > 50
    ? `${read.text} ${read.unit} is ${Math.round(celsius)} °C. Is the unit right?`
    : '';
}

export function meterDoubt({ meter }: AsFittedData, typed: string): string {
  const read = typedNumber(typed, hours);
  return read.kind === 'read' && meter.last !== null && read.value < meter.last
    ? `Lower than last time (${meter.last} h on ${meter.date ?? ''}). New meter, or misread?`
    : '';
}

/** A form of another year's job, or a date with a slip in it. */
export function dateDoubt({ window }: AsFittedData, date: string): string {
  if (!window || !/^\d{4}-\d{2}-\d{2}$/.test(date)) return '';
  const days = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 86_400_000;
  return days(date, window.from) > 31 || days(window.to, date) > 92
    ? `This form is of the job from ${window.from} to ${window.to}. Is it the right form, and the right year?`
    : '';
}

function inUnit(mm: number, unit: 'mm' | 'in'): string {
  return unit === 'in' ? `${(mm / 25.4).toFixed(2)} in` : `${Math.round(mm * 10) / 10} mm`;
}
