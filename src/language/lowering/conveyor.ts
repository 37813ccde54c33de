// A conveyor block → ConveyorDraft: its facts and its parts by chainage. Without plant, length, incline, trough, screw and
// liner, or with a break that cannot be placed (its runs would be wrong), there is no conveyor.

import type * as ast from '../generated/ast.js';
import type { Break, Conveyor, Section } from '../../domain/model/conveyor.js';
import type { Origin } from '../../domain/model/origin.js';
import { runNamed, runsBetween } from '../../domain/model/runs.js';
import type { Stated } from '../../domain/model/stated.js';
import type { ConveyorDraft, NamedConveyor } from '../sheet.js';
import type { Stretch } from '../../domain/model/stretch.js';
import { assumed, implied } from './assumed.js';
import { lowerPanelsFitted, lowerRun } from './stretch.js';
import { stated, type FactAccount } from './block.js';
import { conveyorLength, probability, someLength, chainage } from './limits.js';
import { lowerPart, partsList } from './parts.js';
import { lowerSafeguards } from './safeguards.js';
import { onceByName } from './plant.js';
import { wordsOf, type Reader } from './reader.js';

type Facts = { -readonly [K in keyof ConveyorDraft]?: ConveyorDraft[K] };

/** The parts along the conveyor, as they are read. */
interface Along {
  readonly parts: ReturnType<typeof partsList>;
  readonly sections: StatedSection[];
  readonly breaks: Break[];
  readonly safeguards: ast.Safeguard[];
  /** False as soon as a break cannot be placed. */
  sound: boolean;
}

interface StatedSection {
  readonly name: string;
  readonly length: Stated<'length'>;
  readonly origin: Origin;
}

export function lowerConveyor(
  reader: Reader,
  block: FactAccount,
  node: ast.Conveyor,
  doc: string | undefined,
): NamedConveyor {
  const facts: Facts = {};
  const along: Along = { parts: partsList(), sections: [], breaks: [], safeguards: [], sound: true };
  const once = onceByName(reader);
  for (const fact of node.facts)
    if (isAlong(fact)) lowerAlong(reader, once, fact, along);
    else lowerFact(reader, block, fact, facts);

  const { parts, sections, breaks, sound } = along;
  const { unplaced, named: _byName, ...placed } = parts;
  const required = requiredFacts(block, {
    ...facts,
    ...stated({ trough: withMaterial(node, facts.trough) }),
    breaks,
  });
  const named = {
    name: block.name,
    origin: block.nameOrigin,
    // A point may stand in a line that cannot be read.
    unplaced: [...unplaced, ...block.left.flatMap(({ names }) => names)],
    ...stated({ plantUse: facts.plantUse }),
  };
  const few = block.isFew('breaks', breaks.length, block.nameOrigin);
  if (!block.stands || !sound || !few || !required) return named;
  return {
    ...named,
    value: {
      ...stated({ title: node.title, doc }),
      wearBy: 'hours',
      confinedSpace: false,
      linersAlong: [],
      panelsFitted: [],
      minimumPlate: assumed.minimumPlate(required.trough.plate),
      ...facts,
      ...required,
      ...placed,
      name: block.name,
      origin: reader.origin(node),
      nameOrigin: block.nameOrigin,
      sections: inOrder(sections),
      breaks: withEndPlates(breaks, required.length, block.nameOrigin),
      safeguards: lowerSafeguards(reader, along.safeguards, {
        ...placed,
        ...required,
        ...stated({ drive: facts.drive }),
        breaks,
      }),
    },
  };
}

/** Said with the trough, or on a line of its own. */
function withMaterial(node: ast.Conveyor, trough: Facts['trough']): Facts['trough'] {
  const own = node.facts.find((fact) => fact.$type === 'TroughMaterial')?.material;
  return trough && { ...trough, ...stated({ material: trough.material ?? own }) };
}

