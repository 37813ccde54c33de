// What the number at a spot of the text measures: its dimension, so that the right units are offered and the value can be
// shown in others. By grammar rule and property; for facts that are told apart by their key, by the key.

import type { AstNode } from 'langium';
import type { Dimension } from '../domain/units/dimension.js';

const byKey: Readonly<Record<string, Dimension>> = {
  duty: 'duty',
  risk: 'ratio',
  'risk of contact': 'ratio',
  'gas test interval': 'duration',
  'fitting temperature': 'temperature',
  'service temperature': 'temperature',
  'condemn at': 'length',
  thickness: 'length',
  'thickness tolerance': 'length',
  'layer tolerance': 'ratio',
  'expected life': 'duration',
  density: 'density',
  expansion: 'expansion',
  modulus: 'stress',
  'bolt length': 'length',
  'tightening torque': 'torque',
  'maximum temperature': 'temperature',
  'sound velocity': 'velocity',
  'outside diameter': 'length',
  pitch: 'length',
  'condemn flight at': 'length',
  length: 'length',
  incline: 'angle',
  'bulk density': 'density',
  fill: 'ratio',
  capacity: 'mass flow',
  'resistance factor': 'ratio',
  'minimum plate': 'length',
  'liner side height': 'length',
  'lift limit': 'mass',
  'team lift': 'mass',
  'sling angle': 'angle',
  'saw kerf': 'length',
  'minimum closing piece': 'length',
  'measuring tolerance': 'length',
  'joint clearance': 'length',
};

const byItem: Readonly<Record<string, Dimension>> = {
  downtime: 'money a duration',
  'trough repair': 'money',
  liner: 'money a length',
  screw: 'money',
  reline: 'money',
  'unplanned reline': 'money',
  inspection: 'money',
};

const perMetre = new Set(['strip', 'clean', 'fit']);

/** Where something was seen or done: a chainage, or a stretch from it. */
const place = { at: 'length', to: 'length' } as const;

