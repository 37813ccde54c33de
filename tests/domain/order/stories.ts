// Jobs and orders of work for tests, written as lines: `fit panels 1 to 3 of run 1 starting at tail by Alpha after a`.

import type { Conveyor, Cover, HoldDown, Span } from '../../../src/domain/model/conveyor.js';
import type { Estate } from '../../../src/domain/model/estate.js';
import { stepActions, type Job, type Step } from '../../../src/domain/model/job.js';
import type { AccessUnit, Crew } from '../../../src/domain/model/plant.js';
import type { Stretch } from '../../../src/domain/model/stretch.js';
import { checkOrder } from '../../../src/domain/order/check-order.js';
import { groundOf } from '../../../src/domain/order/ground.js';
import type { PlannedStep } from '../../../src/domain/plan/job-plan.js';
import { sequenceOf } from '../../../src/domain/order/sequence.js';
import { walk } from '../../../src/domain/order/walk.js';
import type { Walk } from '../../../src/domain/order/walk-state.js';
import type { Violation } from '../../../src/domain/order/violation.js';
import { conveyor, estate, gap, liner, mm, origin, plant, stated, use } from '../../kit/estate.js';

export const everywhere = {
  name: 'Floor',
  kind: 'ground' as const,
  from: mm(0),
  to: mm(100_000),
  origin: origin(),
};

/** Runs of whole panels of 1 m between breaks; allowances from the tail; 200 mm wide breaks inside; level unless told. */
export function line(
  panels: readonly number[],
  allowances: readonly number[],
  facts: Partial<Conveyor> = {},
): Conveyor {
  const breaks = [gap('Tail', 'end plate', 0, 0, allowances[0] ?? 0)];
  let at = 0;
  panels.forEach((count, k) => {
    at += count * 1000;
    const last = k === panels.length - 1;
    breaks.push(
      gap(
        last ? 'Head' : `Gate${k + 1}`,
        last ? 'end plate' : 'slide gate',
        at,
        last ? at : at + 200,
        allowances[k + 1] ?? 0,
      ),
    );
    at += last ? 0 : 200;
  });
  const spec = liner({ panelLengths: [mm(1000)], panelTolerance: mm(1) });
  return conveyor({
    name: 'L1',
    length: mm(at),
    incline: stated('angle', 0),
    breaks,
    liner: spec,
    access: [everywhere],
    plant: plant(),
    points: [],
    ...facts,
  });
}

export function job(of: Conveyor, relines: readonly string[], facts: Partial<Job> = {}): Job {
  return {
    name: 'J1',
    origin: origin(),
    nameOrigin: origin(),
    conveyor: of,
    conveyorUse: use(of.name),
    relines: relines.map((text) => ({ stretch: stretch(text), liner: of.liner, origin: origin() })),
    crews: [],
    accessUnits: [],
    sawKerf: mm(3),
    minimumClosingPiece: mm(200),
    measuringTolerance: mm(2),
    jointClearance: mm(0),
    stock: [],
    ...facts,
  };
}

export function withOrder(of: Job, lines: readonly string[]): Job {
  return { ...of, order: { steps: lines.map((line) => step(line, of)), origin: origin() } };
}

export function worldOf(of: Job): Estate {
  return estate({ conveyors: [of.conveyor] });
}

export function check(of: Job, lines: readonly string[]): readonly Violation[] {
  return checkOrder(withOrder(of, lines), worldOf(of));
}

/** The order walked through, with nothing told yet of people, platforms and steps side by side. */
export function walked(of: Job, lines: readonly string[]): Walk {
  const steps = lines.map((line) => step(line, of));
  return walk(groundOf(of, steps, worldOf(of)), sequenceOf(steps));
}

export function kinds(of: Job, lines: readonly string[]): readonly string[] {
  return check(of, lines).map((violation) => violation.kind);
}

export function crew(name: string, size = 3, skills: readonly string[] = []): Job['crews'][number] {
  const crew: Crew = {
    name,
    size: { count: size, origin: origin() },
    skills,
    origin: origin(),
    nameOrigin: origin(),
  };
  return { use: use(name), crew };
}

export function platform(name: string, reach = 20_000, limit?: number): Job['accessUnits'][number] {
  const unit: AccessUnit = {
    name,
    reach: mm(reach),
    origin: origin(),
    nameOrigin: origin(),
    ...(limit === undefined ? {} : { limit: stated('mass', limit, `${limit} kg`) }),
  };
  return { use: use(name), unit };
}

export const cover = (from: number, to: number): Cover => ({ from: mm(from), to: mm(to), origin: origin() });
export const brace = (at: number): Span => ({ from: mm(at), to: mm(at), origin: origin() });
export const holdDown = (at: number): HoldDown => ({
  from: mm(at),
  to: mm(at),
  side: 'both sides',
  origin: origin(),
});