/** What no conveyor can be without; each that is missing is told. */
function requiredFacts(
  block: FactAccount,
  { plantUse, length, incline, trough, screwUse, linerUse, linersAlong, breaks = [] }: Facts,
): Pick<ConveyorDraft, 'plantUse' | 'length' | 'incline' | 'trough' | 'screwUse' | 'linerUse'> | undefined {
  block.require('plant', plantUse, 'plant Tarnholt');
  block.require('length', length, 'length 22.4 m');
  block.require('incline', incline, 'incline 24 deg');
  block.require('trough', trough, 'trough inside radius 226 mm side height 260 mm plate 4 mm');
  block.require('screw', screwUse, 'screw Spiral400');
  const liner = linerUse ?? firstOfAll(linersAlong ?? [], breaks, length);
  // Where stretches have theirs, what is between them still has one: most likely one of them.
  block.require('liner', liner, `liner ${linersAlong?.[0]?.use.name ?? 'TwoLayer12'}`);
  return plantUse && length && incline && trough && screwUse && liner
    ? { plantUse, length, incline, trough, screwUse, linerUse: liner }
    : undefined;
}

/** Where stretches of liner cover the whole length but for breaks, no line has to speak of the rest; undefined where they do not. */
function firstOfAll(
  along: ConveyorDraft['linersAlong'],
  breaks: readonly Break[],
  length: Stated<'length'> | undefined,
): ConveyorDraft['linerUse'] | undefined {
  if (!length) return undefined;
  const runs = runsBetween(withEndPlates(breaks, length, length.origin));
  const lined = along
    .flatMap(({ stretch, use }) => {
      if (stretch.kind === 'chainage') return [{ ...areaOf(stretch), use }];
      const run = stretch.kind === 'run' ? runNamed(runs, stretch.run) : undefined;
      return run ? [{ from: run.from, to: run.to, use }] : [];
    })
    .sort((a, b) => a.from - b.from);
  let covered = 0;
  for (const { from, to } of [...lined, ...breaks.map(areaOf)].sort((a, b) => a.from - b.from))
    if (from <= covered + 1) covered = Math.max(covered, to);
  return covered >= length.value - 1 ? lined[0]?.use : undefined;
}

function areaOf({ from, to }: Pick<Break, 'from' | 'to'>): { readonly from: number; readonly to: number } {
  return { from: from.value, to: to.value };
}

const alongTypes = [
  'Section',
  'Break',
  'HoldDown',
  'Brace',
  'Cover',
  'Access',
  'Isolation',
  'Hatch',
  'LiftingPoint',
  'Rest',
  'Hopper',
  'Drain',
  'Safeguard',
  'Point',
] as const satisfies readonly ast.ConveyorFact['$type'][];

type AlongFact = Extract<ast.ConveyorFact, { readonly $type: (typeof alongTypes)[number] }>;
type PlainFact = Exclude<ast.ConveyorFact, AlongFact>;

function isAlong(fact: ast.ConveyorFact): fact is AlongFact {
  return (alongTypes as readonly string[]).includes(fact.$type);
}

function lowerAlong(
  reader: Reader,
  once: ReturnType<typeof onceByName>,
  fact: AlongFact,
  along: Along,
): void {
  switch (fact.$type) {
    case 'Section': {
      if (!once('section', fact)) return;
      const { name } = fact;
      const length = reader.quantity(fact, 'length', 'length', `length of section ${name ?? ''}`, someLength);
      if (length && name !== undefined) along.sections.push({ name, length, origin: reader.origin(fact) });
      return;
    }
    case 'Break': {
      if (!once('break', fact)) return;
      const read = lowerBreak(reader, fact);
      if (read) along.breaks.push(read);
      else along.sound = false;
      return;
    }
    case 'Safeguard':
      along.safeguards.push(fact); // its place may be a part that stands further down
      return;
    default:
      lowerPart(reader, fact, along.parts, once);
  }
}

