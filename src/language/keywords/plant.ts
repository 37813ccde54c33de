// Keywords of a plant: what all its conveyors share.

import { word, type KeywordDocs } from './keyword-doc.js';

export const plantKeywords: KeywordDocs = {
  Plant: {
    plant: word(
      'A works and what its conveyors share: duty, outages, crews, access units, lead times, costs, accepted risk.',
      'plant ${1:Tarnholt} "${2:name for people}" {\n\tduty ${3:110} h/week\n\t$0\n}',
    ),
  },
  PlantMeasure: {
    duty: word(
      'Running time of conveyors that state none of their own, per day or week. ' +
        '`±` gives its spread, one standard deviation of the mean, which widens every forecast date; ' +
        'up to ± 10 % it also says that the hours are even, and the wear model takes them so.',
      'duty ${1:110} h/week ± ${2:15} %',
    ),
    risk: word(
      'Accepted chance that the condemn limit is reached before the reline. Dates in the report are chosen so that the chance stays below it.',
      'risk ${1:5} %',
    ),
    'risk of contact': word(
      'Accepted chance that the screw touches steel before the reline. Both this and `risk` must hold for an outage to be early enough.',
      'risk of contact ${1:0.5} %',
    ),
    'gas test interval': word(
      'How long a gas test counts before it has to be repeated. ' +
        'Site permits and the competent person decide; this only puts the repeat into the order of work.',
      'gas test interval ${1:2} h',
    ),
  },
  TemperatureRange: {
    'fitting temperature': word(
      'Temperature of the liner while it is fitted: one value, or a range. ' +
        'With the service temperature it gives the growth of the panels and what a gap or butt joint must take.',
      'fitting temperature ${1:5} degC to ${2:25} degC',
    ),
    'service temperature': word(
      'Temperature of the liner in service. PE1000 is meant for at most 80 °C.',
      'service temperature ${1:10} degC to ${2:45} degC',
    ),
  },
  Outage: {
    outage: word(
      'A planned stop, first and last day inclusive. Relines are planned into outages.',
      'outage ${1:Spring27} ${2:2027-04-12} to ${3:2027-04-23} "${4:what for}"',
    ),
  },
  Crew: {
    crew: word(
      'People who work together and are in one place at a time.',
      'crew ${1:Alpha} ${2:4} people skills ${3:fitting}',
    ),
    people: word('How many there are in the crew.'),
    person: word('A crew of one.'),
    skills: word('What the crew can do, as words of your own, separated by commas.', 'skills ${1:fitting}'),
    cost: word(
      'Cost of the whole crew an hour, in a currency by its three letters (ISO 4217).',
      'cost ${1:58} EUR/h',
    ),
  },
  Skill: Object.fromEntries(
    [
      'electrical',
      'mechanical',
      'hydraulic',
      'pneumatic',
      'crane',
      'scaffold',
      'patch',
      'clean',
      'fit',
      'strip',
      'isolate',
      'isolation',
      'hot work',
      'inspection',
      'gas test',
      'fire watch',
      'confined space',
    ].map((skill) => [skill, word('A skill of the crew.')]),
  ),
  AccessUnit: {
    'access unit': word(
      'Something movable that brings people to the conveyor: a mobile platform or a scaffold tower. It serves one stretch at a time.',
      'access unit ${1:MP1} "${2:mobile platform}" reach ${3:12} m',
    ),
    reach: word('Highest place it reaches above ground.', 'reach ${1:12} m'),
    'platform load': word(
      'Load it may carry, people and tools included, as on its plate.',
      'platform load ${1:230} kg for ${2:2} people',
    ),
    for: word('How many people its plate allows.', 'for ${1:2} people'),
    people: word('How many people its plate allows.'),
    person: word('A platform for one.'),
  },
  Crane: {
    crane: word(
      'A mobile crane that can be had, with points of its load chart. Between two points the smaller load counts.',
      'crane ${1:C1} "${2:mobile crane}" chart ${3:4000} kg at ${4:6} m, ${5:1800} kg at ${6:10} m',
    ),
    chart: word(
      'What it lifts at which radius, from the slewing centre to the hook, as its chart says for the set-up on site.',
      'chart ${1:4000} kg at ${2:6} m',
    ),
  },
  ChartPoint: { at: word('Radius from the slewing centre to the hook.', 'at ${1:6} m') },
  Shift: {
    shift: word(
      'Working hours of a day, and the weekdays they hold for.',
      'shift ${1:07:00} to ${2:17:00} on ${3:mon, tue, wed, thu, fri}',
    ),
    on: word(
      'Weekdays: mon, tue, wed, thu, fri, sat, sun. Left out: every day.',
      'on ${1:mon, tue, wed, thu, fri}',
    ),
  },
  LeadTime: {
    'lead time': word(
      'Time from order to delivery. The report counts it back from the outage to give the date to order by.',
      'lead time ${1|liner,screw,fixings|} ${2:10} weeks',
    ),
    liner: word('Lead time of liner panels.'),
    screw: word('Lead time of a screw.'),
    fixings: word('Lead time of bolts, hold-down blocks and braces.'),
  },
  ExpeditedLeadTime: {
    'expedited lead time': word(
      'A shorter lead time that can be had for a price. The report offers it where the usual lead time comes too late.',
      'expedited lead time ${1|liner,screw,fixings|} ${2:4} weeks price ${3:1800} EUR',
    ),
    liner: word('Liner panels, sooner.'),
    screw: word('A screw, sooner.'),
    fixings: word('Bolts, hold-down blocks and braces, sooner.'),
    price: word('What it costs on top of the usual price, an order.', 'price ${1:1800} EUR'),
  },
  Rescue: {
    'rescue contact': word(
      'Who is called, by role and means: radio channel, control room. No names of people.',
      'rescue contact "${1:control room, radio channel 1}"',
    ),
    'rescue means': word(
      'What people are fetched out with, and where it stands. A competent person judges whether it will do; outside services alone are no rescue.',
      'rescue means "${1:tripod and winch at the tail}"',
    ),
    'meeting point': word(
      'Where everybody gathers to be counted.',
      'meeting point "${1:gate of the south yard}"',
    ),
  },
  OrderedStock: {
    ordered: word(
      'What is bought and on its way, with the day it is promised for: report and pack do not ask to order it again, ' +
        'and an outage before that day does not have it. A count of the shelf on or after the day takes its place.',
      'ordered ${1:TwoLayer12} ${2:9} ${3|panels,stock lengths,fixings,spiral|} on ${4:2026-08-31} arrives ${5:2026-11-06}',
    ),
    panels: word('Whole panels, drilled and ready to fit.'),
    'stock lengths': word('Sheets bent to the trough but not cut.'),
    panel: word('One whole panel.'),
    'panel length': word('One panel of a length of its own.', 'panel length ${1:1200} mm'),
    'stock length': word('One such sheet.'),
    fixing: word('One bolt, with nut and washers.'),
    fixings: word('Bolts of this liner, with nuts and washers.'),
    spiral: word('A whole spiral, with the name of the screw before the number.'),
    spirals: word('Whole spirals, with the name of the screw before the number.'),
    length: word('Of each, where the liner is sold in several lengths.', 'length ${1:1200} mm'),
    on: word('The day it was ordered: a report of an earlier day does not know of it.', 'on ${1:2026-08-31}'),
    arrives: word('The day it is promised for.', 'arrives ${1:2026-11-06}'),
  },
  ShelfStock: {
    'on the shelf': word(
      'What lies in the store, with the day it was counted. ' +
        'The newest count up to the day of the report holds. ' +
        'A reline that the shelf can serve needs no lead time.',
      'on the shelf ${1:TwoLayer12} ${2:6} ${3|panels,stock lengths,fixings|} counted ${4:2026-10-20}',
    ),
    panels: word('Whole panels, drilled and ready to fit.'),
    panel: word('One whole panel.'),
    'panel length': word('One panel of a length of its own.', 'panel length ${1:1200} mm'),
    'stock length': word('One such sheet.'),
    fixing: word('One bolt, with nut and washers.'),
    offcut: word(
      'What was left of a sheet, of the length that follows: a closing piece is sawn from it.',
      'offcut length ${1:620} mm',
    ),
    offcuts: word('Several of one length.', 'offcuts length ${1:620} mm'),
    'stock lengths': word('Sheets bent to the trough but not cut: a closing piece is sawn from one.'),
    fixings: word('Bolts of this liner, with nuts and washers.'),
    spiral: word('A whole spare spiral, by the name of its screw: a change to it needs no lead time.'),
    spirals: word('Whole spare spirals, by the name of their screw.'),
    length: word(
      'Of each, where the liner is sold in several lengths; of a spiral: a length of one, which is no whole spiral.',
      'length ${1:1200} mm',
    ),
    counted: word('The day somebody counted.', 'counted ${1:2026-10-20}'),
  },
  ShelfPart: {
    'on the shelf': word(
      'Spare parts in the store: where something is open of such a part, report, sheet and pack say so. ' +
        'Which of it in quotes, the conveyor that it fits behind `for`.',
      'on the shelf ${1:1} ${2|tail bearing,thrust bearing,gearbox,motor,coupling,hold-down|} for ${3:DG1} counted ${4:2026-10-20}',
    ),
    for: word('The conveyor that it fits; left out, any.', 'for ${1:DG1}'),
    counted: word('The day somebody counted.', 'counted ${1:2026-10-20}'),
  },
  OrderedPart: {
    ordered: word(
      'Spare parts on their way: where something is open of such a part, report, sheet and pack say when they come. ' +
        'Which of it in quotes, the conveyor that it fits behind `for`.',
      'ordered ${1:1} ${2|gate,tail bearing,thrust bearing,gearbox,motor,hold-down|} for ${3:DG1} on ${4:2026-11-12} arrives ${5:2026-12-04}',
    ),
    for: word('The conveyor that it fits; left out, any.', 'for ${1:DG1}'),
    on: word('The day it was ordered.', 'on ${1:2026-11-12}'),
    arrives: word('The day it is promised for.', 'arrives ${1:2026-12-04}'),
  },
  Cost: {
    cost: word(
      'What something costs here; used to compare what could be done and to find the cheapest time to reline. Without costs the report gives risks only.',
      'cost ${1|reline,trough repair,liner,screw,unplanned reline,inspection|} ${2:18500} EUR',
    ),
    downtime: word('An hour of the conveyor standing still.', 'downtime ${1:400} EUR/h'),
    'trough repair': word(
      'Welding plates onto a trough that the screw has cut.',
      'trough repair ${1:18500} EUR',
    ),
    liner: word('Liner a metre.', 'liner ${1:95} EUR/m'),
    screw: word('A new screw.', 'screw ${1:14000} EUR'),
    reline: word('A planned reline, labour and access included.', 'reline ${1:9000} EUR'),
    'unplanned reline': word('A reline outside an outage.', 'unplanned reline ${1:21000} EUR'),
    inspection: word('One inspection, access included.', 'inspection ${1:350} EUR'),
  },
  Threshold: {
    threshold: word(
      'The number by which a rule judges the machines of this plant, where its own is a judgement or a practice that differs. ' +
        '`troughline explain` and the hover of a code say which rules have one, what it means and its usual value.',
      'threshold ${1:TL261} ${2:10} m "${3:why}"',
    ),
  },
  UnitTime: {
    'unit time': word(
      'Person-hours for one item, or for one metre, at this plant. Replaces the built-in estimate.',
      'unit time ${1|isolate,cover,brace,hold-down,strip,clean,fit,screw section,weld,prove,access move,crane move,gate,empty,gas test,clear up|} ${2:0.5} h',
    ),
    isolate: word('Isolating and proving dead, once a job.'),
    cover: word('Taking off or putting back one cover.'),
    brace: word('Taking off or putting back one brace.'),
    'hold-down': word('Taking off or putting back one hold-down block.'),
    strip: word('Stripping a metre of liner.', 'strip ${1:0.5} h/m'),
    clean: word('Cleaning and inspecting a metre of trough.', 'clean ${1:0.5} h/m'),
    fit: word('Fitting a metre of liner.', 'fit ${1:2} h/m'),
    'screw section': word('Cutting and lifting out one piece of screw.'),
    weld: word('Welding one joint of the screw.'),
    prove: word('Running empty and loaded, with checks.'),
    'access move': word('Moving the access unit to the next stretch.'),
    'crane move': word(
      'Packing a crane up at one stand and setting it up at the next: outriggers, mats, the load chart read again.',
    ),
    gate: word('Stripping, refitting, shutting or opening one slide gate.'),
    empty: word('Running the trough empty before isolation.'),
    'gas test': word('One test of the air, the first and each repeat.'),
    'clear up': word('Clearing up along a metre of the stretch worked on.', 'clear up ${1:0.1} h/m'),
  },
};
