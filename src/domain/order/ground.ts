// What a job works on, cut into the pieces whose state matters: panels of every run, covers, braces, hold-downs, and the
// screw and the air by cells between the places where steps begin and end. Each piece has a number; walk.ts keeps a state
// for each. Where a conveyor declares no covers (or braces, or hold-downs) and a step speaks of them, each cell has one.
// Panels belong to a stretch that holds their middle; covers and the like to every stretch they overlap by a millimetre.

import { type LengthUnit, chainageWords } from '../units/length-words.js';
import { hasGate, type HoldDown, type Span } from '../model/conveyor.js';
import type { Estate } from '../model/estate.js';
import type { Job, Step, StepAction } from '../model/job.js';
import { intervalOf, runsOf, type Run } from '../model/runs.js';
import type { LinerSpecification } from '../model/specifications.js';
import { concerns, layoutOf } from './layout.js';
import type { InstalledPanels } from '../model/panels.js';
import { startOf, usualStartOf, type End } from './start.js';

export interface Area {
  readonly from: number;
  readonly to: number;
}

/** One piece with a state of its own. */
export interface Piece extends Area {
  readonly number: number;
  readonly kind: PieceKind;
  /** For panels. */
  readonly run?: RunGround;
  readonly panel?: number;
  /** For gates. */
  readonly name?: string;
  /** For hold-downs that the conveyor declares. */
  readonly side?: HoldDown['side'];
}

export type PieceKind =
  | 'isolation'
  | 'running'
  | 'restraint'
  | 'drive'
  | 'air'
  | 'heat'
  | 'litter'
  | 'content'
  | 'gate'
  | 'screw'
  | 'cover'
  | 'brace'
  | 'hold-down'
  | 'panel';

export interface RunGround {
  readonly run: Run;
  readonly liner: LinerSpecification;
  /** The end the layout of panels was worked out from. */
  readonly start: End;
  /** Chainages of joints, tail end first, mm. */
  readonly ends: readonly number[];
  /** In order from the tail; panel n is at n − 1. */
  readonly panels: readonly RunPanel[];
  /** Where nobody wrote down how the panels that stay were cut. */
  readonly reckonedFor?: InstalledPanels['reckonedFor'];
}

/** A panel of a run, by its number from the tail. */
export interface RunPanel extends Piece {
  readonly run: RunGround;
  readonly panel: number;
  /** As it is bought or cut, mm: where joints have a gap, less than from joint to joint. */
  readonly length: number;
}

export interface Ground {
  readonly job: Job;
  readonly pieces: readonly Piece[];
  readonly isolation: Piece;
  readonly running: Piece;
  readonly restraint: Piece;
  readonly drive: Piece;
  /** What lies in the trough. */
  readonly content: Piece;
  readonly gates: readonly Piece[];
  /** Places that may smoulder. */
  readonly heat: readonly Piece[];
  /** Places to be cleared up; none where no step of the order does. */
  readonly litter: readonly Piece[];
  readonly air: readonly Piece[];
  readonly screw: readonly Piece[];
  readonly covers: readonly Piece[];
  readonly braces: readonly Piece[];
  readonly holdDowns: readonly Piece[];
  readonly runs: readonly RunGround[];
  /** True where steps of their own join the pieces of the new spiral. */
  readonly joins: boolean;
  readonly steps: readonly Step[];
  /** Where each step works, by its position; undefined where its stretch is nowhere. */
  readonly areas: readonly (readonly Area[] | undefined)[];
  /** Stretches to be relined. */
  readonly scope: readonly Area[];
}