function lowerFact(reader: Reader, block: FactAccount, fact: PlainFact, facts: Facts): void {
  const origin = reader.origin(fact);
  const keep = <K extends keyof Facts>(name: K, value: Facts[K]): void => {
    if (value !== undefined) facts[name] = value;
  };
  switch (fact.$type) {
    case 'PlantUse':
      return block.first('plant', fact) ? keep('plantUse', reader.use(fact, 'plant')) : undefined;
    case 'ConveyorLiner': {
      if (fact.from === undefined && !fact.run)
        return block.first('liner', fact) ? keep('linerUse', reader.use(fact, 'liner')) : undefined;
      const use = reader.use(fact, 'liner');
      const stretch = lowerPlace(reader, fact);
      if (use && stretch) facts.linersAlong = [...(facts.linersAlong ?? []), { use, stretch, origin }];
      return;
    }
    case 'PanelsFitted': {
      const fitted = lowerPanelsFitted(reader, fact);
      return fitted && keep('panelsFitted', [...(facts.panelsFitted ?? []), fitted]);
    }
    case 'ScrewUse':
      return block.first('screw', fact) ? keep('screwUse', reader.use(fact, 'screw')) : undefined;
    case 'ConveyorMeasure':
      return lowerMeasure(reader, block, fact, facts);
    case 'TemperatureRange': {
      const key = wordsOf(fact, 'key') ?? '';
      if (!block.first(key, fact)) return;
      return keep(
        key === 'fitting temperature' ? 'fittingTemperature' : 'serviceTemperature',
        reader.range(fact, 'temperature', key),
      );
    }
    case 'Clearance':
      return block.first('clearance', fact)
        ? keep('clearance', reader.range(fact, 'length', 'clearance'))
        : undefined;
    case 'Conveys':
      return block.first('conveys', fact) && fact.material !== undefined
        ? keep('conveys', { material: fact.material, origin })
        : undefined;
    case 'GivesOff':
      return block.first('gives off', fact) ? keep('givesOff', [...fact.what]) : undefined;
    case 'Trough': {
      if (!block.first('trough', fact)) return;
      const insideRadius = reader.quantity(
        fact,
        'radius',
        'length',
        'inside radius of the trough',
        someLength,
      );
      const sideHeight = reader.quantity(fact, 'side', 'length', 'side height of the trough');
      const plate = reader.quantity(fact, 'plate', 'length', 'plate of the trough', someLength);
      if (fact.material !== undefined) block.first('trough material', fact);
      return (
        insideRadius &&
        sideHeight &&
        plate &&
        keep('trough', { insideRadius, sideHeight, plate, origin, ...stated({ material: fact.material }) })
      );
    }
    case 'TroughMaterial':
      block.first('trough material', fact); // taken where the trough is put together
      return;
    case 'Drive': {
      if (!block.first('drive', fact) || fact.end === undefined) return;
      const power = reader.quantity(fact, 'power', 'power', 'power of the drive');
      const speed = reader.quantity(fact, 'speed', 'rotation', 'speed of the screw');
      return keep('drive', { end: fact.end, origin, ...stated({ power, speed }) });
    }
    case 'Rotation':
      return block.first('rotation', fact) && fact.sense !== undefined
        ? keep('rotation', { sense: fact.sense, origin })
        : undefined;
    case 'WornSector': {
      if (!block.first('worn sector', fact)) return;
      const from = reader.clock(fact, 'from');
      const to = reader.clock(fact, 'to');
      return from && to && keep('wornSector', { from, to, origin });
    }
    case 'Commissioned': {
      if (!block.first('commissioned', fact)) return;
      const date = reader.day(fact, 'date');
      const meter = reader.quantity(fact, 'meter', 'duration', 'meter reading');
      const tonnes = reader.quantity(fact, 'tonnes', 'mass', 'tonnes counter');
      return date && meter && keep('commissioned', { date, meter, origin, ...stated({ tonnes }) });
    }
    case 'WearBasis':
      return block.first('wear by', fact) ? keep('wearBy', fact.basis) : undefined;
    case 'ConfinedSpace':
      return block.first('confined space', fact) ? keep('confinedSpace', true) : undefined;
  }
}

/** Where a liner lies that is not the conveyor's usual one. */
function lowerPlace(reader: Reader, fact: ast.ConveyorLiner): Stretch | undefined {
  const origin = reader.origin(fact);
  const run = lowerRun(reader, fact.run);
  if (run) return { kind: 'run', run, origin };
  const span = reader.range(fact, 'length', 'stretch', chainage);
  return span && { kind: 'chainage', ...span, origin };
}

