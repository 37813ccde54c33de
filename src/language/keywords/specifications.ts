// Keywords of the two specifications, liner and screw.

import { word, type KeywordDocs } from './keyword-doc.js';

const lengthWithTolerance = 'A tolerance, `±` the value after it.';

export const specificationKeywords: KeywordDocs = {
  Liner: {
    liner: word(
      'A liner as it is bought: layers from the screw side outwards, panel lengths, fixings, joint, condemn limit. Many conveyors can use one.',
      'liner ${1:TwoLayer12} {\n\tmaterial PE1000\n\tlayer ${2:ivory} ${3:6 mm}\n' +
        '\tlayer ${4:teal} ${5:6 mm}\n\tpanel length ${6:1200 mm} ± ${7:1 mm}\n\tcondemn at ${8:3 mm}\n' +
        '\tbolt M10 pitch 300 mm countersink 4 mm\n\tjoint butted$0\n}',
    ),
  },
  LinerMeasure: {
    'condemn at': word(
      'Remaining thickness at which the liner must be changed. Below it the screw is close to the trough.',
      'condemn at ${1:3} mm',
    ),
    thickness: word('Total thickness. Left out, it is the sum of the layers.', 'thickness ${1:12} mm'),
    'thickness tolerance': word(
      'Thickness tolerance as purchased, plus or minus.',
      'thickness tolerance ${1:0.4} mm',
    ),
    'layer tolerance': word(
      'How much the depth of a colour change varies, as a share of that depth (one standard deviation).',
      'layer tolerance ${1:5} %',
    ),
    'expected life': word(
      'Running hours to the condemn limit that you expect before there are readings. Used as a weak prior, and named in the report as such.',
      'expected life ${1:12000} h ± ${2:40} %',
    ),
    density: word(
      'Density, for masses of panels. PE-UHMW is about 930 kg/m³ (ISO 1183).',
      'density ${1:930} kg/m3',
    ),
    expansion: word(
      'Linear thermal expansion. PE-UHMW: 150 to 230 µm/m/K, usually 200.',
      'expansion ${1:200} um/m/K',
    ),
    modulus: word(
      'Modulus of elasticity, for the stress in a panel that cannot grow. PE-UHMW: about 750 MPa.',
      'modulus ${1:750} MPa',
    ),
    'maximum temperature': word(
      'Highest temperature in continuous service. PE-UHMW: 80 °C.',
      'maximum temperature ${1:80} degC',
    ),
    'sound velocity': word(
      'Sound velocity for ultrasonic gauges, ' +
        'as calibrated on an offcut of this liner at site temperature: ' +
        'gauge tables give 2080 m/s for LDPE and 2460 for HDPE, ' +
        'and nothing certain for PE-UHMW. 1 % wrong is 0.12 mm on 12 mm.',
      'sound velocity ${1:2045} m/s',
    ),
    price: word('Price a metre of lined length.', 'price ${1:95} EUR/m'),
    'bolt length': word(
      'Length of a bolt overall, with its countersunk head. Held against liner, plate, washer and nut.',
      'bolt length ${1:30} mm',
    ),
    'tightening torque': word(
      'Torque that the bolts of the liner are tightened to. ' +
        'The plastic under the head gives way long before the bolt does: ' +
        'the maker of the liner says how much it bears.',
      'tightening torque ${1:20} N·m',
    ),
    '±': word(lengthWithTolerance),
    '+/-': word(lengthWithTolerance),
  },
  Material: { material: word('What it is made of, such as PE1000 or S355.', 'material ${1:PE1000}') },
  Layer: {
    layer: word(
      'One layer and its colour. Write the layers from the screw side outwards: ' +
        'the first one wears first, the last lies against the trough. Inspections use these names.',
      'layer ${1:ivory} ${2:6} mm',
    ),
  },
  PanelLength: {
    'panel length': word(
      'Lengths on offer, longest useful first or last as you like, and the length tolerance of a panel. ' +
        'The tolerance adds up along a run and must be taken up at a break.',
      'panel length ${1:1200} mm ± ${2:1} mm',
    ),
  },
  StockLength: {
    'stock length': word(
      'Lengths in which sheet is delivered; the cut list is laid out on these.',
      'stock length ${1:3000} mm',
    ),
  },
  Bolt: {
    bolt: word(
      'Countersunk bolts through liner and trough: size, rows across the sheet, pitch along it, depth of the countersink.',
      'bolt ${1:M10} rows ${2:2} pitch ${3:300} mm countersink ${4:4} mm',
    ),
    rows: word('Rows of bolts across the sheet.', 'rows ${1:2}'),
    pitch: word(
      'Distance between bolts along the panel. Longer than the buckling pitch and the liner can lift when it warms.',
      'pitch ${1:300} mm',
    ),
    countersink: word(
      'Depth of the countersink. Where it reaches the second colour, the colours mislead.',
      'countersink ${1:4} mm',
    ),
  },
  HeldBy: {
    'fixed by': word(
      'What holds the panels: without a `bolt` line the pack says this in place of bolts, holes and torque.',
      'fixed by "${1:clamp strips along both top edges}"',
    ),
  },
  Drill: {
    drill: word(
      'Size of the hole through liner and trough. Usual for M8, M10 and M12: 9, 11 and 13.5 mm (ISO 273, medium).',
      'drill ${1:11} mm deep ${2:20} mm',
    ),
    deep: word(
      'How deep the bit goes in from the screw side; a stop on the bit keeps to it.',
      'deep ${1:20} mm',
    ),
  },
  Sealant: {
    sealant: word(
      'What goes under the heads or into the joints, by kind and not by maker.',
      'sealant "${1:neutral silicone under every head}"',
    ),
  },
  Joint: {
    joint: word('How neighbouring panels meet.', 'joint ${1|butted,gap|}'),
    butted: word('Panels are tapped tight against each other.'),
    gap: word('A gap is left between panels for growth.', 'gap ${1:4} mm'),
  },
  Turning: {
    'may be turned end for end': word(
      'The bolt pattern allows a panel to be taken out and fitted again the other way round, ' +
        'so that its worn side comes to lie on the other side of the trough. ' +
        'The report then offers turning where it helps.',
      'may be turned end for end',
    ),
  },
  Screw: {
    screw: word(
      'A screw as it is bought: shaftless or shafted, diameter, pitch, hand, flight.',
      'screw ${1:Spiral400} {\n\tshaftless\n\toutside diameter ${2:400 mm}\n\tpitch ${3:400 mm}\n' +
        '\thand ${4|right,left|}\n\tflight ${5:80 mm} by ${6:25 mm}$0\n}',
    ),
  },
  ScrewMeasure: {
    'outside diameter': word('Outside diameter of the flight when new.', 'outside diameter ${1:400} mm'),
    density: word('Density of the screw, for masses. Steel: 7850 kg/m³.', 'density ${1:7850} kg/m3'),
    'condemn flight at': word(
      'Flight depth left at which the screw must be changed.',
      'condemn flight at ${1:55} mm',
    ),
    price: word('Price of one screw.', 'price ${1:14000} EUR'),
    '±': word(lengthWithTolerance),
    '+/-': word(lengthWithTolerance),
  },
  ScrewPitch: {
    pitch: word(
      'Advance of the flight in one turn. Usually 0.3 to 1.5 times the diameter.',
      'pitch ${1:400} mm',
    ),
    from: word(
      'Where it is another pitch than in the rest, such as under the inlet.',
      'from ${1:0} m to ${2:2} m',
    ),
    to: word('The upper end of that stretch.', 'to ${1:2} m'),
  },
  ScrewKind: {
    shaftless: word('A spiral without a centre tube: it lies on the liner.'),
    shaft: word('A screw on a centre tube of this outside diameter.', 'shaft ${1:89} mm'),
  },
  Hand: {
    hand: word(
      'Hand of the helix, viewed along the axis. With the direction of flow it gives the sense of rotation.',
      'hand ${1|right,left|}',
    ),
    left: word(
      'Left-hand. Conveying away from the viewer it turns clockwise and heaps the material between 6 and 9 o’clock.',
    ),
    right: word(
      'Right-hand. Conveying away from the viewer it turns counter-clockwise and heaps the material between 3 and 6 o’clock.',
    ),
  },
  Flight: {
    flight: word('Section of the flat bar: radial width by thickness.', 'flight ${1:80} mm by ${2:25} mm'),
    by: word('Width `by` thickness.'),
    x: word('Width `x` thickness, as `by`.'),
    '×': word('Width × thickness, as `by`.'),
  },
  InnerFlight: {
    'inner flight': word(
      'A second, smaller spiral inside the first; it carries the core and limits fall-back on an incline.',
      'inner flight outside diameter ${1:160} mm inside diameter ${2:80} mm thickness ${3:12} mm',
    ),
    'outside diameter': word('Outside diameter of the inner flight.', 'outside diameter ${1:160} mm'),
    'inside diameter': word('Inside diameter of the inner flight.', 'inside diameter ${1:80} mm'),
    pitch: word('Pitch of the inner flight; left out, the pitch of the screw.', 'pitch ${1:400} mm'),
    thickness: word('Thickness of its flat bar.', 'thickness ${1:12} mm'),
  },
  DrivePlate: {
    'drive plate': word('How the screw is bolted to its drive.', 'drive plate ${1:8} bolts ${2:M20}'),
    bolts: word('Number of bolts, then their size.'),
  },
};