export function groundOf(job: Job, steps: readonly Step[], estate: Estate): Ground {
  const { conveyor } = job;
  const whole: Area = { from: 0, to: conveyor.length.value };
  const laid = runsOf(conveyor).map((run) => ({
    run,
    ...layoutOf(job, run, layoutStart(job, steps, run), estate),
  }));
  const endsOf = (run: Run): readonly number[] => laid.find((each) => each.run === run)?.layout.joints ?? [];

  const scope = job.relines.flatMap(({ stretch }) => intervalOf(conveyor, stretch, endsOf) ?? []);
  const said = steps.map((step): readonly Area[] | undefined => {
    if (step.stretch) {
      const found = intervalOf(conveyor, step.stretch, endsOf);
      return found && found.to > found.from ? [{ from: found.from, to: found.to }] : undefined;
    }
    return impliedArea(step, job, scope, whole);
  });
  // `clean all` is of what is bare: of what the job renews, and of what its steps strip.
  const bare = [...scope, ...steps.flatMap(({ action }, i) => (action === 'strip' ? (said[i] ?? []) : []))];
  const areas = steps.map(({ action, stretch }, i) =>
    action === 'clean' && stretch?.kind === 'all' && bare.length > 0 ? bare : said[i],
  );

  const pieces: Piece[] = [];
  const add = <M extends Partial<Piece>>(kind: PieceKind, { from, to }: Area, more: M): Piece & M => {
    const piece = { number: pieces.length, kind, from, to, ...more };
    pieces.push(piece);
    return piece;
  };
  const isolation = add('isolation', whole, {});
  const running = add('running', whole, {});
  const restraint = add('restraint', whole, {});
  const drive = add('drive', driveEnd(job), {});
  const content = add('content', whole, {});
  const gates = conveyor.breaks
    .filter(hasGate)
    .map((place) => add('gate', areaOf(place), { name: place.name }));

  const cells = cellsOf(
    whole,
    areas.flatMap((list) => list ?? []),
  );
  const along = (kind: PieceKind): Piece[] => cells.map((cell) => add(kind, cell, {}));
  const air = along('air');
  const heat = along('heat');
  const screw = along('screw');
  const spoken = (...actions: readonly StepAction[]): boolean =>
    steps.some((step) => actions.includes(step.action));
  const litter = spoken('clear up') ? along('litter') : [];
  const parts = (
    kind: PieceKind,
    declared: readonly (Span & Pick<Piece, 'side'>)[],
    ...actions: readonly StepAction[]
  ): Piece[] => {
    if (declared.length > 0)
      return declared.map((part) => add(kind, areaOf(part), part.side ? { side: part.side } : {}));
    return spoken(...actions) ? along(kind) : [];
  };
  const covers = parts('cover', conveyor.covers, 'covers off', 'covers on');
  const braces = parts('brace', conveyor.braces, 'braces off', 'braces on');
  const holdDowns = parts('hold-down', conveyor.holdDowns, 'hold-downs off', 'hold-downs on');

  const runs = laid.map(({ run, layout, liner, start, reckonedFor }): RunGround => {
    const panels: RunPanel[] = [];
    const ground: RunGround = { run, liner, start, ends: layout.joints, panels, reckonedFor };
    between(layout.joints).forEach((area, i) => {
      const length = layout.panels[i]?.length ?? area.to - area.from;
      panels.push(add('panel', area, { run: ground, panel: i + 1, length }));
    });
    return ground;
  });
  return {
    job,
    pieces,
    isolation,
    running,
    restraint,
    drive,
    content,
    gates,
    heat,
    litter,
    air,
    screw,
    covers,
    braces,
    holdDowns,
    runs,
    steps,
    joins: spoken('join screw'),
    areas,
    scope,
  };
}

/** The conveyor between the places where steps begin and end. */
function cellsOf(whole: Area, areas: readonly Area[]): Area[] {
  const cuts = new Set([whole.from, whole.to, ...areas.flatMap(({ from, to }) => [from, to])]);
  return between([...cuts].filter((at) => at >= whole.from && at <= whole.to).sort((a, b) => a - b));
}

/** From each of a row of chainages to the next. */
function between(ends: readonly number[]): Area[] {
  return ends.slice(1).map((to, i) => ({ from: ends[i] ?? to, to }));
}

/** Pieces of a list that a step's areas touch: panels by their middle, things at one chainage inclusive, others by overlap. */
export function within<P extends Piece>(pieces: readonly P[], areas: readonly Area[]): P[] {
  return pieces.filter((piece) => areas.some((area) => touches(piece, area)));
}

export function touches(piece: Piece, area: Area): boolean {
  return piece.kind === 'panel' ? holdsMiddle(area, piece) : overlaps(piece, area);
}

/** True where the middle of a panel lies in a stretch: it comes off and goes in whole. */
export function holdsMiddle(area: Area, panel: Area): boolean {
  const middle = (panel.from + panel.to) / 2;
  return middle > area.from && middle < area.to;
}

/** True where two stretches share more than a millimetre; a place without length counts where the other one holds it. */
export function overlaps(a: Area, b: Area): boolean {
  if (a.from === a.to) return a.from >= b.from && a.from <= b.to;
  return Math.min(a.to, b.to) - Math.max(a.from, b.from) > slack;
}