function lowerMeasure(reader: Reader, block: FactAccount, fact: ast.ConveyorMeasure, facts: Facts): void {
  const key = wordsOf(fact, 'key') as ast.ConveyorMeasure['key'] | undefined; // the grammar takes these words only
  if (key === undefined || !block.first(key, fact)) return;
  const keep = <K extends keyof Facts>(name: K, value: Facts[K]): void => {
    if (value !== undefined) facts[name] = value;
  };
  switch (key) {
    case 'length':
      return keep(
        'length',
        reader.quantity(fact, 'value', 'length', `length of conveyor ${block.name}`, conveyorLength),
      );
    case 'incline':
      return keep('incline', reader.quantity(fact, 'value', 'angle', key));
    case 'duty':
      return keep('duty', reader.toleranced(fact, 'duty', key));
    case 'bulk density':
      return keep('bulkDensity', reader.quantity(fact, 'value', 'density', key));
    case 'fill':
      return keep('fill', reader.quantity(fact, 'value', 'ratio', key));
    case 'capacity':
      return keep('capacity', reader.quantity(fact, 'value', 'mass flow', key));
    case 'resistance factor':
      return keep('resistanceFactor', reader.quantity(fact, 'value', 'ratio', key));
    case 'risk':
      return keep('risk', reader.quantity(fact, 'value', 'ratio', key, probability));
    case 'risk of contact':
      return keep('contactRisk', reader.quantity(fact, 'value', 'ratio', key, probability));
    case 'minimum plate':
      return keep('minimumPlate', reader.quantity(fact, 'value', 'length', key));
    case 'liner side height':
      return keep('linerSideHeight', reader.quantity(fact, 'value', 'length', key));
  }
}

function lowerBreak(reader: Reader, node: ast.Break): Break | undefined {
  const name = reader.name(node, 'name');
  const span = reader.range(node, 'length', `chainage of break ${name?.name ?? ''}`, chainage);
  const allowance = reader.quantity(node, 'allowance', 'length', `allowance of break ${name?.name ?? ''}`);
  const kind = wordsOf(node, 'kind') as Break['kind'] | undefined; // the grammar takes these words only
  const drive = wordsOf(node, 'drive')?.replace(/^(driven )?by /, '') as Break['drive']; // these words only, too
  if (!name || !span || !kind) return undefined;
  const origin = reader.origin(node);
  return {
    name: name.name,
    nameOrigin: name.origin,
    kind,
    ...(drive ? { drive } : {}),
    ...(node.gated ? { gated: true as const } : {}),
    ...span,
    allowance: allowance ?? assumed.noAllowance(origin),
    origin,
    implied: false,
    ...stated({ note: node.note }),
  };
}

function inOrder(sections: readonly Omit<Section, 'start'>[]): readonly Section[] {
  let start = 0;
  return sections.map((section) => {
    const placed = { ...section, start };
    start += section.length.value;
    return placed;
  });
}

/** Breaks in chainage order, with the end plates that are there though nobody names them. */
function withEndPlates(
  breaks: readonly Break[],
  length: Conveyor['length'],
  origin: Origin,
): readonly Break[] {
  const sorted = [...breaks].sort((a, b) => a.from.value - b.from.value || a.to.value - b.to.value);
  const plate = (end: 'tail' | 'head', at: Stated<'length'>): Break => ({
    name: end === 'tail' ? 'Tail' : 'Head',
    kind: 'end plate',
    from: at,
    to: at,
    allowance: { ...assumed.noAllowance(origin), assumed: implied(end) },
    origin,
    implied: true,
  });
  if (!sorted.some((one) => one.from.value <= 0)) sorted.unshift(plate('tail', assumed.tailEnd(origin)));
  if (!sorted.some((one) => one.to.value >= length.value))
    sorted.push(plate('head', { ...length, assumed: 'The length of the conveyor.' }));
  return sorted;
}
