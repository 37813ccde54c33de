// What is drawn, before it is framed: the conveyor with its runs and panels as a job would leave them, and a picture
// waiting for its sheet number. `issueDrawings` frames a set of pictures and numbers the sheets.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Interval, Run } from '../../domain/model/runs.js';
import { formatLength, formatValue } from '../../domain/units/format.js';
import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import type { Markup } from '../page/markup.js';
import type { Drawing } from './drawing-sheet.js';
import { chartDrawing, drawingSheet, sheetSize } from './drawing-sheet.js';
import type { HatchPattern } from './hatch.js';

export interface PanelMark {
  /** From the tail of its run. */
  readonly number: number;
  /** Chainages, mm. */
  readonly from: number;
  readonly to: number;
  /** Of the panel itself, mm: less than from joint to joint where joints have a gap. */
  readonly length: number;
  readonly closing: boolean;
  /** Whether the job renews it. */
  readonly renewed: boolean;
}

export interface RunMarks {
  readonly run: Run;
  readonly panels: readonly PanelMark[];
  /** The end at which the first new panel goes in; undefined where nothing is fitted. */
  readonly fitFrom?: 'head' | 'tail';
}

export interface Pictured {
  readonly conveyor: Conveyor;
  readonly runs: readonly RunMarks[];
  /** Stretches the job works on; empty where there is no job. */
  readonly scope: readonly Interval[];
  /** Stretches whose covers, braces and hold-downs come off; the scope where left out. */
  readonly opened?: readonly Interval[];
  /** Which way clock positions are read; downstream where left out. */
  readonly look?: 'downstream' | 'upstream';
}

export interface Picture {
  readonly title: string;
  readonly documentType: string;
  readonly scale: string;
  readonly description: string;
  readonly hatches: readonly HatchPattern[];
  /** What it takes of a sheet from its top, mm, where it is known: then it can be a chart. */
  readonly height?: number;
  /** Stands among words at any width: no sheet of its own, and no scale. */
  readonly chart?: boolean;
  definitions?(id: string): Markup;
  /** Marks inside the drawing area; `id` prefixes every id they refer to. */
  content(id: string): readonly Markup[];
}

export interface Issue {
  readonly owner: string;
  readonly number: string;
  readonly issued: string;
  readonly drawnFrom: string;
}

export function issueDrawings(pictures: readonly Picture[], issue: Issue): readonly Drawing[] {
  const sheets = pictures.filter(({ chart }) => chart !== true);
  return pictures.map((picture, index) => {
    const id = `${issue.number.replace(/[^A-Za-z0-9]+/g, '-')}-${index + 1}`;
    const shown = {
      id,
      description: picture.description,
      hatches: picture.hatches,
      definitions: picture.definitions?.(id),
      content: picture.content(id),
    };
    if (picture.chart)
      return chartDrawing({
        ...shown,
        title: picture.title,
        documentType: picture.documentType,
        height: picture.height ?? sheetSize.height,
      });
    return drawingSheet({
      ...shown,
      block: {
        ...issue,
        title: picture.title,
        documentType: picture.documentType,
        sheet: sheets.indexOf(picture) + 1,
        sheets: sheets.length,
      },
      scale: picture.scale,
    });
  });
}

/** Whether the job opens up any of `from` to `to`, mm. */
export function comesOff(pictured: Pictured, from: number, to: number): boolean {
  return (pictured.opened ?? pictured.scope).some((part) =>
    from === to ? from >= part.from && from <= part.to : from < part.to && to > part.from,
  );
}

/** A chainage for a drawing: metres with two decimals, no unit. */
export function metres(mm: number): string {
  return (mm / 1000).toFixed(2);
}

/** A length along the trough, with its unit: `6.20 m`, or `20.34 ft`. */
export function alongWords(mm: number, conveyor: Conveyor): string {
  return unitOfMachine(conveyor) === 'mm' ? `${metres(mm)} m` : `${(mm / 304.8).toFixed(2)} ft`;
}

/** A size across the machine, with its unit: `12 mm`, `1.205 m`, or `0.47 in`. */
export function sizeWords(mm: number, conveyor: Conveyor): string {
  return unitOfMachine(conveyor) === 'mm'
    ? formatLength(mm)
    : formatValue(mm, 'length', { unit: 'in', digits: 2 });
}

/** A panel's length: whole mm, or inches to a tenth, without a unit. */
export function panelWords(mm: number, conveyor: Conveyor): string {
  return unitOfMachine(conveyor) === 'mm' ? `${Math.round(mm)}` : (mm / 25.4).toFixed(1);
}

/** Marks of a chainage scale at least `apart` mm of paper from each other: where, and how they are lettered. */
export interface ChainageScale {
  readonly unit: 'm' | 'ft';
  /** mm of machine. */
  readonly spacing: number;
  words(mm: number): string;
}

export function chainageScale(conveyor: Conveyor, reduction: number, apart: number): ChainageScale {
  const steps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50];
  const metric = unitOfMachine(conveyor) === 'mm';
  const one = metric ? 1000 : 304.8;
  const step = steps.find((each) => (each * one) / reduction >= apart) ?? 100;
  const digits = step < 1 ? 1 : 0;
  return {
    unit: metric ? 'm' : 'ft',
    spacing: step * one,
    words: (mm) => (mm / one).toFixed(digits),
  };
}
