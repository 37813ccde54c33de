// A plant block → Plant. Nothing in it is required; what cannot be read is reported and left out.

import type * as ast from '../generated/ast.js';
import type {
  AccessUnit,
  Crane,
  Cost,
  CostItem,
  Crew,
  Expedited,
  LeadItem,
  Outage,
  OrderedScrew,
  OrderedPart,
  OrderedStock,
  Plant,
  PlantThreshold,
  Rescue,
  ShelfCount,
  ShelfItem,
  SparePart,
  SpareScrew,
  Shift,
  UnitTime,
  WorkItem,
} from '../../domain/model/plant.js';
import type { Dimension } from '../../domain/units/dimension.js';
import type { NamedPlant } from '../sheet.js';
import { assumed } from './assumed.js';
import { present, stated, type FactAccount } from './block.js';
import { conveyorLength, panelLength, probability, someLength, someMass } from './limits.js';
import { textOf, wordsOf, type Reader } from './reader.js';
import { partNamed } from './seen-at.js';

type Facts = { -readonly [K in keyof Plant]?: Plant[K] };

/** What a plant has several of, in the order written; undefined for those that could not be read. */
interface Lists {
  readonly outages: (Outage | undefined)[];
  readonly crews: (Crew | undefined)[];
  readonly accessUnits: (AccessUnit | undefined)[];
  readonly cranes: (Crane | undefined)[];
  readonly shifts: (Shift | undefined)[];
  readonly leadTimes: (LeadTime | undefined)[];
  readonly expedited: (Expedited | undefined)[];
  readonly shelf: (ShelfCount | undefined)[];
  readonly spareScrews: (SpareScrew | undefined)[];
  readonly ordered: (OrderedStock | undefined)[];
  readonly orderedScrews: (OrderedScrew | undefined)[];
  readonly spareParts: (SparePart | undefined)[];
  readonly orderedParts: (OrderedPart | undefined)[];
  readonly costs: (Cost | undefined)[];
  readonly unitTimes: (UnitTime | undefined)[];
  readonly thresholds: (PlantThreshold | undefined)[];
}

export function lowerPlant(
  reader: Reader,
  block: FactAccount,
  node: ast.Plant,
  doc: string | undefined,
): NamedPlant {
  const facts: Facts = {};
  const lists = noLists();
  const unread: string[] = [];
  const once = onceByName(reader);
  for (const fact of node.facts) {
    switch (fact.$type) {
      case 'PlantMeasure':
        lowerMeasure(reader, block, fact, facts);
        break;
      case 'TemperatureRange':
        lowerTemperature(reader, block, fact, facts);
        break;
      case 'Outage':
      case 'Crew':
      case 'AccessUnit':
      case 'Crane':
        if (!lowerNamed(reader, once, fact, lists)) unread.push(fact.name);
        break;
      case 'Shift':
        lists.shifts.push(lowerShift(reader, fact));
        break;
      case 'LeadTime':
        lists.leadTimes.push(lowerLeadTime(reader, block, fact));
        break;
      case 'ExpeditedLeadTime':
        lists.expedited.push(lowerExpedited(reader, block, fact));
        break;
      case 'OrderedStock':
      case 'OrderedPart':
      case 'ShelfPart':
      case 'ShelfStock':
        lowerStore(reader, block, fact, lists);
        break;
      case 'Cost':
        lists.costs.push(lowerCost(reader, block, fact));
        break;
      case 'UnitTime':
        lists.unitTimes.push(lowerUnitTime(reader, block, fact));
        break;
      case 'Threshold':
        lists.thresholds.push(lowerThreshold(reader, fact));
        break;
      case 'Rescue':
        facts.rescue = lowerRescue(reader, block, fact, facts.rescue);
        break;
    }
  }
  const at = block.nameOrigin;
  return {
    name: block.name,
    origin: at,
    ...(block.left.length > 0 ? {} : { unread }),
    value: {
      ...stated({ title: node.title, doc }),
      risk: assumed.risk(at),
      contactRisk: assumed.contactRisk(at),
      ...facts,
      name: block.name,
      origin: reader.origin(node),
      nameOrigin: at,
      outages: present(lists.outages),
      crews: present(lists.crews),
      accessUnits: present(lists.accessUnits),
      cranes: present(lists.cranes),
      shifts: present(lists.shifts),
      leadTimes: present(lists.leadTimes),
      expedited: present(lists.expedited),
      shelf: present(lists.shelf),
      spareScrews: present(lists.spareScrews),
      ordered: present(lists.ordered),
      orderedScrews: present(lists.orderedScrews),
      spareParts: present(lists.spareParts),
      orderedParts: present(lists.orderedParts),
      costs: present(lists.costs),
      unitTimes: present(lists.unitTimes),
      thresholds: present(lists.thresholds),
    },
  };
}

