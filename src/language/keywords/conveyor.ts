// Keywords of a conveyor and its parts. Chainage: along the trough axis from the inside face of the tail-end plate, in
// the direction of flow. Clock: viewed in the direction of flow, 12 at the top.

import { word, type KeywordDocs } from './keyword-doc.js';

const at =
  'Chainage: distance along the trough from the inside face of the tail-end plate, in the direction of flow.';

const drivenGate =
  'It moves only while it has its energy: it is shut before `isolate`, which then locks it, and opened after `remove isolation`. ' +
  'Without a word an isolation point of hydraulic or pneumatic kind is taken to be the gate’s.';

export const conveyorKeywords: KeywordDocs = {
  Conveyor: {
    conveyor: word(
      'One conveyor: what it is, then its parts by chainage.',
      'conveyor ${1:DG1} "${2:what it carries, from where to where}" {\n\tlength ${3:22.4 m}\n' +
        '\tincline ${4:24 deg}\n' +
        '\ttrough inside radius ${5:226 mm} side height ${6:260 mm} plate ${7:4 mm}\n' +
        '\tscrew ${8:Spiral400}\n\tliner ${9:TwoLayer12}\n' +
        '\tdrive at head power ${10:5.5 kW} speed ${11:18 rpm}\n\tpoint P1 at ${12:6.20 m} clock ${13:7:30}$0\n}',
    ),
  },
  PlantUse: {
    plant: word(
      'The plant it stands in. Needed only where the estate has more than one.',
      'plant ${1:Tarnholt}',
    ),
  },
  ConveyorLiner: {
    liner: word(
      'The liner fitted when the conveyor was commissioned, by the name of its specification. Where a stretch had another one from the beginning, ' +
        'a further line says so: `liner TwoLayer8 run above Gate`, `liner TwoLayer8 from 0 m to 4.8 m`. ' +
        'After a change of specification say so in a `reline`; what stood here stays.',
      'liner ${1:TwoLayer12}',
    ),
    from: word('Only from this chainage on.', 'from ${1:0} m to ${2:4.8} m'),
    run: word('Only in this run.', 'run ${1:2}'),
  },
  LinerUse: {
    liner: word(
      'The liner fitted, by the name of its specification. After a change of specification say so in a `reline`; what stood here stays.',
      'liner ${1:TwoLayer12}',
    ),
  },
  ScrewUse: { screw: word('The screw fitted, by the name of its specification.', 'screw ${1:Spiral400}') },
  ConveyorMeasure: {
    length: word('Length of the trough between the inside faces of its end plates.', 'length ${1:22.4} m'),
    incline: word(
      'Incline in the direction of flow; negative where it conveys downhill.',
      'incline ${1:24} deg',
    ),
    duty: word(
      'Running time per day or week, where it differs from the plant’s. ' +
        '`± 2 %` says that the hours are even; without a `±` they are taken as uneven as the meter shows.',
      'duty ${1:110} h/week ± ${2:15} %',
    ),
    'bulk density': word(
      'Bulk density of the material conveyed, for mass flow and power.',
      'bulk density ${1:900} kg/m3',
    ),
    fill: word('Share of the trough’s cross-section that is filled.', 'fill ${1:40} %'),
    capacity: word('Mass flow it has to carry.', 'capacity ${1:8} t/h'),
    'resistance factor': word(
      'λ of ISO 7119: progress resistance of the material, 2 to 4. No unit.',
      'resistance factor ${1:3}',
    ),
    'minimum plate': word(
      'Least thickness of the trough’s steel; below it the trough is to be patched. Half of the plate where nothing is said (judgement).',
      'minimum plate ${1:2} mm',
    ),
    'liner side height': word(
      'Straight side of the liner above the centre line, where it ends below the top of the trough: the steel above it is bare. ' +
        'As high as the trough where nothing is said.',
      'liner side height ${1:200} mm',
    ),
    risk: word(
      'Accepted chance of reaching the condemn limit before the reline, where it differs from the plant’s.',
      'risk ${1:5} %',
    ),
    'risk of contact': word(
      'Accepted chance that the screw touches steel before the reline, where it differs from the plant’s.',
      'risk of contact ${1:0.5} %',
    ),
    '±': word('A tolerance or spread.'),
    '+/-': word('A tolerance or spread.'),
  },
  Clearance: {
    clearance: word(
      'Band in which the radial clearance between screw and liner must lie. The screw of a shaftless conveyor rests on the liner; this is the room above.',
      'clearance ${1:3} mm to ${2:12} mm',
    ),
  },
  Conveys: {
    conveys: word(
      'What it carries, in words: of what rots, of wood, lime, cement and ash the pack says what to mind.',
      'conveys "${1:digestate cake}"',
    ),
  },
  TroughMaterial: {
    trough: word('What the trough is made of, on a line of its own.', 'trough material ${1:S235}'),
    material: word('As behind the plate of the trough.', 'material ${1:S235}'),
  },
  GivesOff: {
    'gives off': word(
      'What comes off the material while people are at it, each in quotes: the cautions and the gas test of the pack name it, ' +
        'beside what comes off the material that `conveys` names.',
      'gives off "${1:carbon monoxide}", "${2:wood dust}"',
    ),
  },
  Trough: {
    trough: word(
      'Cross-section of the trough: inside radius of the steel, straight side above the centre line, plate thickness.',
      'trough inside radius ${1:226} mm side height ${2:260} mm plate ${3:4} mm',
    ),
    material: word(
      'What the trough is made of: the designation (`S235`, `"1.4301"`, `"316L"`) or the kind (`carbon`, `galvanised`, `stainless`). ' +
        'A liner grows against its steel, so joint gaps, bolt spacing and closing errors are reckoned with it, ' +
        'carbon steel where nothing is said; ' +
        'work pack and report name it for the welder.',
      'material ${1:S235}',
    ),
    'inside radius': word('Inside radius of the steel trough, without liner.', 'inside radius ${1:226} mm'),
    'side height': word(
      'Height of the straight side above the centre of the radius.',
      'side height ${1:260} mm',
    ),
    plate: word('Thickness of the trough plate.', 'plate ${1:4} mm'),
  },
  Drive: {
    'drive at': word(
      'The end at which the screw is driven. A drive at the discharge pulls and stretches the spiral; one at the inlet pushes, shortens and lifts it.',
      'drive at ${1|head,tail|} power ${2:5.5} kW speed ${3:18} rpm',
    ),
    head: word('The discharge end, at the full length.'),
    tail: word('The inlet end, at chainage 0.'),
    power: word('Rated motor power.', 'power ${1:5.5} kW'),
    speed: word('Speed of the screw.', 'speed ${1:18} rpm'),
  },
  Rotation: {
    rotation: word(
      'Sense of rotation seen in the direction of flow. It must agree with the hand.',
      'rotation ${1|clockwise,counter-clockwise|}',
    ),
    clockwise: word('Clockwise, seen in the direction of flow; heaps material between 6 and 9 o’clock.'),
    'counter-clockwise': word(
      'Counter-clockwise, seen in the direction of flow; heaps material between 3 and 6 o’clock.',
    ),
  },
  WornSector: {
    'worn sector': word(
      'Where the liner is seen to wear, as clock positions in the direction of flow. Observed, never inferred.',
      'worn sector ${1:6:00} to ${2:9:00}',
    ),
  },
  Commissioned: {
    commissioned: word(
      'First day in service and the hour meter on that day; the first liner’s hours count from here.',
      'commissioned ${1:2023-01-10} meter ${2:0} h',
    ),
    meter: word('Reading of the hour meter.', 'meter ${1:0} h'),
    tonnes: word('Reading of the tonnes counter.', 'tonnes ${1:0} t'),
  },
  WearBasis: {
    'wear by': word('What wear is counted against.', 'wear by ${1|hours,tonnes|}'),
    hours: word('Running hours from the hour meter.'),
    tonnes: word('Tonnes conveyed, where the records state them.'),
  },
  ConfinedSpace: {
    'confined space': word(
      'The trough or its surroundings are a confined space. Work packs then carry gas tests and the usual cautions; site permits and competent persons decide.',
    ),
  },
  Section: {
    section: word(
      'One section of trough, from the tail on; sections are flanged together and add up to the length.',
      'section ${1:S1} ${2:4.8} m',
    ),
  },
  Break: {
    break: word(
      'A place where the liner is interrupted by design. Runs lie between breaks, and a run is closed at a break: it takes up the length error.',
      'break ${1:Gate} at ${2:12.4} m to ${3:12.9} m ${4|slide gate,inlet,discharge,end plate,joint ring|} allowance ${5:12} mm',
    ),
    inlet: word('An inlet opening.'),
    'slide gate': word('A slide gate.'),
    'driven by hand': word('The gate moves by hand, whether the machine is isolated or not.'),
    'driven by electricity': word(`The gate has a motor of its own. ${drivenGate}`),
    'driven by hydraulics': word(`The gate has a hydraulic cylinder. ${drivenGate}`),
    'driven by air': word(`The gate has an air cylinder. ${drivenGate}`),
    'by hand': word('The gate moves by hand, whether the machine is isolated or not.'),
    'by electricity': word(`The gate has a motor of its own. ${drivenGate}`),
    'by hydraulics': word(`The gate has a hydraulic cylinder. ${drivenGate}`),
    'by air': word(`The gate has an air cylinder. ${drivenGate}`),
    discharge: word('A discharge opening.'),
    'end plate': word(
      'An end plate. Without an allowance it is a firm end. The two end plates are there even if you do not write them.',
    ),
    'joint ring': word('A joint ring between trough sections.'),
    'no liner': word('A stretch that is never lined, such as a drain or a screen: its steel is always bare.'),
    allowance: word('Accumulated length error that it can take.', 'allowance ${1:12} mm'),
    at: word(at, 'at ${1:12.4} m'),
  },
  Placement: {
    at: word(at, 'at ${1:9.5} m'),
    every: word(
      'Repeats the part at a regular step between two chainages, both inclusive.',
      'every ${1:1.5} m from ${2:2.0} m to ${3:21.5} m',
    ),
    from: word('First chainage.'),
    to: word('Last chainage.'),
    and: word('One more of it there: `at 5 m, 8 m and 11 m`.'),
  },
  HoldDown: {
    'hold-down': word(
      'Hold-down blocks keep the spiral from climbing. They come off before stripping and go back last.',
      'hold-down every ${1:1.5} m from ${2:2.0} m to ${3:21.5} m both sides',
    ),
    'both sides': word('A block on each side.'),
    'left side': word('On the left, looking in the direction of flow.'),
    'right side': word('On the right, looking in the direction of flow.'),
  },
  Brace: {
    brace: word('A brace across the trough.', 'brace every ${1:2.4} m from ${2:1.2} m to ${3:21.6} m'),
  },
  Cover: {
    cover: word(
      'A cover, or a row of covers.',
      'cover every ${1:1.2} m from ${2:0} m to ${3:22.4} m mass ${4:18} kg',
    ),
    mass: word('Mass of one cover, for the lift table.', 'mass ${1:18} kg'),
  },
  Access: {
    access: word(
      'How a stretch is reached. A stretch without access cannot be worked.',
      'access ${1:A1} at ${2:0} m to ${3:6} m ${4|ground,stairs,platform,mobile platform,scaffold|}',
    ),
    ground: word('Reached from the ground.'),
    stairs: word('Stairs, or a walkway with steps, beside the trough.'),
    platform: word('A fixed platform.'),
    'mobile platform': word('Needs an access unit of the plant.'),
    scaffold: word('Needs a scaffold.'),
    height: word('Working height above ground.', 'height ${1:4.5} m'),
    at: word(at),
  },
  Isolation: {
    isolation: word(
      'A point at which energy is isolated and locked. The work pack lists all of them; the lock-off itself follows the site’s own procedure.',
      'isolation ${1:Q1} "${2:local isolator}" ${3|electrical,mechanical,hydraulic,pneumatic,material,gravity|}',
    ),
    electrical: word('Electrical supply.'),
    mechanical: word('A mechanical lock, pin or disconnected drive.'),
    hydraulic: word('Hydraulic pressure.'),
    pneumatic: word('Compressed air.'),
    material: word('Material that can run in: a gate or slide.'),
    gravity: word('Something that can fall or slide, such as the spiral on an incline.'),
    at: word(at),
  },
  Hatch: {
    hatch: word(
      'An opening to look in or reach in. Where a trough has hatches and no covers, panels go in through them.',
      'hatch ${1:H1} at ${2:9.0} m to ${3:9.6} m width ${4:450} mm',
    ),
    width: word('Clear width across the trough.', 'width ${1:450} mm'),
  },
  Rest: {
    'rest at': word(
      'A stop across the trough that panels rest on when they are fitted upward from it.',
      'rest at ${1:1.5} m',
    ),
  },
  Hopper: {
    hopper: word(
      'What stands open over the screw and holds material above it. Pack and sheet name it where somebody could be below: it is ' +
        'emptied, or held off, before anybody goes in. Where it opens the trough so that no liner lies there, that is a `break … inlet`.',
      'hopper at ${1:0.4} m to ${2:2.2} m volume ${3:2.4} m3',
    ),
    volume: word(
      'How much it holds; with `bulk density` the pack says how heavy that is.',
      'volume ${1:2.4} m3',
    ),
    at: word(at),
    to: word('Its other end.', 'to ${1:2.2} m'),
  },
  Drain: {
    drain: word(
      'Where what is wet runs out of the trough, by its bung, plug or valve: opened once the machine is isolated, shut before it runs.',
      'drain at ${1:0.1} m "${2:bung, two inch}"',
    ),
    at: word(at),
    to: word('Its other end.', 'to ${1:0.4} m'),
  },
  Safeguard: {
    'emergency stop': word(
      'An emergency stop. The sheet asks to look at each safeguard that is declared, the pack to have each tried before the machine is handed back.',
      'emergency stop at ${1|tail,head,drive|}',
    ),
    'pull cord': word('A pull cord along the machine.', 'pull cord from ${1:0} m to ${2:22.4} m both sides'),
    interlock: word(
      'The interlock switch of a hatch, a cover or a guard: the machine stops when that is opened.',
      'interlock at ${1:H1}',
    ),
    'interlock switch': word('The same as `interlock`.', 'interlock at ${1:H1}'),
    'zero-speed sensor': word(
      'Sees whether the screw turns: the drive stops when it does not.',
      'zero-speed sensor at tail',
    ),
    'level probe': word('Stops what feeds when the trough is full there.', 'level probe at ${1:Inlet}'),
    'blockage switch': word(
      'Stops the screw when nothing leaves it any more.',
      'blockage switch at ${1:Discharge}',
    ),
    guard: word('A guard of the drive, a shaft or an opening.', 'guard at ${1|drive,tail,head|}'),
    'both sides': word('On each side of the trough.'),
    'left side': word('On the left, looking in the direction of flow.'),
    'right side': word('On the right, looking in the direction of flow.'),
    at: word(
      'Where: a part of the conveyor by its name, an end (`tail`, `head`, `drive`) or a chainage; several with `and`.',
    ),
    and: word('One more of it there.'),
    from: word('All along a stretch, from the tail.', 'from ${1:0} m to ${2:22.4} m'),
    every: word('One in every such length.', 'every ${1:8} m from ${2:1} m to ${3:21.5} m'),
  },
  Post: {
    tail: word('At the tail end.'),
    head: word('At the head end.'),
    drive: word('At the end where the drive is.'),
  },
  LiftingPoint: {
    'lifting point': word(
      'A place to lift from, with the limit on its plate.',
      'lifting point ${1:L1} at ${2:11} m limit ${3:500} kg',
    ),
    limit: word('Working load limit.', 'limit ${1:500} kg'),
    at: word(at),
  },
  Point: {
    point: word(
      'An inspection point: a chainage and a clock position that are read again and again. ' +
        'A row is numbered: `point P every 2 m from 2 m to 20 m clock 7:30` makes P1, P2, …',
      'point ${1:P1} at ${2:6.20} m clock ${3:7:30}',
    ),
    clock: word(
      'Clock position, viewed in the direction of flow, 12 at the top. Half an hour is 15°.',
      'clock ${1:7:30}',
    ),
  },
};
