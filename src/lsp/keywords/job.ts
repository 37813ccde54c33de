// Keywords of a job and of its order of work. Whatever an order says, isolation, permits and entry stay with the site's
// own procedures and its competent, licensed people.

import { word, type KeywordDocs } from './keyword-doc.js';

const locally = ' Site permits and local codes decide how.';

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
  JobScope: {
    reline: word(
      'What is relined: `all`, a run, some panels of a run, or between two chainages.',
      'reline ${1:all}',
    ),
    with: word('Another liner than the conveyor’s present one.', 'with ${1:TwoLayer12}'),
    'change screw': word('The screw is changed too.', 'change screw'),
    to: word('Another screw than the conveyor’s present one.', 'to ${1:Spiral400}'),
  },
  JobCrews: { crews: word('Crews of the plant that work on it.', 'crews ${1:Alpha}') },
  JobAccessUnits: {
    'access units': word('Access units of the plant that are available.', 'access units ${1:MP1}'),
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
    by: word('The crew that does it.', 'by ${1:Alpha}'),
    using: word('The access unit used.', 'using ${1:MP1}'),
    after: word('Steps, by their names, that must be done first.', 'after ${1:a}'),
    takes: word('How long it takes, where you know better than the unit times.', 'takes ${1:6} h'),
    ':': word('Names the step before it.'),
  },
  StepAction: {
    isolate: word(`Isolate and lock off every declared isolation point.${locally}`),
    'prove dead': word(`Prove that nothing can move or flow.${locally}`),
    'gas test': word(
      `Test for gas before entry, and again after breaks: material releases gas when disturbed.${locally}`,
    ),
    'covers off': word('Take covers off.', 'covers off ${1:all}'),
    'braces off': word('Take braces off.', 'braces off ${1:all}'),
    'hold-downs off': word('Take hold-down blocks off.', 'hold-downs off ${1:all}'),
    'restrain screw': word(
      'Restrain the spiral so that it cannot slide or spring before the drive plate is unbolted.',
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
    'bolt drive': word('Bolt the drive plate.'),
    'hold-downs on': word('Put hold-down blocks back.', 'hold-downs on ${1:all}'),
    'braces on': word('Put braces back.', 'braces on ${1:all}'),
    'covers on': word('Put covers and guards back.', 'covers on ${1:all}'),
    'remove isolation': word(`Remove locks once everybody is clear.${locally}`),
    'run empty': word('Run empty and listen; note the current.'),
    'run loaded': word('Run loaded; note the current.'),
  },
  Stretch: {
    all: word('The whole conveyor, or the whole scope of the job.'),
    run: word(
      'One run, by number from the tail (`run 2`) or by the break at its lower end (`run above Gate`).',
      'run ${1:1}',
    ),
    panels: word(
      'Some panels of a run, numbered from its tail end.',
      'panels ${1:2} to ${2:4} of run ${3:1}',
    ),
    panel: word('One panel of a run.', 'panel ${1:2} of run ${2:1}'),
    'of run': word('The run whose panels are meant.', 'of run ${1:1}'),
    from: word('Between two chainages.', 'from ${1:3.0} m to ${2:6.6} m'),
  },
  RunName: { above: word('The run whose lower end is at this break.', 'above ${1:Gate}') },
};