function noLists(): Lists {
  return {
    outages: [],
    crews: [],
    accessUnits: [],
    cranes: [],
    shifts: [],
    leadTimes: [],
    expedited: [],
    shelf: [],
    spareScrews: [],
    ordered: [],
    orderedScrews: [],
    spareParts: [],
    orderedParts: [],
    costs: [],
    unitTimes: [],
    thresholds: [],
  };
}

function lowerMeasure(reader: Reader, block: FactAccount, fact: ast.PlantMeasure, facts: Facts): void {
  const key = wordsOf(fact, 'key') ?? '';
  if (!block.first(key, fact)) return;
  const keep = <K extends keyof Facts>(name: K, value: Facts[K]): void => {
    if (value !== undefined) facts[name] = value;
  };
  switch (key) {
    case 'duty':
      return keep('duty', reader.toleranced(fact, 'duty', key));
    case 'risk':
      return keep('risk', reader.quantity(fact, 'value', 'ratio', key, probability));
    case 'risk of contact':
      return keep('contactRisk', reader.quantity(fact, 'value', 'ratio', key, probability));
    case 'gas test interval':
      return keep('gasTestInterval', reader.quantity(fact, 'value', 'duration', key));
  }
}

/** Its unit is for its rule to judge. */
function lowerThreshold(reader: Reader, fact: ast.Threshold): PlantThreshold | undefined {
  const text = textOf(fact, 'value');
  if (fact.code === undefined || text === undefined) return undefined;
  return {
    code: fact.code.toUpperCase(),
    text,
    ...stated({ note: fact.note }),
    codeOrigin: reader.part(fact, 'code'),
    valueOrigin: reader.part(fact, 'value'),
  };
}

/** What is known so far, with this fact. */
export function lowerRescue(
  reader: Reader,
  block: FactAccount,
  fact: ast.Rescue,
  known: Rescue = {},
): Rescue {
  const key = wordsOf(fact, 'key') as ast.Rescue['key'] | undefined; // the grammar takes these words only
  if (key === undefined || !block.first(key, fact) || fact.words === undefined) return known;
  const told = { words: fact.words, origin: reader.origin(fact) };
  switch (key) {
    case 'rescue contact':
      return { ...known, contact: told };
    case 'rescue means':
      return { ...known, means: told };
    case 'meeting point':
      return { ...known, meetingPoint: told };
  }
}

function lowerTemperature(
  reader: Reader,
  block: FactAccount,
  fact: ast.TemperatureRange,
  facts: Facts,
): void {
  const key = wordsOf(fact, 'key') ?? '';
  if (!block.first(key, fact)) return;
  const range = reader.range(fact, 'temperature', key);
  if (!range) return;
  if (key === 'fitting temperature') facts.fittingTemperature = range;
  else facts.serviceTemperature = range;
}

/** False where the name is new and what it stands for cannot be read. */
function lowerNamed(
  reader: Reader,
  once: ReturnType<typeof onceByName>,
  fact: ast.Outage | ast.Crew | ast.AccessUnit | ast.Crane,
  { outages, crews, accessUnits, cranes }: Lists,
): boolean {
  switch (fact.$type) {
    case 'Outage':
      return !once('outage', fact) || kept(outages, lowerOutage(reader, fact));
    case 'Crew':
      return !once('crew', fact) || kept(crews, lowerCrew(reader, fact));
    case 'AccessUnit':
      return !once('access unit', fact) || kept(accessUnits, lowerAccessUnit(reader, fact));
    case 'Crane':
      return !once('crane', fact) || kept(cranes, lowerCrane(reader, fact));
  }
}

function kept<T>(items: (T | undefined)[], item: T | undefined): boolean {
  items.push(item);
  return item !== undefined;
}

type LeadTime = Plant['leadTimes'][number];

