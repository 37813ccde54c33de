// What a number can measure, and the one unit each is held in.
// Everything is converted at the door (parse.ts), computed in the base unit below, and formatted at the exit (format.ts).

export type Dimension =
  | 'length' // mm
  | 'angle' // deg
  | 'duration' // h
  | 'mass' // kg
  | 'temperature' // °C, a point on the scale
  | 'force' // N
  | 'power' // kW
  | 'rotation' // rpm, turns a minute
  | 'density' // kg/m³
  | 'volume' // m³
  | 'ratio' // 1, so 5 % is 0.05
  | 'mass flow' // t/h over calendar time or running time, as its field says
  | 'current' // A
  | 'money' // one unit of the currency named in the text (ISO 4217)
  | 'duty' // running hours a calendar day, h/d
  | 'expansion' // 1/K
  | 'stress' // MPa
  | 'torque' // N·m
  | 'velocity' // m/s
  | 'labour a length' // person-hours a metre, h/m
  | 'money a duration' // currency an hour
  | 'money a length'; // currency a metre

export const baseUnit: Readonly<Record<Dimension, string>> = {
  length: 'mm',
  angle: 'deg',
  duration: 'h',
  mass: 'kg',
  temperature: 'degC',
  force: 'N',
  power: 'kW',
  rotation: 'rpm',
  density: 'kg/m3',
  volume: 'm3',
  ratio: '1',
  'mass flow': 't/h',
  current: 'A',
  money: 'money',
  duty: 'h/d',
  expansion: '1/K',
  stress: 'MPa',
  torque: 'N·m',
  velocity: 'm/s',
  'labour a length': 'h/m',
  'money a duration': 'money/h',
  'money a length': 'money/m',
};
