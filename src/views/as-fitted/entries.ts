// What the as-fitted form holds: what was typed and, for every run, how much of it was fitted. A run that nobody answered for
// counts as not fitted.

import type {
  AsFittedData,
  AsFittedPanel,
  AsFittedPoint,
  AsFittedRun,
} from '../../protocol/offline-forms.js';
import { number } from '../forms/kit.js';
import { typedNumber, type TypedNumber } from '../forms/typed-number.js';
import { hours, inMillimetres, lengthField, offcutsTyped, temperatureTyped, tonnes } from './fields.js';

export type Progress = 'done' | 'part' | 'not done';

export interface FittedEntries {
  date: string;
  meter: string;
  tonnes: string;
  by: string;
  temperature: string;
  /** By run; a run without an answer is missing. */
  progress: Record<string, Progress>;
  /** By run, where only a part was fitted: the numbers of the panels at the ends of it. */
  firstFitted: Record<string, string>;
  lastFitted: Record<string, string>;
  /** Whether the screw was changed; empty while nobody has said. */
  screw: Progress | '';
  /** By run and panel. */
  lengths: Record<string, string>;
  thicknesses: Record<string, string>;
  points: Record<string, string>;
  /** By position of the reline. */
  offcuts: Record<number, string>;
  remarks: Record<number, string>;
  /** What another tab had where both changed one field. */
  elsewhere: { readonly what: string; readonly typed: string }[];
}

export function freshEntries(date: string): FittedEntries {
  return {
    date,
    meter: '',
    tonnes: '',
    by: '',
    temperature: '',
    progress: {},
    firstFitted: {},
    lastFitted: {},
    screw: '',
    lengths: {},
    thicknesses: {},
    points: {},
    offcuts: {},
    remarks: {},
    elsewhere: [],
  };
}

export function progressOf(entries: FittedEntries, run: AsFittedRun): Progress | undefined {
  return (entries.progress as Partial<Record<string, Progress>>)[String(run.run)];
}

/** The panel that fitting begins with as planned, unless another was chosen. */
export function firstOf(entries: FittedEntries, run: AsFittedRun): string {
  const chosen = (entries.firstFitted as Partial<Record<string, string>>)[String(run.run)];
  return chosen ?? String(run.panels[0]?.panel ?? '');
}

export function lastOf(entries: FittedEntries, run: AsFittedRun): string {
  return (entries.lastFitted as Partial<Record<string, string>>)[String(run.run)] ?? '';
}

/** The panels said to be fitted, in the order of the work. */
export function fittedPanels(entries: FittedEntries, run: AsFittedRun): readonly AsFittedPanel[] {
  switch (progressOf(entries, run)) {
    case 'done':
      return run.panels;
    case 'part': {
      const [first, last] = [number(firstOf(entries, run)), number(lastOf(entries, run))];
      if (first === undefined || last === undefined) return [];
      const [low, high] = [Math.min(first, last), Math.max(first, last)];
      return run.panels.filter(({ panel }) => panel >= low && panel <= high);
    }
    case 'not done':
    case undefined:
      return [];
  }
}

/** Half an answer: a part, and nobody has said up to which panel. */
export function isAnswered(entries: FittedEntries, run: AsFittedRun): boolean {
  const progress = progressOf(entries, run);
  return progress !== undefined && (progress !== 'part' || fittedPanels(entries, run).length > 0);
}

export function isFitted(
  entries: FittedEntries,
  runs: readonly AsFittedRun[],
  point: AsFittedPoint,
): boolean {
  return runs.some(
    (run) =>
      run.run === point.run && fittedPanels(entries, run).some(({ panel }) => point.panels.includes(panel)),
  );
}

export function panelKey(run: AsFittedRun, panel: AsFittedPanel): string {
  return `${run.run}/${panel.panel}`;
}

export function lengthOf(entries: FittedEntries, run: AsFittedRun, panel: AsFittedPanel): string {
  return (entries.lengths as Partial<Record<string, string>>)[panelKey(run, panel)] ?? '';
}

export function thicknessOf(entries: FittedEntries, run: AsFittedRun, panel: AsFittedPanel): string {
  return (entries.thicknesses as Partial<Record<string, string>>)[panelKey(run, panel)] ?? '';
}

/** A panel's length as it can be read, in the form's unit. */
export function lengthRead(
  { unit }: Pick<AsFittedData, 'unit'>,
  entries: FittedEntries,
  run: AsFittedRun,
  panel: AsFittedPanel,
): { readonly text: string; readonly mm: number } | undefined {
  const read = typedNumber(lengthOf(entries, run, panel), lengthField(unit));
  return read.kind === 'read'
    ? { text: `${read.text} ${unit}`, mm: inMillimetres(read.value, unit) }
    : undefined;
}

/** What was typed and will not be written as a value, each with the reason. */
export function unwritten(data: AsFittedData, entries: FittedEntries): readonly string[] {
  const told: string[] = [];
  const small = lengthField(data.unit);
  const judge = (what: string, typed: string, read: TypedNumber): void => {
    if (read.kind === 'unreadable') told.push(`${what}: “${typed.trim()}” (${read.why})`);
  };
  judge('Hour meter', entries.meter, typedNumber(entries.meter, hours));
  if (data.tonnes) judge('Tonnes counter', entries.tonnes, typedNumber(entries.tonnes, tonnes));
  judge('Liner temperature', entries.temperature, temperatureTyped(entries.temperature, data.unit));
  const homeless = [{ ...entries.lengths }, { ...entries.thicknesses }];
  data.relines.forEach(({ runs, points, liner }, index) => {
    for (const run of runs) {
      const fitted = fittedPanels(entries, run);
      for (const panel of run.panels) {
        for (const each of homeless) delete each[panelKey(run, panel)];
        const name = `Panel ${panel.panel} of run ${run.run}`;
        for (const [what, typed] of [
          [name, lengthOf(entries, run, panel)],
          [`${name}, thickness`, thicknessOf(entries, run, panel)],
        ] as const)
          if (fitted.includes(panel)) judge(what, typed, typedNumber(typed, small));
          else if (typed.trim() !== '') told.push(`${what}: “${typed.trim()}” (it is not said to be fitted)`);
      }
    }
    for (const point of points) {
      const typed = (entries.points as Partial<Record<string, string>>)[point.name] ?? '';
      if (isFitted(entries, runs, point)) judge(point.name, typed, typedNumber(typed, small));
      else if (typed.trim() !== '')
        told.push(`${point.name}: “${typed.trim()}” (its panel is not said to be fitted)`);
    }
    const offcuts = offcutsTyped((entries.offcuts as Partial<Record<number, string>>)[index] ?? '', small);
    const isNothing = runs.every((run) => fittedPanels(entries, run).length === 0);
    for (const offcut of offcuts) {
      if (isNothing && offcut.kind === 'read')
        told.push(`Offcut of ${liner}: “${offcut.typed}” (nothing was said to be fitted)`);
      judge(`Offcut of ${liner}`, offcut.typed, offcut);
    }
  });
  for (const [key, typed] of homeless.flatMap((each) => Object.entries(each)))
    if (typed.trim() !== '')
      told.push(`Panel ${key.replace('/', ', ')}: “${typed.trim()}” (this form has no such panel)`);
  for (const { what, typed } of entries.elsewhere)
    told.push(`${what}: “${typed}” (another tab had it where this one says something else)`);
  return told;
}