function lowerLeadTime(reader: Reader, block: FactAccount, fact: ast.LeadTime): LeadTime | undefined {
  const item = wordsOf(fact, 'item') as LeadItem | undefined; // the grammar takes these words only
  if (item === undefined || !block.first(`lead time ${item}`, fact)) return undefined;
  const time = reader.quantity(fact, 'value', 'duration', `lead time ${item}`);
  return time && { item, time, origin: reader.origin(fact) };
}

function lowerCost(reader: Reader, block: FactAccount, fact: ast.Cost): Cost | undefined {
  const item = wordsOf(fact, 'item') as CostItem | undefined; // the grammar takes these words only
  if (item === undefined || !block.first(`cost ${item}`, fact)) return undefined;
  const amount = reader.quantityOf(fact, 'value', costDimensions[item], `cost ${item}`);
  // Its dimension is one of the three of Cost.
  return amount && { item, amount: amount as Cost['amount'], origin: reader.origin(fact) };
}

function lowerUnitTime(reader: Reader, block: FactAccount, fact: ast.UnitTime): UnitTime | undefined {
  const item = wordsOf(fact, 'item') as WorkItem | undefined; // the grammar takes these words only
  if (item === undefined || !block.first(`unit time ${item}`, fact)) return undefined;
  const time = reader.quantityOf(fact, 'value', ['duration', 'labour a length'], `unit time ${item}`);
  // Its dimension is one of the two of UnitTime.
  return time && { item, time: time as UnitTime['time'], origin: reader.origin(fact) };
}

type MoneyDimension = Extract<Dimension, `money${string}`>;
const costDimensions: Readonly<Record<CostItem, readonly [MoneyDimension, ...MoneyDimension[]]>> = {
  downtime: ['money a duration'],
  'trough repair': ['money', 'money a length'],
  liner: ['money a length', 'money'],
  screw: ['money', 'money a length'],
  reline: ['money', 'money a length'],
  'unplanned reline': ['money', 'money a length'],
  inspection: ['money'],
};

/** True where the name is new among its kind in this block. */
export function onceByName(
  reader: Reader,
): (
  what: string,
  node:
    | ast.Outage
    | ast.Crew
    | ast.AccessUnit
    | ast.Crane
    | ast.Break
    | ast.Point
    | ast.Layer
    | ast.Step
    | ast.Section
    | ast.Isolation
    | ast.Access
    | ast.LiftingPoint,
) => boolean {
  const seen = new Map<string, ReturnType<Reader['part']>>();
  return (what, node) => {
    const name = textOf(node, 'name');
    if (name === undefined) return true;
    const first = seen.get(`${what} ${name}`);
    if (!first) {
      seen.set(`${what} ${name}`, reader.part(node, 'name'));
      return true;
    }
    reader.problems.push({ kind: 'repeated name', origin: reader.part(node, 'name'), what, name, first });
    return false;
  };
}

function lowerOutage(reader: Reader, node: ast.Outage): Outage | undefined {
  const name = reader.name(node, 'name');
  const days = reader.days(node);
  if (!name || !days) return undefined;
  return {
    name: name.name,
    nameOrigin: name.origin,
    ...days,
    origin: reader.origin(node),
    ...stated({ title: node.title }),
  };
}

function lowerCrew(reader: Reader, node: ast.Crew): Crew | undefined {
  const name = reader.name(node, 'name');
  const size = reader.count(node, 'size', 'size of the crew');
  const rate = reader.quantity(node, 'rate', 'money a duration', `cost of crew ${name?.name ?? ''}`);
  if (!name || !size) return undefined;
  return {
    name: name.name,
    nameOrigin: name.origin,
    size,
    skills: (node.skills ?? []).map((skill) => skill.replace(/^"|"$/g, '')),
    origin: reader.origin(node),
    ...stated({ rate }),
  };
}

function lowerAccessUnit(reader: Reader, node: ast.AccessUnit): AccessUnit | undefined {
  const name = reader.name(node, 'name');
  const reach = reader.quantity(node, 'reach', 'length', 'reach');
  const limit = reader.quantity(node, 'limit', 'mass', 'platform load', someMass);
  const people =
    node.people === undefined ? undefined : reader.count(node, 'people', 'people on the platform');
  return (
    name && {
      name: name.name,
      nameOrigin: name.origin,
      origin: reader.origin(node),
      ...stated({ title: node.title, reach, limit, people }),
    }
  );
}

