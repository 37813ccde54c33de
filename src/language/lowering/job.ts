// A job block → JobDraft; crews, access units, outages and liners stay names until the plant is known.

import type * as ast from '../generated/ast.js';
import { stepActions, type Heat } from '../../domain/model/job.js';
import type { NameUse } from '../../domain/model/stated.js';
import type { JobDraft, Named, StepDraft } from '../sheet.js';
import { assumed } from './assumed.js';
import { present, stated, type FactAccount } from './block.js';
import { chainage, panelLength, someLength, someMass, someTime } from './limits.js';
import { lowerRescue, onceByName } from './plant.js';
import { textOf, wordsOf, type Reader } from './reader.js';
import { lowerStretches, lowerUnbroken } from './stretch.js';

type Facts = { -readonly [K in keyof JobDraft]?: JobDraft[K] };

/** What a job names several of, in the order written. */
interface Lists {
  readonly relines: (JobDraft['relines'][number] | undefined)[];
  readonly crews: NameUse[];
  readonly accessUnits: NameUse[];
  readonly stock: JobDraft['stock'][number][];
  readonly cranes: JobDraft['cranes'][number][];
  readonly tools: NonNullable<JobDraft['tools']>[number][];
  readonly spares: NonNullable<JobDraft['spares']>[number][];
}

export function lowerJob(
  reader: Reader,
  block: FactAccount,
  node: ast.Job,
  doc: string | undefined,
): Named<JobDraft> {
  const facts: Facts = {};
  const lists: Lists = {
    relines: [],
    crews: [],
    accessUnits: [],
    stock: [],
    cranes: [],
    tools: [],
    spares: [],
  };
  for (const fact of node.facts) lowerFact(reader, block, fact, facts, lists);
  const { conveyorUse } = facts;
  block.require('conveyor', conveyorUse, 'conveyor DG1');
  const named = { name: block.name, origin: block.nameOrigin };
  const few = [
    block.isFew('crews', lists.crews.length, block.nameOrigin),
    block.isFew('access units', lists.accessUnits.length, block.nameOrigin),
    block.isFew('steps', facts.order?.steps.length ?? 0, block.nameOrigin),
  ].every((each) => each);
  if (!block.stands || !few || !conveyorUse) return named;
  const at = block.nameOrigin;
  return {
    ...named,
    value: {
      ...stated({ title: node.title, doc }),
      sawKerf: assumed.sawKerf(at),
      minimumClosingPiece: assumed.minimumClosingPiece(at),
      measuringTolerance: assumed.measuringTolerance(at),
      jointClearance: assumed.jointClearance(at),
      ...facts,
      ...lists,
      name: block.name,
      origin: reader.origin(node),
      nameOrigin: at,
      conveyorUse,
      relines: present(lists.relines),
    },
  };
}

function lowerFact(reader: Reader, block: FactAccount, fact: ast.JobFact, facts: Facts, lists: Lists): void {
  const origin = reader.origin(fact);
  switch (fact.$type) {
    case 'JobConveyor': {
      const use = block.first('conveyor', fact) ? reader.use(fact, 'conveyor') : undefined;
      if (use) facts.conveyorUse = use;
      return;
    }
    case 'JobWindow':
      if (block.first('outage or window', fact)) lowerWindow(reader, fact, facts);
      return;
    case 'JobScope':
      lowerScope(reader, block, fact, facts, lists);
      return;
    case 'JobCrews':
      lists.crews.push(...reader.uses(fact, 'crews'));
      return;
    case 'JobAccessUnits':
      lists.accessUnits.push(...reader.uses(fact, 'units'));
      return;
    case 'JobPart': {
      const use = block.first('part of', fact) ? reader.use(fact, 'job') : undefined;
      if (use) facts.partOf = use;
      return;
    }
    case 'JobCrane': {
      const use = reader.use(fact, 'crane');
      const at = reader.quantity(fact, 'at', 'length', 'chainage of the crane', chainage);
      const offset = reader.quantity(fact, 'offset', 'length', 'offset of the crane');
      if (use && at && offset) lists.cranes.push({ use, at, offset, origin });
      return;
    }
    case 'JobMeasure':
      lowerMeasure(reader, block, fact, facts);
      return;
    case 'TemperatureRange': {
      const range = block.first('fitting temperature', fact)
        ? reader.range(fact, 'temperature', 'fitting temperature')
        : undefined;
      if (range) facts.fittingTemperature = range;
      return;
    }
    case 'Rescue':
      facts.rescue = lowerRescue(reader, block, fact, facts.rescue);
      return;
    case 'Tool':
      lowerTool(reader, fact, lists);
      return;
    case 'Spare':
      lowerSpare(reader, block, fact, lists);
      return;
    case 'HeldUp': {
      const heldUp = block.first('spiral held up by', fact) ? lowerHeldUp(reader, fact) : undefined;
      if (heldUp) facts.heldUp = heldUp;
      return;
    }
    case 'JobStock':
    case 'JobOffcut':
      lowerStock(reader, fact, lists);
      return;
    case 'Order': {
      // An order with a hole in it is no order: judged as one, every step after the hole would seem wrong.
      const steps = block.first('order', fact) ? lowerSteps(reader, fact) : undefined;
      if (steps) facts.order = { steps, origin };
      return;
    }
  }
}