const byProperty: Readonly<Record<string, Readonly<Record<string, Dimension>>>> = {
  Crew: { rate: 'money a duration' },
  AccessUnit: { reach: 'length', limit: 'mass' },
  ChartPoint: { load: 'mass', radius: 'length' },
  LeadTime: { value: 'duration' },
  ExpeditedLeadTime: { value: 'duration', price: 'money' },
  ShelfStock: { length: 'length' },
  OrderedStock: { length: 'length' },
  Drill: { size: 'length', depth: 'length' },
  HeldUp: { rating: 'mass', spacing: 'length' },
  Layer: { thickness: 'length' },
  PanelLength: { lengths: 'length', tolerance: 'length' },
  StockLength: { lengths: 'length' },
  Bolt: { pitch: 'length', countersink: 'length' },
  Joint: { gap: 'length' },
  ScrewKind: { shaft: 'length' },
  ScrewPitch: { value: 'length', from: 'length', to: 'length' },
  Flight: { width: 'length', thickness: 'length' },
  InnerFlight: { outside: 'length', inside: 'length', pitch: 'length', thickness: 'length' },
  Clearance: { from: 'length', to: 'length' },
  Trough: { radius: 'length', side: 'length', plate: 'length' },
  Drive: { power: 'power', speed: 'rotation' },
  Commissioned: { meter: 'duration', tonnes: 'mass' },
  Section: { length: 'length' },
  Break: { from: 'length', to: 'length', allowance: 'length' },
  HoldDown: { from: 'length', to: 'length', more: 'length', step: 'length' },
  Brace: { from: 'length', to: 'length', more: 'length', step: 'length' },
  Cover: { from: 'length', to: 'length', more: 'length', step: 'length', mass: 'mass' },
  Access: { from: 'length', to: 'length', height: 'length' },
  Isolation: { at: 'length' },
  Hatch: { from: 'length', to: 'length', more: 'length', step: 'length', width: 'length' },
  Rest: { at: 'length' },
  Hopper: { from: 'length', to: 'length', volume: 'volume' },
  Drain: { from: 'length', to: 'length' },
  Safeguard: { from: 'length', to: 'length', step: 'length' },
  Post: { from: 'length', to: 'length' },
  LiftingPoint: { at: 'length', limit: 'mass' },
  Point: { from: 'length', to: 'length', more: 'length', step: 'length' },
  Inspection: { meter: 'duration', tonnes: 'mass' },
  Reading: { chainage: 'length', from: 'length', to: 'length', thickness: 'length', error: 'length' },
  Gauge: { error: 'length' },
  ConveyorLiner: { from: 'length', to: 'length' },
  Correction: {
    chainage: 'length',
    from: 'length',
    ...place,
    offset: 'length',
    gap: 'length',
    speed: 'rotation',
    amps: 'current',
    thickness: 'length',
    error: 'length',
    depth: 'length',
    diameter: 'length',
    empty: 'current',
    loaded: 'current',
    hours: 'duration',
  },
  PlateReading: { ...place, thickness: 'length', error: 'length' },
  Patch: { from: 'length', to: 'length', thickness: 'length' },
  Condition: { size: 'length', ...place, temperature: 'temperature', measured: 'temperature' },
  HoldDownGap: { ...place, gap: 'length' },
  FlightReading: { ...place, depth: 'length', diameter: 'length' },
  WornWidth: place,
  MeasuredSpeed: { speed: 'rotation' },
  MotorCurrent: { empty: 'current', loaded: 'current' },
  Finding: place,
  Serviced: place,
  WorkRow: place,
  Reline: { meter: 'duration', tonnes: 'mass' },
  NewThickness: { thickness: 'length', error: 'length' },
  AsFitted: { thickness: 'length', error: 'length' },
  PanelsFitted: { lengths: 'length' },
  NotLooked: place,
  MovedThickness: { chainage: 'length', thickness: 'length' },
  OldPanel: { chainage: 'length', thickness: 'length', error: 'length' },
  PanelThickness: { thickness: 'length', error: 'length' },
  Offcut: { length: 'length' },
  PanelsMoved: { meter: 'duration', tonnes: 'mass' },
  ScrewChange: { meter: 'duration', tonnes: 'mass' },
  ScrewScope: { from: 'length', to: 'length' },
  MeterChange: { old: 'duration', new: 'duration' },
  DriveChange: { power: 'power', speed: 'rotation' },
  DutyChange: { value: 'duty', speed: 'rotation' },
  JobStock: { length: 'length' },
  JobOffcut: { length: 'length' },
  JobCrane: { at: 'length', offset: 'length' },
  Step: { takes: 'duration', every: 'duration', watch: 'duration' },
  Stretch: { from: 'length', to: 'length' },
};

const fragments: Readonly<Record<string, Readonly<Record<string, Dimension>>>> = {
  Placement: { from: 'length', to: 'length', step: 'length' },
};

/** Dimensions a number may have there, the usual one first; none where it is a count, a date or a clock position. */
export function dimensionsAt(
  type: string,
  property: string,
  node?: Pick<AstNode, '$type'> & { key?: string; item?: string },
): readonly Dimension[] {
  if (type === 'Cost' && property === 'value')
    return node?.item ? [byItem[node.item] ?? 'money'] : ['money', 'money a duration', 'money a length'];
  if (type === 'UnitTime' && property === 'value') {
    if (node?.item === undefined) return ['duration', 'labour a length'];
    return perMetre.has(node.item) ? ['labour a length'] : ['duration'];
  }
  if (type === 'LinerMeasure' && node?.key === 'price') return ['money a length'];
  if (type === 'ScrewMeasure' && node?.key === 'price') return ['money'];
  const own = byProperty[type]?.[property] ?? fragments[type]?.[property];
  if (own) return [own];
  if (property === 'tolerance') {
    const nominal = node?.key ? byKey[node.key] : type === 'DutyChange' ? 'duty' : undefined;
    return nominal && nominal !== 'ratio' ? ['ratio', nominal] : ['ratio'];
  }
  const keyed = node?.key ? byKey[node.key] : undefined;
  return keyed && (property === 'value' || property === 'from' || property === 'to') ? [keyed] : [];
}