function lowerCrane(reader: Reader, node: ast.Crane): Crane | undefined {
  const name = reader.name(node, 'name');
  const chart = node.chart.map((point) => {
    const load = reader.quantity(point, 'load', 'mass', 'load of the chart', someMass);
    const radius = reader.quantity(point, 'radius', 'length', 'radius of the chart', someLength);
    return load && radius && { load, radius };
  });
  // A chart that has lost a point would promise what the crane does not lift.
  if (!name || chart.length === 0 || chart.includes(undefined)) return undefined;
  return {
    name: name.name,
    nameOrigin: name.origin,
    chart: present(chart),
    origin: reader.origin(node),
    ...stated({ title: node.title }),
  };
}

function lowerExpedited(
  reader: Reader,
  block: FactAccount,
  node: ast.ExpeditedLeadTime,
): Expedited | undefined {
  const item = wordsOf(node, 'item') as LeadItem | undefined; // the grammar takes these words only
  if (item === undefined || !block.first(`expedited lead time ${item}`, node)) return undefined;
  const time = reader.quantity(node, 'value', 'duration', `expedited lead time ${item}`);
  const price = reader.quantity(node, 'price', 'money', `price of the expedited ${item}`);
  return time && price && { item, time, price, origin: reader.origin(node) };
}

/** What is there, and what is on its way; a whole spiral is of a screw and not of a liner. */
function lowerStore(
  reader: Reader,
  block: FactAccount,
  fact: ast.ShelfStock | ast.ShelfPart | ast.OrderedStock | ast.OrderedPart,
  { shelf, spareScrews, spareParts, ordered, orderedParts, orderedScrews }: Lists,
): void {
  if (fact.$type === 'ShelfPart') spareParts.push(lowerSparePart(reader, block, fact));
  else if (fact.$type === 'OrderedPart') orderedParts.push(lowerOrderedPart(reader, block, fact));
  else if (fact.$type === 'OrderedStock') {
    if (isSpiral(fact)) orderedScrews.push(lowerOrderedScrew(reader, block, fact));
    else ordered.push(lowerOrdered(reader, block, fact));
  } else if (isSpiral(fact)) spareScrews.push(lowerSpareScrew(reader, block, fact));
  else shelf.push(lowerShelf(reader, block, fact));
}

function isSpiral(node: ast.ShelfStock | ast.OrderedStock): boolean {
  return node.item === 'spiral' || node.item === 'spirals';
}

function lowerSpareScrew(reader: Reader, block: FactAccount, node: ast.ShelfStock): SpareScrew | undefined {
  const screw = reader.use(node, 'liner');
  const count = reader.count(node, 'count', 'spirals on the shelf', 0);
  const counted = reader.day(node, 'date');
  if (!screw || !count || !counted) return undefined;
  const length = reader.quantity(node, 'length', 'length', 'length of the spiral', conveyorLength);
  const what = `on the shelf ${screw.name} spirals ${length?.text ?? ''} counted ${counted.day}`;
  if (!block.first(what, node)) return undefined;
  return { screw, count, counted, origin: reader.origin(node), ...stated({ length, note: node.note }) };
}

function lowerOrderedScrew(
  reader: Reader,
  block: FactAccount,
  node: ast.OrderedStock,
): OrderedScrew | undefined {
  const screw = reader.use(node, 'liner');
  const count = reader.count(node, 'count', 'spirals ordered');
  const ordered = reader.day(node, 'date');
  const arrives = reader.day(node, 'arrives');
  if (!screw || !count || !arrives) return undefined;
  const length = reader.quantity(node, 'length', 'length', 'length of the spiral', conveyorLength);
  const what = `ordered ${screw.name} spirals ${length?.text ?? ''} arrives ${arrives.day}`;
  if (!block.first(what, node)) return undefined;
  return {
    screw,
    count,
    arrives,
    origin: reader.origin(node),
    ...stated({ ordered, length, note: node.note }),
  };
}

/** A count of the same item on another day is another fact: the shelf has a history. */
function lowerShelf(reader: Reader, block: FactAccount, node: ast.ShelfStock): ShelfCount | undefined {
  const { item, liner, count, length } = lowerStock(reader, node, 'on the shelf', 0);
  const counted = reader.day(node, 'date');
  if (!item || !liner || !count || !counted) return undefined;
  const what = `on the shelf ${liner.name} ${item} ${length?.text ?? ''} counted ${counted.day}`;
  if (!block.first(what, node)) return undefined;
  return { item, liner, count, counted, origin: reader.origin(node), ...stated({ length, note: node.note }) };
}

