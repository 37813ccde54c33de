// Keywords of what happened: inspections, relines, screw changes, meter and duty changes.

import { word, type KeywordDocs } from './keyword-doc.js';

const meter = word(
  'Reading of the hour meter on that day; left out where nobody read it.',
  'meter ${1:8120} h',
);
const notRead = word(
  'Nobody read the meter, which leaving it out says too: the hours of that day are reckoned from the readings before and after.',
);
const tonnes = word('Reading of the tonnes counter on that day.', 'tonnes ${1:41000} t');
const error = word(
  'Standard deviation of the reading. A depth gauge is usually good for ± 0.5 mm.',
  '± ${1:0.2} mm',
);
const along = {
  from: word('Measured all along a stretch: it counts once, at its middle.', 'from ${1:18} m to ${2:19.5} m'),
  to: word('The upper end of the stretch.'),
};
/** What was wrong with a part of the drive, where that is over or never was. */
const aspectsEnded = {
  noise: word('The noise it made.'),
  'oil low': word('Too little oil in it.'),
  'oil level low': word('The same as `oil low`.'),
  'oil dirty': word('Dirty oil.'),
  'oil leak': word('That it lost oil.'),
  'seal leaking': word('That product or water came past its seal.'),
  flooded: word('The water in it.'),
};
const photoOfIt = word(
  'A photo of it, by its path beside this file.',
  'photo "${1:photos/P1-2026-03-14.jpg}"',
);
const saidBy = word('Who says so or did it; a role is enough.', 'by "${1:day shift}"');
const at = word(
  'Chainage from the inside face of the tail-end plate, in the direction of flow.',
  'at ${1:9.5} m',
);