export function step(line: string, of?: Job): Step {
  let rest = line.trim();
  const take = (pattern: RegExp): RegExpExecArray | undefined => {
    const found = pattern.exec(rest);
    if (found) rest = rest.replace(pattern, '').trim();
    return found ?? undefined;
  };
  const note = take(/"([^"]*)"$/)?.[1];
  const heat = heatOf(
    take(/ (cold work|hot work(?: shielded)?(?: wet)?(?: fire watch \d+ min)?(?: to be confirmed)?)$/)?.[1],
  );
  const waits = take(/ (dries|cools) (\d+) (h|min)$/);
  const every = take(/ every (\d+) h$/)?.[1];
  const takes = take(/ takes (\d+) (h|min)$/);
  const after = take(/ after ([\w, ]+)$/)?.[1];
  const aboard = take(/ with (\d+) (?:people|person)$/)?.[1];
  const unit = take(/ using (\w+)$/)?.[1];
  const attendants = take(/ attended by ([\w, ]+)$/)?.[1];
  const crews = take(/ by ([\w, ]+)$/)?.[1];
  const cutToFit = take(/ cut to fit$/) !== undefined;
  const start = take(/ starting at (head|tail)$/)?.[1];
  const name = take(/^(\w+): /)?.[1];
  const action = [...stepActions].sort((a, b) => b.length - a.length).find((each) => rest.startsWith(each));
  if (!action) throw new Error(`No step: ${line}`);
  const where = rest.slice(action.length).trim();
  const names = (text: string | undefined): string[] => text?.split(',').map((each) => each.trim()) ?? [];
  return {
    action,
    origin: origin(),
    actionOrigin: origin(),
    crews: names(crews).map(
      (each) => of?.crews.find((known) => known.use.name === each) ?? { use: use(each) },
    ),
    after: names(after).map(use),
    ...(name === undefined ? {} : { name }),
    ...(where === '' ? {} : action.startsWith('gate ') ? { gate: use(where) } : { stretch: stretch(where) }),
    ...(start === 'head' || start === 'tail' ? { start } : {}),
    ...(unit === undefined
      ? {}
      : { unit: of?.accessUnits.find((known) => known.use.name === unit) ?? { use: use(unit) } }),
    ...(takes === undefined
      ? {}
      : {
          takes: stated(
            'duration',
            Number(takes[1]) / (takes[2] === 'min' ? 60 : 1),
            `${takes[1]} ${takes[2]}`,
          ),
        }),
    ...(waits === undefined
      ? {}
      : {
          rest: {
            kind: waits[1] === 'dries' ? ('dries' as const) : ('cools' as const),
            time: stated(
              'duration',
              Number(waits[2]) / (waits[3] === 'min' ? 60 : 1),
              `${waits[2]} ${waits[3]}`,
            ),
          },
        }),
    ...(every === undefined ? {} : { every: stated('duration', Number(every), `${every} h`) }),
    ...(heat ? { heat } : {}),
    ...(cutToFit ? { cutToFit } : {}),
    ...(aboard === undefined ? {} : { aboard: { count: Number(aboard), origin: origin() } }),
    ...(attendants === undefined
      ? {}
      : {
          attendants: names(attendants).map(
            (each) => of?.crews.find((known) => known.use.name === each) ?? { use: use(each) },
          ),
        }),
    ...(note === undefined ? {} : { note }),
  };
}

function heatOf(text: string | undefined): Step['heat'] {
  if (text === undefined) return undefined;
  if (text === 'cold work') return { kind: 'cold', origin: origin() };
  const watch = /fire watch (\d+) min/.exec(text)?.[1];
  return {
    kind: 'hot',
    shielded: text.includes('shielded'),
    wet: text.includes('wet'),
    confirmed: !text.includes('to be confirmed'),
    origin: origin(),
    ...(watch === undefined ? {} : { fireWatch: stated('duration', Number(watch) / 60, `${watch} min`) }),
  };
}

export function stretch(text: string): Stretch {
  const at = origin();
  if (text === 'all') return { kind: 'all', origin: at };
  const count = (word: string | undefined): { count: number; origin: typeof at } => ({
    count: Number(word),
    origin: at,
  });
  const run = /^run (?:(above|below) (\w+)|(\d+))$/.exec(text);
  if (run)
    return {
      kind: 'run',
      run:
        run[1] === undefined || run[2] === undefined
          ? { by: 'number', number: count(run[3]) }
          : { by: 'break', side: run[1] === 'below' ? 'below' : 'above', break: use(run[2]) },
      origin: at,
    };
  const panels = /^panels? (\d+)(?: to (\d+))? of run (\d+)$/.exec(text);
  if (panels)
    return {
      kind: 'panels',
      first: count(panels[1]),
      last: count(panels[2] ?? panels[1]),
      run: { by: 'number', number: count(panels[3]) },
      origin: at,
    };
  const chainage = /^from (\d+) mm to (\d+) mm$/.exec(text);
  if (chainage)
    return { kind: 'chainage', from: mm(Number(chainage[1])), to: mm(Number(chainage[2])), origin: at };
  throw new Error(`No stretch: ${text}`);
}

export const before = ['isolate', 'prove dead'];
export const afterwards = ['remove isolation', 'run empty', 'run loaded'];

/** A step in a plan, done by two of Alpha; times in working hours. */
export function plannedStep(
  of: Step,
  start: number,
  finish: number,
  more: Partial<PlannedStep> = {},
): PlannedStep {
  return {
    step: of,
    crews: ['Alpha'],
    people: 2,
    unit: undefined,
    work: { personHours: 1, mostPeople: 2, basis: '', defaults: [] },
    start,
    finish,
    from: undefined,
    to: undefined,
    float: 0,
    critical: true,
    after: [],
    ...more,
  };
}
