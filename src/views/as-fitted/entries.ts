// What the as-fitted form holds: what was typed and, for every run, how much of it was fitted. A run that nobody answered for
// counts as not fitted.

import type {
  AsFittedData,
  AsFittedPanel,
  AsFittedPoint,
  AsFittedRun,
} from '../../protocol/offline-forms.js';
import { number } from '../forms/kit.js';

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

/** A number that may be below zero, as text; undefined where it is none. */
export function signed(text: string): string | undefined {
  const tidy = text.trim().replace(',', '.').replace('−', '-');
  return /^-?\d+(\.\d+)?$/.test(tidy) ? tidy : undefined;
}

/** What was typed and will not be written, each with the reason. */
export function unwritten(data: AsFittedData, entries: FittedEntries): readonly string[] {
  const told: string[] = [];
  const judge = (what: string, typed: string, value: unknown): void => {
    if (typed.trim() !== '' && value === undefined) told.push(`${what}: “${typed}” is no number`);
  };
  judge('Hour meter', entries.meter, number(entries.meter));
  if (data.tonnes) judge('Tonnes counter', entries.tonnes, number(entries.tonnes));
  judge('Liner temperature', entries.temperature, signed(entries.temperature));
  for (const { runs, points } of data.relines) {
    for (const run of runs) {
      const fitted = fittedPanels(entries, run);
      for (const panel of run.panels) {
        const typed = lengthOf(entries, run, panel);
        const what = `Panel ${panel.panel} of run ${run.run}`;
        if (fitted.includes(panel)) judge(what, typed, number(typed));
        else if (typed.trim() !== '')
          told.push(`${what}: a length was typed, but it is not said to be fitted`);
      }
    }
    for (const point of points) {
      const typed = (entries.points as Partial<Record<string, string>>)[point.name] ?? '';
      if (isFitted(entries, runs, point)) judge(point.name, typed, number(typed));
      else if (typed.trim() !== '')
        told.push(`${point.name}: a thickness was typed, but its panel is not said to be fitted`);
    }
  }
  for (const { what, typed } of entries.elsewhere)
    told.push(`${what}: “${typed}” was typed in another tab, and something else in this one`);
  return told;
}