export const recordKeywords: KeywordDocs = {
  Inspection: {
    inspection: word(
      'What was seen on one day. One file an inspection is a good habit: two people can then add theirs without a conflict.',
      'inspection ${1:DG1} ${2:2026-03-14} meter ${3:8120} h {\n\tby "${4:day shift}"\n\tview downstream\n\t${5:P1} thickness ${6:8.4} mm$0\n}',
    ),
  },
  MeterRead: {
    meter,
    'not read': notRead,
    '±': word('How far the reading may be off, one standard deviation: a fogged glass.', '± ${1:60} h'),
    '+/-': word('The same as `±`.', '+/- ${1:60} h'),
    tonnes,
  },
  Reading: {
    at: word(
      'A spot that has no name of its own: chainage, then clock.',
      'at ${1:14.20} m clock ${2:8:00} thickness ${3:9.1} mm',
    ),
    from: word(
      'What shows all along a stretch; it counts once: at a point in it at that clock position, else at its middle.',
      'from ${1:18} m to ${2:19.5} m clock ${3:5:00} second colour showing',
    ),
    to: word('The upper end of the stretch.', 'to ${1:19.5} m'),
    clock: word(
      'Clock position of the spot. With `view upstream` it is mirrored once, on the way in.',
      'clock ${1:8:00}',
    ),
    thickness: word('Liner left, measured.', 'thickness ${1:8.4} mm'),
    colour: word(
      'Only a colour was seen. Write the layer that shows; it bounds the wear between two depths and is kept as just that.',
      'colour ${1:ivory}',
    ),
    color: word('The same as `colour`.', 'color ${1:ivory}'),
    'second colour showing': word(
      'The second layer from the screw side shows, whatever its colour is called.',
    ),
    'trough showing': word('Steel shows: the liner is worn through here.'),
    'not seen': word(
      'Looked for and not seen. Says nothing about wear, and is not counted as good.',
      'not seen "${1:build-up}"',
    ),
    blocked: word('Product stood before it.'),
    buried: word('It lay under material or build-up.'),
    'no light': word('There was no light to see it by.'),
    'no access': word('Nobody could get there.'),
    'cover on': word('The cover stayed on.'),
    '±': error,
    '+/-': error,
  },
  Condition: {
    closed: word(
      'It was put right: the condition that stood open at this place is over from this day on.',
      'closed ${1:panel torn at 14.2 m} "${2:new panel}"',
    ),
    'not seen': word(
      'Nobody could look, and why: the condition stays open, and is answered.',
      'not seen ${1:panel torn at 14.2 m} "${2:covers stayed on}"',
    ),
    noise: word('It makes a noise it did not make.', 'noise'),
    'oil low': word('Too little oil in it.'),
    'oil level low': word('The same as `oil low`.'),
    'oil dirty': word('The oil is dirty, milky or full of metal.'),
    'oil leak': word('It loses oil.'),
    'seal leaking': word('Product or water comes past the seal of the bearing.'),
    flooded: word('Water stands in it or has stood in it.'),
    temperature: word(
      'Its temperature, running. Without a severity it is a measurement and nothing to be closed.',
      'temperature ${1:62} degC',
    ),
    'worn through': word(
      'The liner was worn through here. Only so does a condition tell of the rate of wear: ' +
        'it then counts as bare steel read at this place, ' +
        'at the bottom (6:00) where no clock position is written.',
    ),
    'closed on': word('It was put right on this day, after the look.', 'closed on ${1:2026-03-20}'),
  },
  NotLooked: {
    'not seen': word(
      'A place or stretch that nobody could look at, and why. It is carried until a later look sees something there.',
      'not seen from ${1:12} m to ${2:15} m "${3:covers stayed on}"',
    ),
    at: word('One place, from the tail.', 'at ${1:13} m'),
    from: word('A stretch, from the tail.', 'from ${1:12} m to ${2:15} m'),
    to: word('Its upper end.'),
    blocked: word('Product lay in the way.'),
    buried: word('It lay under product or build-up.'),
    'no light': word('It was too dark to see.'),
    'no access': word('Nobody could get there.'),
    'cover on': word('The cover stayed on.'),
  },
  PlateReading: {
    plate: word(
      'Steel left of the trough, measured where the liner is off or from outside. Only hours on which the steel lay bare count for its rate.',
      'plate at ${1:9.1} m thickness ${2:3.4} mm',
    ),
    at,
    ...along,
    clock: word('Clock position; the bottom where it is left out.', 'clock ${1:6:00}'),
    thickness: word('Steel left, measured.', 'thickness ${1:3.4} mm'),
    '±': error,
    '+/-': error,
  },
  Correction: {
    correction: word(
      'A reading that was found wrong later: what it should have said, or that it must not count, by whom and why. ' +
        'The line itself stays as it was written; what was wrong takes no part in any rate from this day on.',
      'correction ${1:DG1} ${2:2026-03-20} ${3:P4} read on ${4:2026-03-14} ' +
        '${5|thickness 7.4 mm,does not count|} by "${6:day shift}" "${7:the gauge was set for steel}"',
    ),
    at: word(
      'The spot, as the inspection has it: from the end that it was measured from, and as the inspector saw it.',
      'at ${1:14.20} m clock ${2:8:00}',
    ),
    clock: word('Clock position, as the inspection has it.', 'clock ${1:8:00}'),
    all: word(
      'Every thickness of a look, by as much: the gauge was set wrong. One that is corrected by itself goes by that, if that was said later.',
      'all read on ${1:2026-03-14} thickness ${2:0.4} mm ${3|less,more|} by "${4:day shift}" "${5:gauge 0.4 mm high}"',
    ),
    panel: word(
      'The panel, as the inspection has it.',
      'panel ${1:7} of run ${2:2} read on ${3:2026-03-14} colour ${4:teal}',
    ),
    'of run': word('The run that it is of.', 'of run ${1:2}'),
    from: word('The stretch, as the inspection has it.', 'from ${1:18} m to ${2:19.5} m'),
    'hold-down': word(
      'A gap of a hold-down that was measured wrong.',
      'hold-down at ${1:9.5} m read on ${2:2026-03-14} gap ${3:12} mm',
    ),
    gap: word('What it should have been.', 'gap ${1:12} mm'),
    worn: word(
      'A worn strip that was read wrong.',
      'worn at ${1:9} m read on ${2:2026-03-14} clock ${3:4:30} to ${4:7:30}',
    ),
    speed: word('A speed that was counted wrong.', 'speed read on ${1:2026-03-14} ${2:16.4} rpm'),
    less: word('Thinner than was read.'),
    more: word('Thicker than was read.'),
    'read on': word('The day of the inspection whose reading was wrong.', 'read on ${1:2026-03-14}'),
    thickness: word('What it should have been.', 'thickness ${1:7.4} mm'),
    colour: word('The colour that really showed.', 'colour ${1:ivory}'),
    color: word('The same as `colour`.', 'color ${1:ivory}'),
    'trough showing': word('Steel showed, whatever was written.'),
    'not seen': word('The spot was not seen after all.'),
    'does not count': word('Nothing is known in its place: the reading takes no part in any rate.'),
    plate: word(
      'A plate that was measured wrong.',
      'plate at ${1:9.1} m read on ${2:2026-03-14} thickness ${3:3.6} mm by "${4:day shift}" "${5:rust under the probe}"',
    ),
    flight: word(
      'A flight that was measured wrong.',
      'flight at ${1:9.5} m read on ${2:2026-03-14} depth ${3:70} mm',
    ),
    depth: word('What it should have been.', 'depth ${1:70} mm'),
    'outside diameter': word('What it should have been.', 'outside diameter ${1:388} mm'),
    current: word(
      'A motor current that was read wrong.',
      'current read on ${1:2026-03-14} loaded ${2:8.1} A',
    ),
    empty: word('Running empty.', 'empty ${1:5.2} A'),
    loaded: word('Running loaded.', 'loaded ${1:8.1} A'),
    meter: word('The hour meter of a look.', 'meter read on ${1:2026-03-14} ${2:8120} h'),
    '±': error,
    '+/-': error,
  },
  ReadOn: {
    'read on': word('The day of the inspection whose reading was wrong.', 'read on ${1:2026-03-14}'),
    'written as': word('What the wrong line says, where the look reads it twice.', 'written as ${1:3.4} mm'),
  },
  Patch: {
    patch: word(
      'Steel welded into or onto the trough: where, when, how thick, and by whom (a role is enough). Plate readings count from it.',
      'patch ${1:DG1} ${2:2026-03-10} at ${3:9} m to ${4:9.6} m thickness ${5:4} mm welded by "${6:coded welder}"',
    ),
    at: word('From this chainage, from the tail.', 'at ${1:9} m to ${2:9.6} m'),
    clock: word(
      'Between these clock positions; all round where they are left out.',
      'clock ${1:5:00} to ${2:7:00}',
    ),
    thickness: word('Of the plate welded in.', 'thickness ${1:4} mm'),
    'welded by': word('Who welded it; a role is enough.', 'welded by "${1:coded welder}"'),
    photo: word('A photo of the weld, by its path beside this file.', 'photo "${1:photos/DG1-patch.png}"'),
    by: word('The same as `welded by`.', 'by "${1:coded welder}"'),
  },
  Serviced: {
    serviced: word(
      'Work on a day, which needs no look and no meter: at the drive, a gate, a hold-down, a weld. It ends the open conditions that ' +
        'it puts right, or that it says it closed. What has no word of its own stands in quotes.',
      'serviced ${1:DG1} ${2:2026-03-10} ${3:gearbox} ${4:oil changed} by "${5:fitter}" "${6:VG 220, 4.5 l}"',
    ),
  },
  WorkRow: {
    serviced: word(
      'Work done on the same day, on this conveyor.',
      'serviced ${1:hold-down} ${2:renewed} at ${3:9.5} m by "${4:fitter}"',
    ),
  },
  Work: {
    'drive at': word('At the drive, at a chainage.', 'drive at ${1:34.2} m "${2:plate bolts tightened}"'),
  },
  WorkDone: {
    'oil changed': word('All of it: it ends oil that was dirty or low, and not a leak.'),
    'oil topped up': word('It ends oil that was low.'),
    'seal renewed': word('It ends a leak: of oil, of product at a bearing, of a gate or a hatch.'),
    'bearings renewed': word('Of a motor or a gearbox: it ends the noise.'),
    greased: word('It ends nothing by itself: whether the noise is gone, the next look has to say.'),
    aligned: word('It ends nothing by itself: whether it runs quietly, the next look has to say.'),
    tightened: word('It ends what was loose there.'),
    renewed: word('The whole part: it ends all that was wrong with it at this place.'),
  },
  SafeguardName: {
    'emergency stop': word(
      'An emergency stop that was tried, or looked at and found good.',
      'emergency stop tried at ${1|tail,head,drive|} by "${2:electrician}"',
    ),
    'pull cord': word(
      'A pull cord that was tried, or looked at and found good; each side by itself where one was.',
      'pull cord tried ${1|left side,right side,both sides|} by "${2:electrician}"',
    ),
    interlock: word(
      'An interlock that was tried, or looked at and found good.',
      'interlock tried at ${1:H1} by "${2:electrician}"',
    ),
    'interlock switch': word('The same as `interlock`.', 'interlock tried at ${1:H1} by "${2:electrician}"'),
    'zero-speed sensor': word(
      'The sensor that sees whether the screw turns, tried or found good.',
      'zero-speed sensor tried at ${1:tail} by "${2:electrician}"',
    ),
    'level probe': word(
      'The probe that sees how full it is, tried or found good.',
      'level probe tried at ${1:Inlet} by "${2:electrician}"',
    ),
    'blockage switch': word(
      'The switch that sees whether material piles up before it, tried or found good.',
      'blockage switch tried at ${1:Discharge} by "${2:electrician}"',
    ),
    guard: word(
      'A guard that was looked at and is there and whole.',
      'guard found good at ${1|drive,tail,head|}',
    ),
  },
  Verdict: {
    tried: word(
      'A safeguard was tried and did what it is there for. Report, sheet and pack say when and by whom; what stands open of it stays so ' +
        'until somebody closes it. One that failed is `dead`.',
      'tried at ${1:tail} by "${2:electrician}"',
    ),
    'found good': word(
      'A safeguard was looked at and is as it should be; nobody tried it.',
      'found good at ${1:drive}',
    ),
  },
  CorrectedCondition: {
    finding: word('A finding that never was there, by its part and place.', 'finding ${1:gate} at ${2:Gate}'),
    ...aspectsEnded,
  },
  Ended: {
    closed: word(
      'The condition or finding that the work ends, in the words of the look that found it.',
      'closed ${1:gate stuck at Gate} "${2:cylinder renewed}"',
    ),
    finding: word('A finding, by its part and place.', 'finding ${1:gate} at ${2:Gate}'),
    ...aspectsEnded,
    temperature: word('That it was too hot; how hot need not be said again.'),
  },
  ConditionKind: {
    'panel missing': word(
      'A panel is gone. It says nothing of how fast the others wear; from here on the steel is bare there.',
      'panel missing at ${1:9.1} m ${2|slight,serious,urgent|} "${3:what was seen}"',
    ),
    'panel torn': word('A panel is torn.', 'panel torn at ${1:14.2} m ${2|slight,serious,urgent|}'),
    'panel cracked': word('A panel is cracked.', 'panel cracked at ${1:14.2} m'),
    'panel lifted': word(
      'A panel or its edge stands up towards the screw.',
      'panel lifted ${1:8} mm at ${2:14.2} m',
    ),
    'panel shifted': word('A panel has moved along the trough.', 'panel shifted ${1:20} mm at ${2:14.2} m'),
    'joint open': word('How wide a joint between panels stands open.', 'joint open ${1:14} mm at ${2:9.5} m'),
    'bolts loose': word('How many liner bolts are loose.', 'bolts loose ${1:3} at ${2:7.2} m'),
    'bolts missing': word('How many liner bolts are missing.', 'bolts missing ${1:2} at ${2:7.2} m'),
    'material behind liner': word(
      'Material has got between liner and steel.',
      'material behind liner at ${1:8.0} m',
    ),
    'product blocked': word('The product stood and blocked.', 'product blocked at ${1:12} m'),
    'spiral off centre': word(
      'The spiral does not lie in the middle, and how far off it is.',
      'spiral off centre ${1:12} mm at ${2:4.1} m',
    ),
    'spiral bolts loose': word(
      'Bolts of a flange that joins two lengths of the spiral are loose: how many, and where the joint is.',
      'spiral bolts loose ${1:2} at ${2:10.4} m serious',
    ),
    'spiral bent': word('The spiral is bent.', 'spiral bent at ${1:4.1} m'),
    'spiral cracked': word(
      'The bar of the spiral is cracked beside its welds.',
      'spiral cracked at ${1:11.2} m',
    ),
    'spiral weld cracked': word('A weld of the spiral is cracked.', 'spiral weld cracked at ${1:11.2} m'),
    'hold-down loose': word('A hold-down block is loose.', 'hold-down loose at ${1:9.5} m'),
    'hold-down bent': word('A hold-down block or its arm is bent.', 'hold-down bent at ${1:9.5} m'),
    'hold-down worn': word('A hold-down block is worn down.', 'hold-down worn at ${1:9.5} m'),
    'hold-down missing': word('A hold-down block is missing.', 'hold-down missing at ${1:9.5} m'),
    'brace bent': word('A brace is bent.', 'brace bent at ${1:11.8} m'),
    'brace missing': word('A brace is missing.', 'brace missing at ${1:11.8} m'),
    'cover missing': word('A cover is gone.', 'cover missing at ${1:9.5} m'),
    'cover loose': word('A cover does not hold.', 'cover loose at ${1:9.5} m'),
    'cover bent': word('A cover is bent and does not lie flat.', 'cover bent at ${1:9.5} m'),
    'cover stuck': word(
      'A cover does not come off: its bolts are seized or it is jammed.',
      'cover stuck at ${1:9.5} m',
    ),
    'cover leaking': word(
      'Dust, water or smell comes past a cover that is on.',
      'cover leaking at ${1:9.5} m',
    ),
    'hatch missing': word('The lid of a hatch is gone.', 'hatch missing at ${1:H1}'),
    'hatch bent': word('The lid of a hatch is bent and does not close.', 'hatch bent at ${1:H1}'),
    'hatch stuck': word(
      'A hatch does not open: nobody looks in there until it does.',
      'hatch stuck at ${1:H1}',
    ),
    'hatch leaking': word('Material or water comes past a hatch that is shut.', 'hatch leaking at ${1:H1}'),
    'gate stuck': word('A slide gate does not move.', 'gate stuck at ${1:Gate}'),
    'gate leaking': word('A slide gate that is shut lets material through.', 'gate leaking at ${1:Gate}'),
    'tail bearing': word(
      'The bearing at the tail: noise, temperature.',
      'tail bearing ${1|noise,temperature|}',
    ),
    'thrust bearing': word('The bearing that takes the thrust.', 'thrust bearing ${1|noise,temperature|}'),
    gearbox: word('The gearbox: noise, temperature, oil.', 'gearbox ${1|noise,oil low,oil dirty,oil leak|}'),
    coupling: word('The coupling of the drive: noise.', 'coupling noise'),
    'trough cracked': word('The steel of the trough is cracked.', 'trough cracked at ${1:11.2} m serious'),
    'trough leaking': word('Water or product comes through the steel.', 'trough leaking at ${1:11.2} m'),
    'trough dented': word('The trough is dented.', 'trough dented at ${1:11.2} m'),
    motor: word('The motor: noise, temperature.', 'motor ${1|noise,temperature|}'),
    'guard missing': word(
      'A guard is gone, of the drive, of a shaft or of an opening. It comes to the top of report, sheet and pack until it is closed.',
      'guard missing at ${1|drive,tail,head|} ${2|serious,urgent|}',
    ),
    'guard loose': word('A guard does not hold.', 'guard loose at ${1|drive,tail,head|}'),
    'guard bent': word(
      'A guard is bent and leaves a gap, or touches what turns.',
      'guard bent at ${1|drive,tail,head|}',
    ),
    'emergency stop dead': word(
      'An emergency stop was tried and did not stop the machine.',
      'emergency stop dead at ${1|tail,head,drive|} ${2|serious,urgent|}',
    ),
    'pull cord dead': word(
      'A pull cord was pulled and did not stop the machine.',
      'pull cord dead ${1|serious,urgent|}',
    ),
    'pull cord broken': word(
      'A pull cord is torn or off its switch.',
      'pull cord broken ${1|serious,urgent|}',
    ),
    'pull cord slack': word('A pull cord hangs: it has to be pulled too far.', 'pull cord slack'),
    'interlock dead': word(
      'An interlock switch, of a hatch, a cover or a guard, lets the machine run while that is open.',
      'interlock dead at ${1:H1} ${2|serious,urgent|}',
    ),
    'interlock bypassed': word(
      'Somebody has bridged an interlock switch, or holds it down.',
      'interlock bypassed at ${1:H1} ${2|serious,urgent|}',
    ),
    'zero-speed sensor dead': word(
      'The sensor that tells the drive that the screw turns no more does not tell it: a broken spiral runs on.',
      'zero-speed sensor dead at ${1|tail,head|} ${2|serious,urgent|}',
    ),
    'zero-speed sensor bypassed': word(
      'The zero-speed sensor is bridged, taped over or looks at something else than the screw.',
      'zero-speed sensor bypassed at ${1|tail,head|} ${2|serious,urgent|}',
    ),
    'level probe dead': word(
      'A level probe does not stop what feeds when the trough is full.',
      'level probe dead at ${1:Inlet} ${2|serious,urgent|}',
    ),
    'level probe bypassed': word(
      'A level probe is bridged or tied up.',
      'level probe bypassed at ${1:Inlet} ${2|serious,urgent|}',
    ),
    'blockage switch dead': word(
      'The switch that stops the screw when nothing leaves it any more does not stop it.',
      'blockage switch dead at ${1:Discharge} ${2|serious,urgent|}',
    ),
    'blockage switch bypassed': word(
      'A blockage switch is bridged or tied up.',
      'blockage switch bypassed at ${1:Discharge} ${2|serious,urgent|}',
    ),
    'cable damaged': word('A cable or its cover is damaged.', 'cable damaged at ${1:9.5} m'),
    'walkway damaged': word(
      'A walkway, a ladder or its rail does not carry or hold as it should.',
      'walkway damaged at ${1:9.5} m',
    ),
    'sign missing': word('A warning sign is gone or cannot be read.', 'sign missing at ${1:9.5} m'),
  },
  By: { by: word('Who looked or worked. A role is enough.', 'by "${1:day shift}"') },
  View: {
    view: word(
      'Which way the inspector looked. Clock positions are mirrored where it was upstream.',
      'view ${1|downstream,upstream|}',
    ),
    upstream: word('Against the flow: clock positions are mirrored once, on the way in.'),
    downstream: word('In the direction of flow: clock positions stand as written.'),
  },
  MeasuredFrom: {
    'measured from': word(
      'The end from which every chainage of this look counts. Points, parts, panels and ends by their names stay where they are.',
      'measured from ${1|head,tail|}',
    ),
    head: word('From the head: each chainage is taken as the length of the conveyor less it.'),
    tail: word('From the tail, as everywhere.'),
  },
  Gauge: {
    gauge: word(
      'How thickness was measured, and how well.',
      'gauge ${1|ultrasonic,depth gauge,calliper,by eye|} ± ${2:0.2} mm',
    ),
    ultrasonic: word(
      'Ultrasonic gauge. Sound velocity in PE changes with temperature: calibrate on an offcut at site temperature.',
    ),
    'depth gauge': word('Depth gauge through a hole or at an edge; about ± 0.5 mm.'),
    calliper: word('Calliper at an edge or on a removed piece.'),
    'by eye': word('Estimated by eye.'),
    '±': error,
    '+/-': error,
  },
  HoldDownGap: {
    'hold-down': word('Gap measured under a hold-down block.', 'hold-down at ${1:9.5} m gap ${2:14} mm'),
    at,
    gap: word('The gap between block and spiral.', 'gap ${1:14} mm'),
  },
  FlightReading: {
    flight: word('Depth of flight left, measured at a chainage.', 'flight at ${1:9.5} m depth ${2:72} mm'),
    at,
    ...along,
    depth: word('Radial depth of flight left.', 'depth ${1:72} mm'),
    'outside diameter': word(
      'Diameter across the flight as worn: half of what it has lost is missing from the flight at either side.',
      'outside diameter ${1:388} mm',
    ),
  },
  WornWidth: {
    worn: word(
      'Width of the worn strip at a chainage, from clock to clock.',
      'worn at ${1:9.5} m clock ${2:5:30} to ${3:8:30}',
    ),
    at,
    clock: word('First clock position of the worn strip.'),
  },
  MeterNotRead: {
    meter: word('The hour meter, which nobody read that day.', 'meter not read'),
    'not read': notRead,
  },
  MeasuredSpeed: {
    speed: word(
      'Speed of the screw as counted at its shaft, loaded. Held against the drive’s and the recorded one: wear goes with every turn.',
      'speed ${1:15.5} rpm',
    ),
  },
  MotorCurrent: {
    current: word('Motor current, running empty and loaded.', 'current empty ${1:5.2} A loaded ${2:8.7} A'),
    empty: word('Running empty.', 'empty ${1:5.2} A'),
    loaded: word('Running loaded.', 'loaded ${1:8.7} A'),
  },
  Finding: {
    finding: word(
      'Something seen that no condition has a word for: what part, where, what. With a severity it stands open until ' +
        '`closed finding` ends it; without one it is a note.',
      'finding ${1|hold-down,gate,cover,hatch,spiral,drive,trough,liner|} at ${2:9.5} m ${3|slight,serious,urgent|} "${4:cracked, 14 mm gap}"',
    ),
    closed: word(
      'It was put right: the finding of this part and place is over.',
      'closed finding ${1|hold-down,gate,cover,hatch,spiral,drive,trough,liner|} at ${2:9.5} m "${3:new block}"',
    ),
    'not seen': word(
      'Nobody could look: the finding stays open.',
      'not seen finding ${1|hold-down,gate,cover,hatch,spiral,drive,trough,liner|} at ${2:9.5} m "${3:cover stayed on}"',
    ),
  },
  FindingTold: {
    'drive at': word('About the drive, at a chainage.', 'drive at ${1:34.2} m'),
  },
  About: {
    'drive at': word('About the drive, at a chainage.', 'drive at ${1:34.2} m'),
  },
  PartName: {
    liner: word('About the liner.'),
    panel: word('About a panel.'),
    bolt: word('About a bolt of the liner.'),
    bolts: word('About bolts of the liner.'),
    spiral: word('About the spiral.'),
    flight: word('About the flight of the screw.'),
    'hold-down': word('About a hold-down block.'),
    brace: word('About a brace.'),
    cover: word('About a cover.'),
    hatch: word('About a hatch.'),
    gate: word('About a slide gate.'),
    trough: word('About the steel of the trough.'),
    drive: word('About the drive.'),
    'drive plate': word('About the plate that the spiral is bolted to.'),
    gearbox: word('About the gearbox.'),
    'gearbox thrust bearing': word('About the thrust bearing, which lies in the gearbox.'),
    'thrust bearing': word('About the bearing that takes the thrust.'),
    'tail bearing': word('About the bearing at the tail.'),
    motor: word('About the motor.'),
    coupling: word('About the coupling of the drive.'),
    guard: word('About a guard: `finding guard at drive serious "two screws missing"`.'),
    'emergency stop': word('About an emergency stop.'),
    'pull cord': word('About a pull cord.'),
    interlock: word('About the interlock switch of a hatch, a cover or a guard.'),
    'interlock switch': word('The same as `interlock`.'),
    'zero-speed sensor': word('About the sensor that sees whether the screw turns.'),
    'level probe': word('About the probe that sees how full it is.'),
    'blockage switch': word('About the switch that sees whether material piles up before it.'),
    cable: word('About a cable.'),
    walkway: word('About a walkway, a ladder or their rails.'),
    sign: word('About a warning sign.'),
    hopper: word('About a hopper over the screw.'),
    drain: word('About a drain of the trough: `finding drain at 0.1 m "blocked"`.'),
  },
  SeenAt: {
    at: word(
      'Where: a chainage from the tail, a stretch, an inspection point or a part by its name, a panel, or an end: `tail`, `head`, `drive`.',
      'at ${1:9.5} m',
    ),
    from: word('All along a stretch, from the tail.', 'from ${1:18} m to ${2:19.5} m'),
    to: word('The upper end of the stretch.', 'to ${1:19.5} m'),
  },
  Spot: {
    tail: word('At the tail end.'),
    head: word('At the head end.'),
    drive: word('At the end where the drive is.'),
  },
  Shown: { photo: photoOfIt },
  NextLook: {
    'next look': word(
      'A look that somebody asks for. Report, calendar, rounds and sheet carry it until an inspection is made; the report’s own day ' +
        'holds where it is sooner.',
      'next look after ${1:100} h "${2:running in}"',
    ),
    after: word(
      'So long after this record: in hours by the hour meter, in days or weeks by the calendar. An inspection in the second half of ' +
        'that time, or later, answers it.',
      'after ${1:100} h',
    ),
    by: word('The last day for it. Any inspection after this record answers it.', 'by ${1:2026-01-10}'),
  },
  SaidBy: { by: saidBy },
  Signed: { by: saidBy },
  Told: { photo: photoOfIt, by: saidBy },
  PanelsRead: {
    panel: word(
      'What was read on a panel; it counts once, at a point on it, else at its middle.',
      'panel ${1:7} of run ${2:2}',
    ),
    panels: word('What was read on each of several panels.', 'panels ${1:5} to ${2:7} of run ${3:1}'),
    to: word('Up to this panel.'),
    and: word('And the last of them.'),
    'of run': word('The run whose panels are counted, from its tail end.'),
  },
  Clock: {
    clock: word(
      'Clock position, where it matters; or from one to another, clockwise, which counts at its middle.',
      'clock ${1:6:00}',
    ),
    to: word('The other end of the sector, clockwise.', 'to ${1:7:30}'),
  },
  OnASide: {
    'left side': word(
      'On the left, seen in the direction of flow; in a look with `view upstream` as the inspector saw it, which is turned round.',
    ),
    'right side': word(
      'On the right, seen in the direction of flow; in a look with `view upstream` as the inspector saw it, which is turned round.',
    ),
    'both sides': word('On either side.'),
  },
  Severity: {
    slight: word('To be watched. With it a finding stands open until it is closed.'),
    serious: word('To be put right at the next chance. With it a finding stands open until it is closed.'),
    urgent: word(
      'Not to be left: it comes to the top of the report. With it a finding stands open until it is closed.',
    ),
  },
  Photo: {
    photo: word(
      'A photo of this look, by its path beside this file. On a line of its own it is of the look; behind a reading or a ' +
        'condition, or on a line below that stands further in, it is of that one.',
      'photo "${1:photos/DG1-2026-03-14.jpg}"',
    ),
  },
  Reline: {
    reline: word(
      'A reline that was done. It starts a new liner set: later readings count their hours from here. Without `scope` the whole liner was changed.',
      'reline ${1:DG1} ${2:2024-05-06} meter ${3:2100} h {\n\tliner ${4:TwoLayer12}\n\tscope ${5:run 1}$0\n}',
    ),
  },
  Scope: {
    scope: word('Which part was relined: `run 2`, `panels 1, 9 and 10 of run 3`.', 'scope ${1:run 1}'),
  },
  NewThickness: {
    thickness: word(
      'What the gauge showed on the new liner, for all that was fitted. A point or a panel with a number of its own goes by that.',
      'thickness ${1:12.2} mm',
    ),
    '±': error,
    '+/-': error,
  },
  MovedThickness: {
    at: word(
      'A spot on a panel that was moved, where no point lies.',
      'at ${1:7} m clock ${2:5:00} thickness ${3:9.1} mm',
    ),
    clock: word('Clock position, in the direction of flow.', 'clock ${1:5:00}'),
    thickness: word('What was left there when it was moved.', 'thickness ${1:9.1} mm'),
  },
  NumberedPanel: { 'of run': word('The run in which it lay.', 'of run ${1:2}') },
  AsFitted: {
    thickness: word('Thickness measured at this point when the liner was new.', 'thickness ${1:12.2} mm'),
    '±': error,
    '+/-': error,
  },
  PanelsFitted: {
    fitted: word(
      'Panels as they were really cut and fitted, from the tail end of the run; in a conveyor, those that it came with.',
      'fitted run ${1:2} panels ${2:1200 mm}, ${3:1200 mm}, ${4:873 mm}',
    ),
    run: word('The run, by number from the tail or by the break below it.'),
    panels: word('Lengths from the tail end of the run.'),
  },
  OldPanel: {
    'old panel': word(
      'What was left of a panel that came out, measured on the bench, by where it had lain or by its number ' +
        '(`old panel 4 of run 2 thickness 4.2 mm`). ' +
        'It is the last reading of the old liner there, and says nothing of the new one.',
      'old panel at ${1:P8} thickness ${2:1.9} mm',
    ),
    at: word('Where it had lain: a point, or a chainage from the tail.', 'at ${1:15.8} m'),
    clock: word(
      'Clock position in the direction of flow. Left out: the point that lies there, else the middle of the worn sector, else the bottom.',
      'clock ${1:5:00}',
    ),
    thickness: word('Left of the panel where it was thinnest.', 'thickness ${1:1.9} mm'),
    'worn through': word('Nothing was left: steel had been showing.'),
    '±': error,
    '+/-': error,
  },
  PanelThickness: {
    fitted: word(
      'What the gauge showed on a new panel. Its points wear from there, where none of them was measured by itself.',
      'fitted panel ${1:3} of run ${2:2} thickness ${3:12.1} mm',
    ),
    thickness: word('Thickness of the panel when it was new.'),
    '±': error,
    '+/-': error,
  },
  Offcut: { offcut: word('A piece left over and kept, for the next cut list.', 'offcut ${1:640} mm') },
  PanelsMoved: {
    'panels moved': word(
      'Panels that were fitted again: turned end for end, or exchanged. From what was left at a point on them then, their wear counts anew where they lie now; without it from the first thickness read there.',
      'panels moved ${1:DG1} ${2:2026-03-14} meter ${3:8120} h {\n\tpanel ${4:2} of run ${5:1} turned end for end\n\t${6:P2} thickness ${7:9.1} mm$0\n}',
    ),
  },
  OnePanel: {
    panel: word('One panel, by its number from the tail end of its run.', 'panel ${1:2} of run ${2:1}'),
    'of run': word('The run it lies in.', 'of run ${1:1}'),
  },
  PanelMove: {
    'turned end for end': word(
      'Fitted again the other way round: what lay at its lower end lies at the upper one, and left lies right.',
    ),
    'exchanged with': word(
      'The two panels were fitted in each other’s place.',
      'exchanged with panel ${1:5} of run ${2:1}',
    ),
  },
  ScrewChange: {
    'screw change': word(
      'A screw that was changed.',
      'screw change ${1:DG1} ${2:2025-06-02} meter ${3:12000} h {\n\tscrew ${4:Spiral400}$0\n}',
    ),
    meter,
    'not read': notRead,
    tonnes,
  },
  ScrewScope: {
    scope: word(
      'Of a spiral in several lengths, the length that was renewed. Left out, all of it. The other lengths keep their age.',
      'scope from ${1:5.2} m to ${2:10.4} m',
    ),
    from: word('Joint at its tail end.'),
    to: word('Joint at its head end.'),
  },
  MeterChange: {
    'meter change': word(
      'The hour meter was replaced or reset: last reading of the old one, first of the new one. Hours then add up across the change. ' +
        'A later line of that day, from the last reading to another one near it, puts the last reading right.',
      'meter change ${1:DG1} ${2:2024-11-02} from ${3:9120} h to ${4:0} h "${5:why}"',
    ),
    from: word('Last reading of the meter taken out.'),
    to: word('First reading of the meter put in.'),
  },
  DriveChange: {
    'drive change': word(
      'Another motor, gear or speed from this day on; `drive at` on the conveyor says what it was built with. ' +
        'Another power is another motor: it ends what was wrong with the old one, and currents are compared ' +
        'from then on. At another speed an hour counts by its turns.',
      'drive change ${1:DG1} ${2:2022-01-17} power ${3:7.5} kW speed ${4:18} rpm by "${5:fitter}" "${6:gear 1:63}"',
    ),
    power: word('Rated power of the motor.', 'power ${1:7.5} kW'),
    speed: word('Speed of the screw, at its shaft.', 'speed ${1:18} rpm'),
  },
  DutyChange: {
    duty: word(
      'The duty changed on a day: from then on dates are forecast with it. ' +
        'Another product is a note here: the report quotes it where the wear changed about then, and finds the new rate from the readings.',
      'duty ${1:DG1} from ${2:2025-01-01} ${3:140} h/week "${4:sewage sludge instead of digestate}"',
    ),
    from: word('First day of the new duty.'),
    speed: word(
      'New speed of the screw; alone where the hours go on as before. ' +
        'Where wear goes by hours, an hour at it counts by its turns against the speed of the drive.',
      'speed ${1:18} rpm',
    ),
    '±': word(
      'Spread of the duty: one standard deviation of its mean. Up to ± 10 % the hours are taken as even.',
    ),
    '+/-': word('Spread of the duty.'),
  },
};
