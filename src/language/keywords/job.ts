// Keywords of a job and of its order of work. Whatever an order says, isolation, permits and entry stay with the site's
// own procedures and its competent, licensed people.

import { word, type KeywordDocs } from './keyword-doc.js';

const locally = ' Site permits and local codes decide how.';

const run = word(
  'One run, by number from the tail (`run 2`) or by the breaks at its ends (`run above Gate`, `run between Inlet and Gate`).',
  'run ${1:1}',
);

const panelStretch = {
  panels: word('Some panels of a run, numbered from its tail end.', 'panels ${1:2} to ${2:4} of run ${3:1}'),
  panel: word('One panel of a run.', 'panel ${1:2} of run ${2:1}'),
  'of run': word('The run whose panels are meant.', 'of run ${1:1}'),
  from: word('Between two chainages.', 'from ${1:3.0} m to ${2:6.6} m'),
};

export const jobKeywords: KeywordDocs = {
  Job: {
    job: word(
      'Work to be done: what, when, by whom. Without an `order` the planner proposes one.',
      'job ${1:J1} "${2:what is done}" {\n\tconveyor ${3:DG1}\n\toutage ${4:Spring27}\n\treline ${5:all}\n\tcrews ${6:Alpha}$0\n}',
    ),
  },
  JobConveyor: { conveyor: word('The conveyor worked on.', 'conveyor ${1:DG1}') },
  JobWindow: {
    outage: word('The planned outage of the plant in which the work is done.', 'outage ${1:Spring27}'),
    window: word(
      'A window of your own, first and last day inclusive.',
      'window ${1:2027-04-12} to ${2:2027-04-23}',
    ),
  },
  JobPart: {
    'part of': word(
      'This job shares isolation and space with another job on the same conveyor, and is done as part of it.',
      'part of ${1:J1}',
    ),
  },
  JobScope: {
    reline: word(
      'What is relined: `all`, a run, some panels of a run, or between two chainages.',
      'reline ${1:all}',
    ),
    with: word('The liner that goes in. Without it the same again as lies there.', 'with ${1:TwoLayer12}'),
    'change screw': word(
      'The screw is changed too. Unless it says otherwise, the old one is cut with a flame and the new one is welded.',
      'change screw',
    ),
    'welded joints': word('The new pieces are welded together: hot work over the liner.'),
    'bolted joints': word('The new pieces are bolted together: no hot work.'),
    'cut hot': word('The old spiral is cut with a flame or a grinder: hot work over the liner.'),
    'cut cold': word('The old spiral is sawn or sheared without heat or sparks.'),
    to: word('Another screw than the conveyor’s present one.', 'to ${1:Spiral400}'),
  },
  JobCrews: { crews: word('Crews of the plant that work on it.', 'crews ${1:Alpha}') },
  JobAccessUnits: {
    'access units': word('Access units of the plant that are available.', 'access units ${1:MP1}'),
  },
  JobCrane: {
    crane: word(
      'Where a crane of the plant stands: its slewing centre beside a chainage, so far to the side. Write it again for another stand.',
      'crane ${1:C1} at ${2:14} m offset ${3:6} m',
    ),
    at: word('Chainage beside which the slewing centre stands.', 'at ${1:14} m'),
    offset: word('Distance sideways from the middle of the trough to the slewing centre.', 'offset ${1:6} m'),
  },
  JobMeasure: {
    'lift limit': word('Heaviest single crane lift allowed.', 'lift limit ${1:500} kg'),
    'team lift': word(
      'Heaviest load for the team by hand, before the usual reductions.',
      'team lift ${1:50} kg',
    ),
    'sling angle': word(
      'Angle of each sling leg from the vertical; 45° is the usual limit.',
      'sling angle ${1:30} deg',
    ),
    'saw kerf': word('Width of a saw cut.', 'saw kerf ${1:4} mm'),
    'minimum closing piece': word('Shortest closing panel you accept.', 'minimum closing piece ${1:250} mm'),
    'measuring tolerance': word(
      'How well a run is measured on site, plus or minus.',
      'measuring tolerance ${1:3} mm',
    ),
    'joint clearance': word(
      'How far joints stay from trough flanges and hold-down bolts.',
      'joint clearance ${1:50} mm',
    ),
  },
  JobStock: {
    stock: word('Sheet on hand or on order.', 'stock ${1:3000} mm ${2:20} pieces'),
    pieces: word('How many.'),
    piece: word('Just one.'),
  },
  Tool: {
    tool: word('One tool to bring, a line for each.', 'tool "${1:torque wrench}"'),
    pieces: word('How many.'),
    piece: word('Just one.'),
  },
  Spare: {
    spare: word(
      'How many more than the work needs are taken along, left out a usual share; or a part to have at hand, in quotes: `spare 1 "gate wiper"`.',
      'spare ${1:2} ${2|panels,fixings|}',
    ),
    panels: word('Enough sheets for so many more panels.'),
    panel: word('Enough sheet for one more panel.'),
    fixing: word('One bolt of the liner with nut and washers.'),
    fixings: word('Bolts of the liner with nuts and washers.'),
  },
  HeldUp: {
    'spiral held up by': word(
      'How the spiral is kept up while panels pass under it. ' +
        'The load on each support is worked out from the spiral’s mass. A competent person chooses the gear.',
      'spiral held up by "${1:chain hoist on a beam across the trough}" rated ${2:500} kg every ${3:3} m',
    ),
    rated: word('Rated load of each support, as on its plate.', 'rated ${1:500} kg'),
    every: word('From one support to the next, along the trough.', 'every ${1:3} m'),
  },
  JobOffcut: {
    offcut: word('An offcut on hand.', 'offcut ${1:640} mm ${2:1} piece'),
    pieces: word('How many.'),
    piece: word('Just one.'),
  },
  Order: {
    order: word(
      'The order of work, step by step. It is checked against what can be built; left out, the planner proposes one.',
      'order {\n\tisolate\n\tprove dead\n\t$0\n\tremove isolation\n\trun empty\n\trun loaded\n}',
    ),
  },
  Step: {
    'starting at': word(
      'The end of the run from which panels go in. One run, one direction.',
      'starting at ${1|head,tail|}',
    ),
    head: word('From the top down, each panel butted against the one above.'),
    tail: word('From the lower end up; the lower end must hold the panels.'),
    'cut to fit': word(
      'The closing panel is not cut beforehand: the last gap is measured on site and the panel is cut to it, short by the measuring error.',
    ),
    by: word('The crew that does it.', 'by ${1:Alpha}'),
    'attended by': word(
      'The crew that stands by outside, in touch with those inside, and does nothing else meanwhile.',
      'attended by ${1:Bravo}',
    ),
    using: word('The access unit used.', 'using ${1:MP1}'),
    with: word(
      'How many people are on the access unit, or inside the trough, at once; whoever is left of the crew stays outside.',
      'with ${1:2} people',
    ),
    people: word('How many people are on the access unit, or inside the trough, at once.'),
    person: word('One at a time.'),
    after: word('Steps, by their names, that must be done first.', 'after ${1:a}'),
    takes: word('How long it takes, where you know better than the unit times.', 'takes ${1:6} h'),
    every: word(`How often a gas test is repeated while people are inside.${locally}`, 'every ${1:2} h'),
    dries: word(
      `How long the place must dry once the step has ended, by the clock: nights count. Nobody works there before.${locally}`,
      'dries ${1:4} h',
    ),
    cools: word(
      `How long the place must cool once the step has ended, by the clock: nights count. Nobody works there before.${locally}`,
      'cools ${1:30} min',
    ),
    'hot work': word(
      `The step welds, cuts with a flame or grinds, and this is how the liner is kept from burning. Take \`to be confirmed\` away once it is sure.${locally}`,
      'hot work shielded wet fire watch ${1:60} min',
    ),
    shielded: word('Liner within reach of sparks is covered by sheet steel or blankets.'),
    wet: word('Liner and shields are kept wet.'),
    'fire watch': word(
      'How long the place is watched once the hot work has ended; a `fire watch` step does it.',
      'fire watch ${1:60} min',
    ),
    'to be confirmed': word('Demanded, but nobody has said yet that it will be so.'),
    'cold work': word('Done without flame, arc or sparks: sawn, sheared, bolted or bonded.'),
    ':': word('Names the step before it.'),
  },
  StepAction: {
    empty: word(
      'Run the trough empty, while there is still power: material left in it is load, gas and weight.',
    ),
    pause: word(
      `Everybody comes out: a meal, the end of a shift. An enclosed trough is tested again before anybody goes back.${locally}`,
      'pause takes ${1:30} min',
    ),
    'other work': word(
      'What no other step says, in your own words. With a stretch people are in the trough there, and all holds that holds for cleaning: ' +
        'isolation, gates above, tested air, somebody outside. Without one it is done beside the machine.',
      'other work from ${1:14} m to ${2:24.4} m by ${3:Alpha} takes ${4:3} h "${5:lift the spiral clear of the liner}"',
    ),
    'join screw': word(
      'Weld or bolt the pieces of the new spiral in this stretch together. Where an order has such steps, `insert screw` only lays the pieces in.',
      'join screw from ${1:0} m to ${2:9} m hot work shielded wet fire watch 60 min',
    ),
    'fire watch': word(
      `Watch the place of hot work, and what lies below it, until nothing can smoulder.${locally}`,
      'fire watch ${1:all} takes ${2:60} min',
    ),
    isolate: word(`Isolate and lock off every declared isolation point.${locally}`),
    'prove dead': word(`Prove that nothing can move or flow.${locally}`),
    'gas test': word(
      `Test for gas before entry, and again after breaks: material releases gas when disturbed.${locally}`,
    ),
    'covers off': word('Take covers off.', 'covers off ${1:all}'),
    'braces off': word('Take braces off.', 'braces off ${1:all}'),
    'hold-downs off': word('Take hold-down blocks off.', 'hold-downs off ${1:all}'),
    'restrain screw': word(
      'Restrain the spiral so that it cannot slide or spring before the drive plate is unbolted; `release screw` takes the restraint off again.',
    ),
    'unbolt drive': word('Unbolt the drive plate. The spiral must be restrained.'),
    'remove screw': word('Take the screw out, in pieces within the lift limit.'),
    strip: word('Take the old liner out. Any order within a run.', 'strip ${1:run 1}'),
    clean: word('Clean and inspect the trough.', 'clean ${1:run 1}'),
    patch: word('Patch the trough. Hot work away from fitted liner.', 'patch ${1:run 1}'),
    fit: word(
      'Fit panels, from one end of the run to the other.',
      'fit ${1:run 1} starting at ${2|head,tail|}',
    ),
    'insert screw': word('Put the screw in, after the liner under it is fitted.'),
    'bolt drive': word('Bolt the drive plate. The spiral stays restrained until `release screw`.'),
    'release screw': word(
      'Take the restraint off the spiral again, once the drive plate is bolted and before the machine is handed back.',
    ),
    'hold-downs on': word('Put hold-down blocks back.', 'hold-downs on ${1:all}'),
    'braces on': word('Put braces back.', 'braces on ${1:all}'),
    'clear up': word(
      'Tools, old liner, offcuts and swarf out of the trough and off the platforms, counted. Covers go on after it.',
      'clear up ${1:run 1}',
    ),
    'covers on': word('Put covers and guards back.', 'covers on ${1:all}'),
    'remove isolation': word(`Remove locks once everybody is clear.${locally}`),
    'run empty': word('Run empty and listen; note the current.'),
    'run loaded': word('Run loaded; note the current.'),
  },
  GateAction: {
    'gate shut': word(
      'Shut the slide gate and pin it: it stands as a barrier between those above and those below.',
      'gate shut ${1:Gate}',
    ),
    'gate open': word('Take the pin out: the gate is no barrier any more.', 'gate open ${1:Gate}'),
    'gate off': word('Strip the slide gate.', 'gate off ${1:Gate}'),
    'gate on': word('Refit the slide gate.', 'gate on ${1:Gate}'),
  },
  PanelStretch: {
    ...panelStretch,
    and: word('Another panel of the run: `panels 1, 9 and 10 of run 3`.'),
  },
  Stretches: {
    all: word('The whole conveyor, or the whole scope of the job.'),
    run,
  },
  RunName: {
    above: word('The run whose lower end is at this break.', 'above ${1:Gate}'),
    below: word('The run whose upper end is at this break.', 'below ${1:Gate}'),
    between: word('The run between two breaks.', 'between ${1:Inlet} and ${2:Gate}'),
    and: word('The break at its other end.'),
  },
};