function lowerSparePart(reader: Reader, block: FactAccount, node: ast.ShelfPart): SparePart | undefined {
  const spare = lowerPart(reader, node, 'on the shelf', 0);
  const counted = reader.day(node, 'date');
  return spare && counted && block.first(`${spare.named} counted ${counted.day}`, node)
    ? { ...spare.part, counted }
    : undefined;
}

function lowerOrderedPart(
  reader: Reader,
  block: FactAccount,
  node: ast.OrderedPart,
): OrderedPart | undefined {
  const spare = lowerPart(reader, node, 'ordered', 1);
  const ordered = reader.day(node, 'date');
  const arrives = reader.day(node, 'arrives');
  return spare && arrives && block.first(`${spare.named} arrives ${arrives.day}`, node)
    ? { ...spare.part, arrives, ...stated({ ordered }) }
    : undefined;
}

/** How many of which part, for which machine; `how`: where they are. */
function lowerPart(reader: Reader, node: ast.ShelfPart | ast.OrderedPart, how: string, least: 0 | 1) {
  const part = partNamed(node);
  const count = reader.count(node, 'count', `${part ?? 'part'} ${how}`, least);
  if (part === undefined || !count) return undefined;
  const conveyorUse = reader.use(node, 'conveyor');
  return {
    named: `${how} ${part} ${node.what ?? ''} ${conveyorUse?.name ?? ''}`,
    part: {
      part,
      count,
      origin: reader.origin(node),
      ...stated({ what: node.what, conveyorUse, note: node.note }),
    } satisfies Omit<SparePart, 'counted'>,
  };
}

/** Two orders of one item for one day are one: its number is mended, not added to. */
function lowerOrdered(reader: Reader, block: FactAccount, node: ast.OrderedStock): OrderedStock | undefined {
  const { item, liner, count, length } = lowerStock(reader, node, 'ordered', 1);
  const ordered = reader.day(node, 'date');
  const arrives = reader.day(node, 'arrives');
  if (!item || !liner || !count || !arrives) return undefined;
  const what = `ordered ${liner.name} ${item} ${length?.text ?? ''} arrives ${arrives.day}`;
  if (!block.first(what, node)) return undefined;
  return {
    item,
    liner,
    count,
    arrives,
    origin: reader.origin(node),
    ...stated({ length, ordered, note: node.note }),
  };
}

/** How many of what, each undefined where it cannot be read. `how`: where they are, as a count in doubt is told with it. */
function lowerStock(reader: Reader, node: ast.ShelfStock | ast.OrderedStock, how: string, least: 0 | 1) {
  const word = wordsOf(node, 'item');
  const item = word === undefined ? undefined : several[word];
  const things = item ?? 'items';
  return {
    item,
    liner: reader.use(node, 'liner'),
    count: reader.count(node, 'count', `${things} ${how}`, least),
    length: reader.quantity(node, 'length', 'length', `length of the ${things}`, panelLength),
  };
}

/** By the word written: one of a thing is told in the singular. */
const several: Readonly<Record<string, ShelfItem>> = {
  panel: 'panels',
  'panel length': 'panels',
  panels: 'panels',
  'stock length': 'stock lengths',
  'stock lengths': 'stock lengths',
  offcut: 'offcuts',
  offcuts: 'offcuts',
  fixing: 'fixings',
  fixings: 'fixings',
};

const weekdays = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

function lowerShift(reader: Reader, node: ast.Shift): Shift | undefined {
  const from = reader.timeOfDay(node, 'from');
  const to = reader.timeOfDay(node, 'to');
  const days: number[] = [];
  for (const [index, word] of (node.days ?? []).entries()) {
    const day =
      word.length < 2 ? -1 : weekdays.findIndex((weekday) => weekday.startsWith(word.toLowerCase()));
    if (day >= 0) days.push(day + 1);
    else
      reader.problems.push({
        kind: 'unknown name',
        origin: reader.part(node, 'days', index),
        what: 'day of the week',
        name: word,
        known: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'],
      });
  }
  return (
    from && to && { from, to, days: [...new Set(days)].sort((a, b) => a - b), origin: reader.origin(node) }
  );
}