/** Chainages of a part of the machine. */
export function areaOf(span: Span): Area {
  return { from: span.from.value, to: span.to.value };
}

/** Where a step works; nowhere where its stretch is none. */
export function areasOf(ground: Pick<Ground, 'areas'>, step: number): readonly Area[] {
  return ground.areas[step] ?? [];
}

/** Where all steps of one action work together. */
export function areasOfAction(ground: Pick<Ground, 'areas' | 'steps'>, action: StepAction): readonly Area[] {
  return ground.steps.flatMap((step, i) => (step.action === action ? areasOf(ground, i) : []));
}

/** Where new panels go: what the order's `fit` steps cover, which can be more than the job asks for; its scope where there are none. */
export function fittedAreas(ground: Ground): readonly Area[] {
  const areas = areasOfAction(ground, 'fit');
  return areas.length > 0 ? areas : ground.scope;
}

const slack = 1;

/** `panel 4 of run 2 (Gate to Head)`, `cover 9.00 m to 10.50 m`, `hold-down at 3.50 m`. */
export function sayPiece(piece: Piece, unit: LengthUnit): string {
  switch (piece.kind) {
    case 'panel':
      return `panel ${piece.panel} of run ${piece.run?.run.number}`;
    case 'isolation':
      return 'isolation';
    case 'running':
      return 'trial runs';
    case 'restraint':
      return 'restraint of the spiral';
    case 'drive':
      return 'drive plate';
    case 'content':
      return 'material in the trough';
    case 'gate':
      return /^gate\b/i.test(piece.name ?? '') ? (piece.name ?? '') : `gate ${piece.name ?? ''}`;
    case 'heat':
      return `place of hot work ${chainageWords(piece.from, unit)} to ${chainageWords(piece.to, unit)}`;
    case 'litter':
      return `tools and litter ${chainageWords(piece.from, unit)} to ${chainageWords(piece.to, unit)}`;
    case 'air':
    case 'screw':
    case 'cover':
    case 'brace':
    case 'hold-down': {
      const name = piece.kind === 'screw' ? 'spiral' : piece.kind;
      return piece.from === piece.to
        ? `${name} at ${chainageWords(piece.from, unit)}`
        : `${name} ${chainageWords(piece.from, unit)} to ${chainageWords(piece.to, unit)}`;
    }
  }
}

/** A step without a stretch means the whole scope of the job: what is relined, and all of it where the screw changes. */
function impliedArea(step: Step, job: Job, scope: readonly Area[], whole: Area): readonly Area[] {
  switch (step.action) {
    case 'strip':
    case 'clean':
    case 'patch':
    case 'fit':
      return scope.length > 0 ? scope : [whole];
    case 'covers off':
    case 'covers on':
    case 'braces off':
    case 'braces on':
    case 'hold-downs off':
    case 'hold-downs on':
    case 'gas test':
    case 'fire watch':
    case 'clear up':
      return job.screwChange || scope.length === 0 ? [whole] : scope;
    case 'restrain screw':
    case 'unbolt drive':
    case 'bolt drive':
    case 'release screw':
      return [driveEnd(job)];
    case 'gate off':
    case 'gate on':
    case 'gate shut':
    case 'gate open':
      return job.conveyor.breaks.filter((place) => place.name === step.gate?.name).map(areaOf);
    case 'other work':
      return [];
    case 'empty':
    case 'pause':
    case 'isolate':
    case 'prove dead':
    case 'remove screw':
    case 'insert screw':
    case 'join screw':
    case 'remove isolation':
    case 'run empty':
    case 'run loaded':
      return [whole];
  }
}

function driveEnd({ conveyor }: Job): Area {
  const at = conveyor.drive?.end === 'tail' ? 0 : conveyor.length.value;
  return { from: at, to: at };
}

/** The first written `fit` that speaks of the run decides; the custom where there is none. */
function layoutStart(job: Job, steps: readonly Step[], run: Run): End {
  const fits = steps.filter((step) => step.action === 'fit');
  const step =
    fits.find((fit) => fit.stretch && fit.stretch.kind !== 'all' && concerns(job, fit.stretch, run)) ??
    fits.find((fit) => !fit.stretch || fit.stretch.kind === 'all');
  return step ? startOf(step, run).start : usualStartOf(run).start;
}