function lowerTool(reader: Reader, fact: ast.Tool, { tools }: Lists): void {
  const count = fact.count === undefined ? undefined : reader.count(fact, 'count', 'number of the tool');
  if (fact.what !== undefined)
    tools.push({ what: fact.what, origin: reader.origin(fact), ...stated({ count }) });
}

function lowerSpare(reader: Reader, block: FactAccount, fact: ast.Spare, { spares, tools }: Lists): void {
  if (fact.what !== undefined) {
    const pieces = fact.count === undefined ? undefined : reader.count(fact, 'count', 'spares to bring');
    tools.push({ what: `${fact.what} (spare)`, ...stated({ count: pieces }), origin: reader.origin(fact) });
    return;
  }
  if (fact.item === undefined) return;
  const item = fact.item === 'panel' || fact.item === 'panels' ? 'panels' : 'fixings';
  if (!block.first(`spare ${item}`, fact)) return;
  const count = reader.count(fact, 'count', `spare ${item}`, 0);
  if (count) spares.push({ item, count, origin: reader.origin(fact) });
}

function lowerHeldUp(reader: Reader, fact: ast.HeldUp): JobDraft['heldUp'] {
  const rating = reader.quantity(fact, 'rating', 'mass', 'rating of what holds the spiral up', someMass);
  const spacing = reader.quantity(fact, 'spacing', 'length', 'distance between supports', someLength);
  if (fact.gear === undefined || !rating || !spacing) return undefined;
  return { gear: fact.gear, rating, spacing, origin: reader.origin(fact) };
}

function lowerScope(
  reader: Reader,
  block: FactAccount,
  fact: ast.JobScope,
  facts: Facts,
  { relines }: Lists,
): void {
  if (fact.changeScrew) {
    if (block.first('change screw', fact)) facts.screwChange = lowerScrewChange(reader, fact);
    return;
  }
  const origin = reader.origin(fact);
  const linerUse = reader.use(fact, 'liner');
  for (const stretch of lowerStretches(reader, fact.stretch))
    relines.push(stretch && { stretch, origin, ...stated({ linerUse }) });
}

function lowerStock(reader: Reader, fact: ast.JobStock | ast.JobOffcut, { stock }: Lists): void {
  const offcut = fact.$type === 'JobOffcut';
  const what = offcut ? 'length of the offcut' : 'stock length';
  const length = reader.quantity(fact, 'length', 'length', what, panelLength);
  const count = fact.count === undefined ? undefined : reader.count(fact, 'count', 'number of pieces');
  if (length) stock.push({ length, offcut, origin: reader.origin(fact), ...stated({ count }) });
}

function lowerScrewChange(reader: Reader, fact: ast.JobScope): NonNullable<JobDraft['screwChange']> {
  const joints = wordsOf(fact, 'joints');
  const cut = wordsOf(fact, 'cut');
  return {
    origin: reader.origin(fact),
    ...stated({
      screwUse: reader.use(fact, 'screw'),
      joints: joints === undefined ? undefined : joints === 'bolted joints' ? 'bolted' : 'welded',
      cut: cut === undefined ? undefined : cut === 'cut cold' ? 'cold' : 'hot',
    } as const),
  };
}

function lowerWindow(reader: Reader, fact: ast.JobWindow, facts: Facts): void {
  const outage = reader.use(fact, 'outage');
  if (outage) {
    facts.outageUse = { ...outage, fact: reader.origin(fact) };
    return;
  }
  const days = reader.days(fact);
  if (days) facts.window = { ...days, origin: reader.origin(fact) };
}

function lowerMeasure(reader: Reader, block: FactAccount, fact: ast.JobMeasure, facts: Facts): void {
  const key = wordsOf(fact, 'key') as ast.JobMeasure['key'] | undefined; // the grammar takes these words only
  if (key === undefined || !block.first(key, fact)) return;
  const keep = <K extends keyof Facts>(name: K, value: Facts[K]): void => {
    if (value !== undefined) facts[name] = value;
  };
  switch (key) {
    case 'lift limit':
      return keep('liftLimit', reader.quantity(fact, 'value', 'mass', key));
    case 'team lift':
      return keep('teamLift', reader.quantity(fact, 'value', 'mass', key));
    case 'sling angle':
      return keep(
        'slingAngle',
        reader.quantity(fact, 'value', 'angle', key, {
          from: 0,
          to: 89,
          range: '0 deg to 89 deg from the vertical',
        }),
      );
    case 'saw kerf':
      return keep('sawKerf', reader.quantity(fact, 'value', 'length', key));
    case 'minimum closing piece':
      return keep('minimumClosingPiece', reader.quantity(fact, 'value', 'length', key));
    case 'measuring tolerance':
      return keep('measuringTolerance', reader.quantity(fact, 'value', 'length', key));
    case 'joint clearance':
      return keep('jointClearance', reader.quantity(fact, 'value', 'length', key));
  }
}

/** Undefined where a step or its stretch cannot be read. */
function lowerSteps(reader: Reader, node: ast.Order): readonly StepDraft[] | undefined {
  const once = onceByName(reader);
  const steps = node.steps.map((step): StepDraft | undefined => {
    const word = wordsOf(step, 'action');
    const action = stepActions.find((one) => one === word);
    const stretch = lowerUnbroken(reader, step.stretch, `the step \`${word ?? ''}\``);
    // A step whose label is taken already keeps its work, not its label.
    const name = once('step', step) ? textOf(step, 'name') : undefined;
    const takes = reader.quantity(step, 'takes', 'duration', `time of ${word ?? 'the step'}`, someTime);
    const every = reader.quantity(step, 'every', 'duration', 'interval of the gas test', someTime);
    const rest = reader.quantity(
      step,
      'rest',
      'duration',
      `time that the place ${step.resting ?? 'dries'}`,
      someTime,
    );
    const aboard = step.aboard === undefined ? undefined : reader.count(step, 'aboard', 'people at a time');
    const gate = reader.use(step, 'gate');
    if (!action || (step.stretch && !stretch)) return undefined;
    return {
      action,
      origin: reader.origin(step),
      actionOrigin: reader.part(step, 'action'),
      crews: reader.uses(step, 'crews'),
      attendants: reader.uses(step, 'attendants'),
      after: reader.uses(step, 'after'),
      ...stated({
        name,
        stretch,
        start: step.start,
        gate,
        cutToFit: step.cutToFit ? true : undefined,
        unit: reader.use(step, 'unit'),
        aboard,
        takes,
        every,
        rest: rest && step.resting ? { kind: step.resting, time: rest } : undefined,
        heat: lowerHeat(reader, step),
        note: step.note,
        remark: remarkBehind(step),
      }),
    };
  });
  return steps.includes(undefined) ? undefined : present(steps);
}

/** `// with the hose`, where nothing but spaces stands between it and the step. */
function remarkBehind({ $cstNode: node }: ast.Step): StepDraft['remark'] {
  if (!node) return undefined;
  const line = /^[ \t]*(\/\/[^\r\n]*)/.exec(node.root.fullText.slice(node.end, node.end + longestRemark));
  return line?.[1] === undefined ? undefined : { text: line[1].trimEnd(), end: node.end + line[0].length };
}

/** Characters behind a step that are looked at; of a longer comment the rest stays where it is. */
const longestRemark = 500;

function lowerHeat(reader: Reader, step: ast.Step): Heat | undefined {
  if (step.cold) return { kind: 'cold', origin: reader.part(step, 'cold') };
  if (!step.hot) return undefined;
  const fireWatch = reader.quantity(step, 'watch', 'duration', 'time of the fire watch', someTime);
  return {
    kind: 'hot',
    shielded: step.shielded,
    wet: step.wet,
    confirmed: !step.unconfirmed,
    origin: reader.part(step, 'hot'),
    ...stated({ fireWatch }),
  };
}
