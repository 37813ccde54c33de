// Lines that people of the trade wrote and that the language says in other words: each is answered with those words, or told where
// it goes; no answer names another thing than was written, and none throws a word away.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { conditionKinds, conditionWords } from '../../src/domain/conditions/kinds.js';
import { lower } from '../../src/language/lower.js';
import { parseText } from '../../src/language/parse.js';
import { inSoundEstate } from '../../src/validation/example.js';
import { inspect, read, machine } from './read.js';

const record = (head: string) => (line: string) => `${head} DG1 2026-01-01 meter 5 h {\n  ${line}\n}\n`;
const machineLine = (line: string): string => `conveyor DG1 {\n  ${line}\n}\n`;
const plantLine = (line: string): string => `plant Tarnholt {\n  ${line}\n}\n`;
const asIs = (line: string): string => `${line}\n`;

/** The lines after their mends, or the message where there is none. */
function answer(line: string, around: (line: string) => string): string {
  const text = around(line);
  const { slips } = parseText(text);
  const [first, ...more] = slips;
  expect(more).toEqual([]);
  if (!first) return 'read';
  if (!first.mend) return first.message;
  const { start, end, text: put } = first.mend;
  const mended = text.slice(0, start) + put + text.slice(end);
  expect(parseText(mended).slips).toEqual([]);
  // A line that says several facts is mended to so many lines.
  const from = around === asIs ? 0 : 1;
  const added = mended.split('\n').length - text.split('\n').length;
  return mended
    .split('\n')
    .slice(from, from + 1 + added)
    .map((each) => each.trim())
    .join(' | ');
}

describe('in a look', () => {
  test.each([
    ['drive guard missing', 'guard missing at drive'],
    ['guard of the tail shaft loose slight', 'guard loose at tail slight "tail shaft"'],
    ['belt guard off serious', 'guard missing at drive serious "belt guard off"'],
    ['closed drive guard missing "refitted"', 'closed guard missing at drive "refitted"'],
    ['guard bent at 3 m', 'read'],
    ['drain found good at 0.1 m', 'finding drain at 0.1 m "found good"'],
    ['drain at 0.1 m tried by "fitter"', 'finding drain at 0.1 m "tried" by "fitter"'],
    ['walkway found good at 9 m "grating fixed"', 'finding walkway at 9 m "found good: grating fixed"'],
    ['gate found good at Gate', 'finding gate at Gate "found good"'],
    ['measured from head', 'read'],
    ['chainage from head', 'measured from head'],
    ['chainages start at the head end', 'measured from head'],
    ['zero at the head end', 'measured from head'],
    ['chainages from the head end', 'measured from head'],
    ['all distances measured from the discharge end', 'measured from head'],
    ['measured from top', 'measured from head'],
    ['tape from the outlet', 'measured from head'],
    ['measured from the inlet end', 'measured from tail'],
    ['emergency stop at tail tried by "electrician" "stops"', 'read'],
    ['emergency stop at tail tried ok', 'emergency stop tried at tail'],
    ['e-stop tail tested ok', 'emergency stop tried at tail "tested ok"'],
    ['function test of emergency stop at tail ok', 'emergency stop tried at tail "function test ok"'],
    ['emergency stops tried, both good', 'emergency stop tried "both good"'],
    ['zero speed sensor tested with a magnet', 'zero-speed sensor tried "tested with a magnet"'],
    ['pull cord tested both sides by "crew 2"', 'pull cord tried both sides by "crew 2"'],
    ['pull cord pulled, stops', 'pull cord tried "pulled, stops"'],
    ['zero-speed sensor at tail ok', 'zero-speed sensor found good at tail'],
    ['guards all in place', 'guard found good "all in place"'],
    ['interlock C3 checked', 'interlock found good at C3'],
    // Pressed for need, or by itself: nobody tried it.
    ['zero-speed sensor tripped at tail', 'finding zero-speed sensor at tail "tripped"'],
    ['pull cord trips by itself', 'finding pull cord "trips by itself"'],
    ['emergency stop at tail tried, did not stop', 'emergency stop dead at tail "tried, did not stop"'],
    ['emergency stop at tail not tried "no time"', 'finding emergency stop at tail "not tried: no time"'],
    [
      'emergency stop at tail tried 2025-06-01',
      'A trial of another day is a line of its own, outside this block: `serviced DG1 2025-06-01 emergency stop tried at tail`.',
    ],
    [
      'pull cord left side good, right side slack',
      'Each side has a line of its own: `pull cord found good left side`, `pull cord tried right side`, or what is wrong there.',
    ],
    ['e-stop dead at tail', 'emergency stop dead at tail'],
    ['emergency stop not working at 3 m urgent', 'emergency stop dead at 3 m urgent'],
    ['pull wire snapped', 'pull cord broken "snapped"'],
    ['interlock switch bridged at H1', 'interlock bypassed at H1 "bridged"'],
    ['pull cord frayed serious', 'finding pull cord serious "frayed"'],
    ['zero speed sensor taped over at tail urgent', 'zero-speed sensor bypassed at tail urgent "taped over"'],
    ['rotation sensor not working at tail', 'zero-speed sensor dead at tail'],
    [
      'tail end zero-speed monitor jumpered, serious',
      'zero-speed sensor bypassed at tail serious "zero-speed sensor jumpered"',
    ],
    ['serviced joint tightened at 17.4 m', 'serviced closed joint open at 17.4 m "tightened"'],
    ['drive end not looked at', 'finding at drive "not looked at"'],
    ['cover rattling at 9.5 m slight by "crew B"', 'cover loose at 9.5 m slight "rattling" by "crew B"'],
    ['all black except P5', 'finding "all black except P5"'],
    ['at 5.2 m patch holds "one screw head proud"', 'finding at 5.2 m "patch holds: one screw head proud"'],
    [
      'at 2.2 m thickness thin "all worn, no gauge at hand"',
      'finding at 2.2 m "thickness thin: all worn, no gauge at hand"',
    ],
    ['from 2 m to 3 m all rough and scratched', 'finding from 2 m to 3 m "all rough and scratched"'],
    ['at 7 m smells burnt serious', 'finding at 7 m serious "smells burnt"'],
    ['at 3 m blocked with stones', 'product blocked at 3 m "with stones"'],
    ['drain blocked at 0.1 m', 'finding drain at 0.1 m "blocked"'],
    ['blocked drain at 0.1 m', 'finding drain at 0.1 m "blocked drain"'],
    ['nozzle at 0.1 m plugged serious', 'finding at 0.1 m serious "nozzle plugged"'],
    ['chute clogged "lumps" at 12 m left side', 'finding at 12 m left side "chute clogged: lumps"'],
    ['hopper blocked', 'finding hopper "blocked"'],
    ['spiral at tail end gap 34 mm', 'finding spiral at tail "end gap 34 mm"'],
    ['spiral end gap 34 mm at the tail end', 'finding spiral at tail "end gap 34 mm"'],
    ['serviced finding gate at Gate "ground flush"', 'serviced gate at Gate "ground flush"'],
    ['only H7 and H15 opened', 'finding "only H7 and H15 opened"'],
    ['bolts at P4 tightened, 1 missing', 'serviced bolts tightened at P4 | bolts missing 1 at P4'],
    ['bolts of P4 reset, 2 lost', 'serviced bolts at P4 "reset, 2 lost"'],
    ['4 mm plate at 16.1 m reads 3.6 mm', 'plate at 16.1 m thickness 3.6 mm "4 mm"'],
    ['guard coupling bolt missing 1', 'finding guard "coupling bolt missing 1"'],
    ['cover put back at 8.2 m', 'closed cover missing at 8.2 m "put back"'],
    ['gearbox oil leaks a bit', 'gearbox oil leak "a bit"'],
    ['motor trip at 16 A', 'finding motor "trip at 16 A"'],
    ['hour meter dead at 18050 h', 'finding "hour meter dead at 18050 h"'],
    ['gearbox bolts loose 2 slight', 'finding gearbox slight "bolts loose 2"'],
    ['motor bolts missing 1 at 3 m', 'finding motor at 3 m "bolts missing 1"'],
    ['squirrel nest behind liner at 19 m', 'material behind liner at 19 m "squirrel nest behind liner"'],
    ['at G1 gate hard to move', 'finding gate at G1 "hard to move"'],
    ['P6 4 mm or 5 mm', 'P6 thickness 4.5 mm ± 0.5 mm "4 mm or 5 mm"'],
    ['thickness P5 2 to 3 mm', 'P5 thickness 2.5 mm ± 0.5 mm "2 to 3 mm"'],
    ['meter not read', 'read'],
    [
      'at 15.8 m left side thickness 5 mm',
      'Where round the trough it was read is said by the clock: `at 15.8 m clock 9:00 thickness 5 mm`, if it was half way up.',
    ],
    [
      'plate at 1.2 m right side thickness 1.9 mm',
      'Where round the trough it was read is said by the clock: `plate at 1.2 m clock 3:00 thickness 1.9 mm`, if it was half way up.',
    ],
    ['P4 thickness over 8 mm', 'P4 not seen "over 8 mm"'],
    ['P4 thickness > 8 mm', 'P4 not seen "over 8 mm"'],
    ['P4 less than 4 mm "pitted"', 'P4 not seen "less than 4 mm: pitted"'],
    ['at 14.2 m clock 5:00 thickness at least 8 mm', 'at 14.2 m clock 5:00 not seen "at least 8 mm"'],
    ['P7 thickness not read "no couplant"', 'P7 not seen "no couplant"'],
    ['P7 not measured, ice', 'P7 not seen "ice"'],
    ['P7 thickness n/a "no couplant"', 'P7 not seen "n/a: no couplant"'],
    ['P1 thickness 8 mm to 8.5 mm', 'P1 thickness 8.25 mm ± 0.25 mm "8 mm to 8.5 mm"'],
    ['P1 8.0-8.5 mm', 'P1 thickness 8.25 mm ± 0.25 mm "8.0 to 8.5 mm"'],
    [
      'P1 thickness 8.6 mm to 9 mm photo "a.png" "rough"',
      'P1 thickness 8.8 mm ± 0.2 mm "8.6 mm to 9 mm: rough" photo "a.png"',
    ],
    [
      'P2 thickness about 8.4 mm',
      'How sure a thickness is says its ±: `P2 thickness 8.4 mm ± 0.5 mm "about"`, if it is right to half a millimetre.',
    ],
    ['current not read "clamp flat"', 'finding motor "current not read: clamp flat"'],
    ['speed not read', 'finding drive "speed not read"'],
    ['zero-speed sensor loose at tail slight', 'finding zero-speed sensor at tail slight "loose"'],
    ['zero-speed sensor tape removed at tail', 'closed zero-speed sensor bypassed at tail "tape removed"'],
    ['level probe at Inlet bridged "wire"', 'level probe bypassed at Inlet "bridged: wire"'],
    [
      'blocked chute switch at Gate does not trip urgent',
      'blockage switch dead at Gate urgent "does not trip"',
    ],
    ['cable chafed at 4 m serious', 'cable damaged at 4 m serious "chafed"'],
    ['steel visible at 13.9 m clock 5', 'at 13.9 m clock 5:00 trough showing'],
    ['bare metal at P5', 'P5 trough showing'],
    ["green just showing at 14.2 m 5 o'clock", 'at 14.2 m clock 5:00 colour green'],
    ['turquoise showing at P5', 'P5 colour turquoise'],
    ['panel 5 run 1 sand coloured all over', 'panel 5 of run 1 colour sand "all over"'],
    ['P4 2nd colour showing left edge', 'P4 second colour showing "left edge"'],
    ['from 6 to 7.6 m clock 6 second colour', 'from 6 m to 7.6 m clock 6:00 second colour showing'],
    ['10.8 mm measured at P5', 'P5 thickness 10.8 mm'],
    ['P5 reads 10.8 mm left of bolt', 'P5 thickness 10.8 mm "left of bolt"'],
    ['P4 worn down to 4.5 mm', 'P4 thickness 4.5 mm'],
    ['P4 worn by 4.5 mm', 'finding at P4 "worn by 4.5 mm"'],
    ['joint gap 0 mm at 7.4 m "should be 12 mm"', 'finding at 7.4 m "joint gap 0 mm: should be 12 mm"'],
    ['P3 green not yet showing', 'finding at P3 "green not yet showing"'],
    ['P3 crack 40 mm', 'finding at P3 "crack 40 mm"'],
    ['looked from head end', 'view upstream'],
    ['view from the tail', 'view downstream'],
    ['looking against the flow', 'view upstream'],
    ['rpm 16.8', 'speed 16.8 rpm'],
    ['screw turns 16.8 rpm', 'speed 16.8 rpm'],
    [
      'colour turquoise at 5 m',
      'A reading says where round the trough it was taken: `at 5 m clock 6:00 colour turquoise`, if it was at the bottom; where a point lies, the point by its name says both.',
    ],
    [
      'bearing tail 71 degrees',
      'How hot it was is said with its unit: `tail bearing temperature 71 degC`, if it was in degrees Celsius.',
    ],
    ['pull cord tensioned', 'serviced pull cord tightened'],
    ['hold-down H2 new', 'serviced hold-down renewed at H2'],
    ['oil change gearbox', 'serviced gearbox oil changed'],
    ['new oil in gearbox, 4.5 l', 'serviced gearbox oil changed "4.5 l"'],
    ['topped up oil 0.5 l', 'serviced gearbox oil topped up "0.5 l"'],
    ['gearbox oil topped up "fitter" "1 l"', 'serviced gearbox oil topped up "fitter; 1 l"'],
    ['motor cable renewed', 'serviced cable renewed "motor"'],
    ['new sign at tail', 'serviced sign renewed at tail'],
    ['walkway grating ok again', 'closed walkway damaged "grating ok again"'],
    ['guard at drive put back same day', 'closed guard missing at drive "put back same day"'],
    ['estop works again at tail', 'closed emergency stop dead at tail "works again"'],
    [
      'bridge removed from interlock at H1',
      'closed interlock bypassed at H1 "bridge removed from interlock"',
    ],
    ['coupling rubber renewed', 'serviced coupling "rubber renewed"'],
    ['hold-down both shoes renewed at 9.5 m', 'serviced hold-down at 9.5 m "both shoes renewed"'],
    ['new hold-down loose at 4 m', 'hold-down loose at 4 m "new"'],
    ['pull cord to be tensioned', 'finding pull cord "to be tensioned"'],
    ['hatch 13 bit stiff', 'finding hatch "hatch 13 bit stiff"'],
    ['lid 7 new hinges', 'finding cover "lid 7 new hinges"'],
    ['lid 7 freed, new bolts M12', 'serviced cover "lid 7 freed, new bolts M12"'],
    ['2 bolts loose left 6.0, slack', 'bolts loose 2 at 6.0 m left side "slack"'],
    ['bolts loose 4 at 9.4, nipped up to 18', 'bolts loose 4 at 9.4 m "nipped up to 18"'],
    ['pad 12.0 half gone', 'finding hold-down at 12.0 m "half gone"'],
    ['pad 4.0 worn 6 mm', 'hold-down worn at 4.0 m "6 mm"'],
    ['greased tail brg', 'serviced tail bearing greased'],
    ['H13 ok', 'finding at H13 "ok"'],
    ['motor tripped 3x', 'finding motor "tripped 3 x"'],
    ['thrust bearing vibration 6.8 mm/s serious', 'finding thrust bearing serious "vibration 6.8 mm/s"'],
    ['gearbox oil topped 0.5 l', 'serviced gearbox oil topped up "0.5 l"'],
    ['oil gearbox ok', 'finding gearbox "oil gearbox ok"'],
    ['hum gearbox stopped by itself', 'closed gearbox noise "hum gearbox stopped by itself"'],
    ['gate slow, 40 s to shut (new 12)', 'finding gate "slow, 40 s to shut, new 12"'],
    ['weld at 5.8 looked at too - fine', 'finding at 5.8 m "weld looked at too, fine"'],
    ['trough pitted 10.2 - 10.4, 3 pits', 'finding trough from 10.2 m to 10.4 m "pitted, 3 pits"'],
    ['guard screws in', 'finding guard "screws in"'],
    ['sign for confined space back on', 'finding sign "for confined space back on"'],
    ['green ok at H6 and H13', 'finding "green ok at H6 and H13"'],
    ['black not seen anywhere', 'finding "black not seen anywhere"'],
    [
      'night shift: right side at 9.5 "thick as a coin"',
      'finding at 9.5 m right side "night shift: thick as a coin"',
    ],
    [
      'closed cable damaged at 8.7 m on 2025-10-02 "new"',
      'cable damaged at 8.7 m closed on 2025-10-02 "new"',
    ],
    [
      'hatch 13 switch taped up!! somebody bridged it',
      'interlock bypassed "hatch 13 interlock taped up somebody bridged it"',
    ],
    ['seal ordered', 'finding "seal ordered"'],
    ['2 men 2.5 h', 'finding "2 men 2.5 h"'],
    ['fill about half, sacks in the waste', 'finding "fill about half, sacks in the waste"'],
    ['tail plate worn 6 mm at tail slight "bronze"', 'finding at tail slight "tail plate worn 6 mm: bronze"'],
    ['cost 1140 EUR "liner"', '// cost 1140 EUR "liner"'],
    [
      'motor 52 deg, fine',
      'How hot it was is said with its unit: `motor temperature 52 degC "fine"`, if it was in degrees Celsius.',
    ],
    [
      'plate 5.1 at 10.3',
      'What is left of the steel says first where: `plate at 10.3 m thickness 5.1 mm`, if it was in mm.',
    ],
    ['changed gearbox oil 4.5 l', 'serviced gearbox oil changed "4.5 l"'],
    ['new gate seal at Gate', 'serviced gate seal renewed at Gate'],
    ['panel 3 of run 1 ripped 150 mm', 'panel torn 150 mm at panel 3 of run 1 "ripped"'],
    ['P1 steel', 'P1 trough showing'],
    ['P1 worn through to steel', 'P1 trough showing'],
    ['P1 dirty', 'finding at P1 "dirty"'],
    ['product plugged inlet', 'product blocked "product plugged inlet"'],
    ['product blocked at 3 m cleared', 'closed product blocked at 3 m "cleared"'],
    ['coupling worn', 'finding coupling "worn"'],
    ['guard loose at coupling slight "x"', 'guard loose at drive slight "coupling: x"'],
    ['black 0.8 to 2.6 full width nearly', 'from 0.8 m to 2.6 m colour black "full width nearly"'],
    ['panel torn at 4 m photo tear.png', 'panel torn at 4 m photo "tear.png"'],
    ['photo IMG_2231.jpg', 'photo "IMG_2231.jpg"'],
    [
      'P1 8.4 mm, P2 7.9 mm',
      'Each point has a line of its own: `P1 thickness 8.4 mm`, `P2 thickness 7.9 mm`.',
    ],
    ['P1 and P2 green', 'Each point has a line of its own: `P1 colour green`, `P2 colour green`.'],
    ['amps 15.9 full', 'current loaded 15.9 A'],
    ['not inspected from 3 m to 6 m', 'not seen from 3 m to 6 m'],
    [
      'no access past 15 m, ice',
      'Where nobody could look is said with `not seen`, from where to where: `not seen from 15 m to 18 m "ice"`, with the end of what was not seen.',
    ],
    ["hatch won't open", 'hatch stuck "won\'t open"'],
    ["hatch (upper) at 4 m doesn't open", 'hatch stuck at 4 m "upper, doesn\'t open"'],
    ["estop doesn't work at 3 m", 'emergency stop dead at 3 m'],
    ['panel #5 run 2 torn', 'panel torn at panel 5 of run 2'],
    ['cover loose @ 8 m', 'cover loose at 8 m'],
    ['P5 = 10.8 mm', 'P5 thickness 10.8 mm'],
    ['bolts (M10) loose 2 at 4 m', 'bolts loose 2 at 4 m "M10"'],
    ['estop at tail not working', 'emergency stop dead at tail'],
    ['mushroom button at 3 m did not stop', 'emergency stop dead at 3 m "did not stop"'],
    ['E-stop at head failed urgent', 'emergency stop dead at head urgent "failed"'],
    ['emergency rope at 6 m slack', 'pull cord slack at 6 m'],
    ['rope switch snapped at 6 m', 'pull cord broken at 6 m "snapped"'],
    ['interlock on cover 1 bridged', 'interlock bypassed "on cover 1 bridged"'],
    ['cover switch taped over at 4 m', 'interlock bypassed at 4 m "cover interlock taped over"'],
    ['wet material behind liner', 'material behind liner "wet"'],
    ['product jammed at inlet', 'product blocked "at inlet"'],
    ['3 covers loose at 8 m', 'cover loose at 8 m "3 covers"'],
    ['panel 5 run 2 loose', 'panel lifted at panel 5 of run 2 "loose"'],
    ['loose panel run 2 panel 5', 'panel lifted at panel 5 of run 2 "loose"'],
    ['motor cable crushed at 4 m', 'cable damaged at 4 m "motor cable crushed"'],
    ['chain guard fallen off', 'guard missing at drive "chain guard fallen off"'],
    ['hatch stuck tight at 4 m', 'hatch stuck at 4 m "tight"'],
    ['bearing tail noisy', 'tail bearing noise'],
    ['cover loose between 3 m and 4 m', 'cover loose from 3 m to 4 m'],
    ['14.2 m clock 5 panel torn', 'panel torn at 14.2 m clock 5:00'],
    ['panel gone pos. 14.2 m 5:30', 'panel missing at 14.2 m clock 5:30'],
    ['walkway grating loose at 4 m serious', 'finding walkway at 4 m serious "grating loose"'],
    ['stuffing box leaking at tail slight', 'finding at tail slight "stuffing box leaking"'],
    ['cover seized at 14.4 m', 'cover stuck at 14.4 m'],
    ['spiral flange bolts loose 2 at 10.4 m', 'spiral bolts loose 2 at 10.4 m'],
    ['flange bolts of the screw loose 2 at 10.4 m serious', 'spiral bolts loose 2 at 10.4 m serious'],
    ['no look 18 m to 20 m "no light"', 'not seen from 18 m to 20 m "no light"'],
    ['covers bent at 8.4 m', 'cover bent at 8.4 m'],
    ['closed covers bent at 8.4 m', 'closed cover bent at 8.4 m'],
    ['not seen cover jammed at 4 m', 'not seen cover stuck at 4 m'],
    ['cover cracked at 14.4 m serious "x"', 'finding cover at 14.4 m serious "cracked: x"'],
    ['hatch seized at H3 "hinge"', 'hatch stuck at H3 "hinge"'],
    ['tail bearing rattling at 0 m serious', 'tail bearing noise at 0 m serious "rattling"'],
    ['tail bearing rattling serious "x"', 'tail bearing noise serious "rattling: x"'],
    ['motor hot', 'finding motor "hot"'],
    ['water in trough at 0.5 m "100 mm deep"', 'finding trough at 0.5 m "water in trough: 100 mm deep"'],
    ['noise at 30 m "scrapes"', 'finding at 30 m "noise: scrapes"'],
    ['chain hoist stuck at 12 m', 'finding at 12 m "chain hoist stuck"'],
    ['product sticking at 38 m "80 mm crust"', 'finding at 38 m "product sticking: 80 mm crust"'],
    ['lifting point L2 missing plate', 'finding "lifting point L2 missing plate"'],
    ['drive plate bolts loose 2', 'finding drive plate "bolts loose 2"'],
    ['gauge checked "step block"', 'finding "gauge checked: step block"'],
    ['bolts missing 3 from 16 m to 17 m', 'read'],
    ['material behind liner from 17 m to 18.5 m slight "wet"', 'read'],
    ['trough at 4.2 m "ringing noise"', 'finding trough at 4.2 m "ringing noise"'],
    ['from 19 m to 26.4 m not seen', 'read'],
    ['at 14.2 m panel torn serious', 'panel torn at 14.2 m serious'],
    ['P1 colour green nearly', 'P1 colour green "nearly"'],
    ['weld cracked at 4 m', 'spiral weld cracked at 4 m'],
    ['no look 18 m to 20 m "no light"', 'not seen from 18 m to 20 m "no light"'],
    ['gauge US ± 0.2 mm', 'gauge ultrasonic ± 0.2 mm'],
    ['gearbox oil changed', 'serviced gearbox oil changed'],
    ['coupling renewed', 'serviced coupling renewed'],
    ['coupling aligned by "fitter"', 'serviced coupling aligned by "fitter"'],
    ['gate bent at Gate slight', 'finding gate at Gate slight "bent"'],
    ['spiral rubbing at 16 m on the left side', 'finding spiral at 16 m left side "rubbing"'],
    ['hatch missing bolts 2 at H2', 'finding hatch at H2 "missing bolts 2"'],
    ['P4 panel missing', 'panel missing at P4'],
    ['hold-down slack at 9.5 m', 'hold-down loose at 9.5 m'],
    ['trough weeping at 6 m "gasket"', 'trough leaking at 6 m "weeping: gasket"'],
    ['product jammed at 0.8 m "root ball"', 'product blocked at 0.8 m "root ball"'],
    ['motor hot 82 degC', 'motor temperature 82 degC "hot"'],
    ['tail bearing play 0.4 mm', 'finding tail bearing "play 0.4 mm"'],
    ['gearbox oil sweating slight', 'gearbox oil leak slight "oil sweating"'],
    ['oil leak at gearbox foot slight', 'gearbox oil leak slight "at gearbox foot"'],
    ['HeadGate leaks', 'gate leaking at HeadGate'],
    ['gate stiff MidGate slight', 'finding gate at MidGate slight "stiff"'],
    ['bolt loose 1 P4', 'bolts loose 1 at P4'],
    ['bolts missing 1 in panel 3 of run 2', 'bolts missing 1 at panel 3 of run 2'],
    ['bolts loose from 14 to 15.5 m, 4 of them', 'bolts loose 4 from 14 m to 15.5 m'],
    ['covers leaking from 8 to 10.5 m slight', 'cover leaking from 8 m to 10.5 m slight'],
    ['covers ok 8-10.5 m', 'finding cover from 8 m to 10.5 m "ok"'],
    ['panel gone 18.9 m urgent photo "a.png"', 'panel missing at 18.9 m urgent photo "a.png"'],
    ['panel lifted 4 mm at 5.2 m not worse', 'panel lifted 4 mm at 5.2 m "not worse"'],
    ['cover not leaking at 14 m', 'closed cover leaking at 14 m "not"'],
    ['closed guard of the drive "new hinge"', 'closed finding guard at drive "new hinge"'],
    ['closed finding fire bucket at 15 m', 'closed finding at 15 m "fire bucket"'],
    ['e-stop box cracked at 4 m', 'finding emergency stop at 4 m "box cracked"'],
    ['cable tray lid missing from 13 m to 14.5 m', 'finding cable from 13 m to 14.5 m "tray lid missing"'],
    ['junction box lid missing at 13 m', 'finding at 13 m "junction box lid missing"'],
    ['second colour showing at P1', 'P1 second colour showing'],
    ['8.4 mm at P1', 'P1 thickness 8.4 mm'],
    ['P8 n.s. cover on', 'P8 not seen cover on'],
    ['P6 red just showing', 'P6 colour red "just showing"'],
    ['gap at hold-down 17 m 14 mm', 'hold-down at 17 m gap 14 mm'],
    ['trough plate 4.6 m from outside 3.8 mm', 'plate at 4.6 m thickness 3.8 mm "from outside"'],
    ['plate 18.9 m 3.1 mm', 'plate at 18.9 m thickness 3.1 mm'],
    ['flight 3 m 69 mm', 'flight at 3 m depth 69 mm'],
    ['current 4.4 A empty 8.1 A loaded', 'current empty 4.4 A loaded 8.1 A'],
    ['not seen behind the patch at 18.9 m', 'not seen at 18.9 m "behind the patch"'],
    ['by day shift', 'by "day shift"'],
    ['view down', 'view downstream'],
    ['step 2 mm at 9.9 m "new panel proud"', 'finding at 9.9 m "step 2 mm: new panel proud"'],
    ['liner torn at 5 m serious', 'panel torn at 5 m serious'],
    ['P3 torn', 'finding at P3 "torn"'],
    ['P4: 8.4 mm', 'P4 thickness 8.4 mm'],
    ['P4 bare steel', 'P4 trough showing'],
    ['P4 worn through', 'P4 trough showing'],
    ['P5 not accessible', 'P5 not seen "not accessible"'],
    ['P5 no access', 'P5 not seen no access'],
    ['8.4 mm at 3.2 m clock 7:30', 'at 3.2 m clock 7:30 thickness 8.4 mm'],
    ['2 loose bolts at 16 m', 'bolts loose 2 at 16 m'],
    ['3 bolts gone panel 4 of run 1', 'bolts missing 3 at panel 4 of run 1'],
    ['hold down loose 9.5 m', 'hold-down loose at 9.5 m'],
    ['gate cylinder leaking oil at Gate', 'finding gate at Gate "cylinder leaking oil"'],
    ['hatch H2 seal gone', 'finding hatch at H2 "seal gone"'],
    ['gate leaking slightly at Gate', 'gate leaking slight at Gate'],
    ['flight worn to 60 mm at 12 m', 'flight at 12 m depth 60 mm "worn"'],
    ['low oil in gearbox', 'gearbox oil low'],
    ['blocked at 3 m', 'product blocked at 3 m'],
    ['nothing found', 'finding "nothing found"'],
    ['P1: 6.3 mm, green/black edge', 'P1 thickness 6.3 mm "green/black edge"'],
    ['P5: n/a', 'P5 not seen "n/a"'],
    ['P4 thickness 3.1 mm below condemn limit!', 'P4 thickness 3.1 mm "below condemn limit!"'],
    ["hatch at 4 m won't close serious", 'finding hatch at 4 m serious "won\'t close"'],
    ['spiral flange bolt loose at 15.6 m serious', 'spiral bolts loose 1 at 15.6 m serious'],
    ['panel 7 of run 2 green showing', 'panel 7 of run 2 colour green'],
    ['bolts loose 2 at 16.1 m and 1 at 17 m', 'bolts loose 2 at 16.1 m | bolts loose 1 at 17 m'],
    ['h-d 9.5 m gap 12 mm', 'hold-down at 9.5 m gap 12 mm'],
    ['P1 thk 7.5 mm', 'P1 thickness 7.5 mm'],
    [
      'P1 clock 7:00 thickness 8.7 mm',
      'A point has its clock position where it is declared: where that is the one, `P1 thickness 8.7 mm`; another spot is said by its chainage, `at … clock 7:00 thickness 8.7 mm`, with that of P1 in place of `…`.',
    ],
    ['motor current 6.9 A loaded, 4.0 A empty', 'current empty 4.0 A loaded 6.9 A'],
    ['tail bearing temp. 47', 'Its unit is missing: `tail bearing temperature 47 degC`, if that was it.'],
    ['hold-down 18.5 m right loose, hand tight', 'hold-down loose at 18.5 m "right, hand tight"'],
    ['gate 1 moves slowly', 'finding gate "gate 1 moves slowly"'],
    ['gate 2 leaks slightly when closed', 'gate leaking slight "gate 2 when closed"'],
    ['cover leaking at 13.1 m not looked at', 'not seen cover leaking at 13.1 m "not looked"'],
    ['spiral weld at 7.4 m holds, no crack to see', 'finding spiral at 7.4 m "weld holds, no crack to see"'],
    ['spiral weld at 7.4 m cracked, 15 mm', 'spiral weld cracked at 7.4 m "15 mm"'],
    ['panel cracked at 12.6 m from bolt hole, 60 mm', 'panel cracked 60 mm at 12.6 m "from bolt hole"'],
    ['motor temperature 64 degC with clean fan', 'motor temperature 64 degC "with clean fan"'],
    ['seized cover at 15.3 m freed', 'closed cover stuck at 15.3 m "cover freed"'],
    ['bolts loose 2 at 4 m to be tightened', 'bolts loose 2 at 4 m "to be tightened"'],
    ['colour green everywhere', 'finding "colour green everywhere"'],
    ['joint 9.7 m 7 mm', 'joint open 7 mm at 9.7 m'],
    ['joint at 12.1 m: 5 mm', 'joint open 5 mm at 12.1 m'],
    ['no sign of product behind the liner', 'finding liner "no sign of product behind the liner"'],
    ['hold-down at 8 m left loose', 'hold-down loose at 8 m "left"'],
    ['ok', 'finding "ok"'],
    ['bolts loose 4 at 31 m on panel 2 of run 3', 'bolts loose 4 at 31 m "on panel 2 of run 3"'],
    ['covers bent at 8.4 m to 10.8 m', 'cover bent at 8.4 m to 10.8 m'],
    ['panel pitted 3 mm at 4 m', 'finding panel at 4 m "pitted 3 mm"'],
    ['gearbox quiet', 'finding gearbox "quiet"'],
    ['motor noise gone', 'closed motor noise "gone"'],
    ['cover leaking at 14 m gone', 'closed cover leaking at 14 m "gone"'],
    ['brace at 6.7 m missing', 'brace missing at 6.7 m'],
    ['hold-down shoe worn at 12.5 m "4 mm off"', 'hold-down worn at 12.5 m "shoe: 4 mm off"'],
    ['hatch H1 stuck', 'hatch stuck at H1'],
    ['slide gate MidGate stuck slight "dry"', 'gate stuck at MidGate slight "dry"'],
    ['panel 8 of run 3 lifted 5 mm slight', 'panel lifted 5 mm at panel 8 of run 3 slight'],
    ['panel edge lifted 4 mm at 5.2 m slight', 'panel lifted 4 mm at 5.2 m slight "edge"'],
    ['cover leak 14 m', 'cover leaking at 14 m'],
    ['hold-down ok 9.5 m', 'finding hold-down at 9.5 m "ok"'],
    ['panel lifted 8 mm 22.4 m', 'panel lifted 8 mm at 22.4 m'],
    [
      'running hours 14 h/day',
      'How long a machine runs is a record of its own, outside the inspection: `duty DG1 from 2026-03-14 14 h/day`.',
    ],
    [
      'P4 trough not showing',
      'That no steel shows is said by what does: the colour of the layer, `P1 colour teal`, or the thickness left; `not seen` where nobody could look.',
    ],
    ['bolts loose 5 at 6 m "tightened" closed on 2023-11-13', 'read'],
    ['not seen bolts loose at 11.8 m buried', 'not seen bolts loose at 11.8 m "buried"'],
    ['P1 red showing', 'P1 colour red'],
    ['A5 yellow', 'A5 colour yellow'],
    ['spiral cracked at 20 m slight', 'read'],
    ['trough leaking at 7 m slight', 'read'],
    ['closed hold-down bent at 17 m', 'read'],
    ['coupling noise slight', 'read'],
    ['cover bent at 4 m', 'read'],
    ['tail bearing flooded serious', 'read'],
    ['thrust bearing seal leaking', 'read'],
    ['finding hatch at 4 m "stiff"', 'read'],
  ])('%s', (line, expected) => expect(answer(line, inspect)).toBe(expected));
});

test.each([
  ['to Spiral400', record('screw change'), 'screw Spiral400'],
  ['"it was bent"', record('screw change'), 'finding "it was bent"'],
  ['serviced KS1 2024-12-13 motor renewed by "electrician"', asIs, 'read'],
  ['serviced KS1 2024-12-13 tail bearing seal renewed', asIs, 'read'],
  ['serviced KS1 2024-12-13 coupling aligned by "fitter"', asIs, 'read'],
  ['serviced KS1 2024-12-13 motor bearings renewed', asIs, 'read'],
  ['serviced KS1 2024-12-13 gearbox thrust bearing renewed', asIs, 'read'],
  ['serviced KS1 2024-12-13 closed gate stuck at Gate "cylinder renewed" by "fitter"', asIs, 'read'],
  ['hold-down renewed at 17.5 m', record('reline'), 'serviced hold-down renewed at 17.5 m'],
  ['gate seal renewed', record('reline'), 'serviced gate seal renewed'],
  ['reline run 1 panels 5 to 7', record('reline'), 'scope panels 5 to 7 of run 1'],
  [
    'upper half relined 9.1 to 16.6 with MakeB',
    record('reline'),
    'What was relined is its `scope`, because without one the whole liner counts as new: `scope from 9.1 m to 16.6 m` and `liner MakeB`, a line each. What else there is to say of it stands in a `finding "…"`.',
  ],
  ['meter changed DG1 2024-03-04 old 8120 h new 0 h', asIs, 'meter change DG1 2024-03-04 from 8120 h to 0 h'],
  [
    'new hour meter DG1 14.11.2023 old 5210 new starts 0',
    asIs,
    'meter change DG1 14.11.2023 from 5210 h to 0 h',
  ],
  ['DG1 2022-05-31 drain rodded, 12 forks', asIs, 'serviced DG1 2022-05-31 drain "rodded, 12 forks"'],
  [
    'correction DG1 2024-03-20 meter on 2024-03-14 was 6430 h',
    asIs,
    'correction DG1 2024-03-20 meter read on 2024-03-14 6430 h',
  ],
  [
    'inlet PressChute at 0.8 m to 1.6 m from above',
    machineLine,
    '// inlet PressChute at 0.8 m to 1.6 m from above',
  ],
  ['drain at 0.2 m ball valve 2 in', machineLine, 'drain at 0.2 m "ball valve 2 in"'],
  [
    'fixed with clamp strips along both top edges',
    (line) => `liner Ten {\n  ${line}\n}\n`,
    'fixed by "clamp strips along both top edges"',
  ],
  ['clamp strips', (line) => `liner Ten {\n  ${line}\n}\n`, 'fixed by "clamp strips"'],
  ['gives off wood dust and carbon monoxide', machineLine, 'gives off "wood dust", "carbon monoxide"'],
  ['spare 1 gate "wiper"', (line) => `job J1 {\n  ${line}\n}\n`, 'spare 1 "gate wiper"'],
  ['spare "gate wiper"', (line) => `job J1 {\n  ${line}\n}\n`, 'read'],
  [
    'break Gate at 8.4 m to 9 m slide gate driven by air plate G1',
    machineLine,
    'break Gate at 8.4 m to 9 m slide gate driven by air "plate G1"',
  ],
  [
    'break Inlet2 at 2 m to 3 m inlet from above',
    machineLine,
    'break Inlet2 at 2 m to 3 m inlet "from above"',
  ],
  [
    'access South at 4 m to 8 m scaffold hired "by the week"',
    machineLine,
    'access South at 4 m to 8 m scaffold "hired: by the week"',
  ],
  [
    'cover C1 at 1 m to 2 m mass 16 kg two handles',
    machineLine,
    'cover C1 at 1 m to 2 m mass 16 kg "two handles"',
  ],
  ['no liner from 6.2 m to 6.9 m', machineLine, 'break Bare at 6.2 m to 6.9 m no liner'],
  ['unlined at 6.2 m to 6.9 m "slotted"', machineLine, 'break Bare at 6.2 m to 6.9 m no liner "slotted"'],
  ['break Drain at 0 m to 3 m', machineLine, 'break Drain at 0 m to 3 m no liner'],
  ['screen Sieve at 7 m to 7.5 m', machineLine, 'break Sieve at 7 m to 7.5 m no liner'],
  [
    'on the shelf 2 clips "left pattern" for KS8 counted 2026-11-02',
    plantLine,
    'on the shelf 2 hold-down "clips: left pattern" for KS8 counted 2026-11-02',
  ],
  [
    'on the shelf 14 plastic plugs counted 2026-11-02 "M8"',
    plantLine,
    'on the shelf 14 bolts "plastic plugs" counted 2026-11-02 "M8"',
  ],
  [
    'ordered gate wiper 1 on 2026-11-12 arrives 2026-12-04',
    plantLine,
    'ordered 1 gate "wiper" on 2026-11-12 arrives 2026-12-04',
  ],
  ['ordered 1 gate "wiper" for KS8 on 2026-11-12 arrives 2026-12-04', plantLine, 'read'],
  ['ordered Ten 1 panel on 2026-11-12 arrives 2027-01-08', plantLine, 'read'],
  ['on the shelf Ten 1 offcut 1400 mm counted 2026-10-20', plantLine, 'read'],
  [
    'on the shelf 1 offcut Ten 1400 mm counted 2026-10-20',
    plantLine,
    'on the shelf Ten 1 offcut length 1400 mm counted 2026-10-20',
  ],
  [
    'ordered KS8 2024-07-08 Twelve 3 panels cost 3180 EUR "two came"',
    plantLine,
    'An order names the liner, how many, and the day they are promised for: `ordered Twelve 3 panels on 2024-07-08 arrives …`; for which machine (`KS8`) and what it costs, stands behind it in quotes. What came since is counted `on the shelf`.',
  ],
  ['drain at 0.1 m "bung, two inch"', machineLine, 'read'],
  ['hopper at 0.4 m to 2.2 m volume 2.4 m3 "open top, grating bars"', machineLine, 'read'],
  ['hopper from 0.4 m to 2.2 m volume 2.4 m3', machineLine, 'hopper at 0.4 m to 2.2 m volume 2.4 m3'],
  ['hopper 2.4 m3 at 0.4 m to 2.2 m', machineLine, 'hopper at 0.4 m to 2.2 m volume 2.4 m3'],
  [
    'hopper at 0.4 m to 2.2 m open top 2.4 m3',
    machineLine,
    'hopper at 0.4 m to 2.2 m volume 2.4 m3 "open top"',
  ],
  ['feed hopper at 0.4 m to 2.2 m', machineLine, 'hopper at 0.4 m to 2.2 m "feed hopper"'],
  ['bunker B1 at 0.4 m to 2.2 m', machineLine, 'hopper B1 at 0.4 m to 2.2 m'],
  ['drain blocked at 0.1 m', record('inspection'), 'finding drain at 0.1 m "blocked"'],
  ['hopper bridged serious', record('inspection'), 'finding hopper serious "bridged"'],
  ['serviced hopper liner renewed', record('inspection'), 'serviced hopper "liner renewed"'],
  ['pad 12.0 new', record('reline'), 'serviced hold-down renewed at 12.0 m'],
  ['serviced DG1 2024-06-17 joint closed at 6 m', asIs, 'serviced DG1 2024-06-17 closed joint open at 6 m'],
  [
    'order 4 panels TwoLayer15 2022-10-10',
    asIs,
    'What is bought stands in the `plant`, with the day it is promised for: `ordered TwoLayer15 4 panels on 2022-10-10 arrives …`, with that day in place of `…`.',
  ],
  [
    'scope panel 4 of run 1 and panel 1 of run 3',
    record('reline'),
    'scope panel 4 of run 1 | scope panel 1 of run 3',
  ],
  ['liner TwoLayer12 lot "B7"', record('reline'), 'liner TwoLayer12 | finding liner "lot: B7"'],
  [
    'fitted panel 1 of run 1 3480 mm',
    record('reline'),
    'finding panel at panel 1 of run 1 "fitted, length 3480 mm"',
  ],
  [
    'old panel at 7 m not measured "went into the skip"',
    record('reline'),
    'finding liner at 7 m "old panel not measured: went into the skip"',
  ],
  [
    'serviced DG1 from 2022-06-21 to 2022-06-22 gearbox oil changed',
    asIs,
    'serviced DG1 2022-06-22 gearbox oil changed "from 2022-06-21 to 2022-06-22"',
  ],
  [
    'drive change DG1 2023-02-01 speed 13 rpm to 14 rpm by "fitter"',
    asIs,
    'drive change DG1 2023-02-01 speed 14 rpm by "fitter" "was 13 rpm"',
  ],
  [
    'correction DG1 2022-04-01 P1 read on 2022-03-21 thickness 8.8 mm to 9.0 mm',
    asIs,
    'correction DG1 2022-04-01 P1 read on 2022-03-21 thickness 8.9 mm ± 0.1 mm "8.8 mm to 9.0 mm"',
  ],
  [
    'correction DG1 2023-10-01 reline read on 2023-09-05 meter 1190 h by "x"',
    asIs,
    'correction DG1 2023-10-01 meter read on 2023-09-05 1190 h by "x"',
  ],
  ['correction DG1 2022-04-01 all read on 2022-03-21 does not count by "x"', asIs, 'read'],
  [
    'outage DG1 2022-12-05 to 2022-12-09 "strike"',
    asIs,
    'That a machine stood still shows in its meter: no line is needed. Where it counts for a forecast, it is a duty of none: ' +
      '`duty DG1 from 2022-12-05 0 h/week "strike"` and `duty DG1 from 2022-12-10 … h/week` with its hours from then on in place of `…`. ' +
      'A stop that is planned is an `outage` of the plant.',
  ],
  ['serviced DG1 2026-01-02 spiral at 5.8 m by "welder" "ground out, welded"', asIs, 'read'],
  [
    'serviced DG1 2026-01-02 closed spiral end gap at tail by "fitter"',
    asIs,
    'serviced DG1 2026-01-02 closed finding spiral at tail "end gap" by "fitter"',
  ],
  ['new liner measured 12.0 mm', record('reline'), 'thickness 12.0 mm'],
  [
    'pull cord tensioned DG1 2026-01-02 by "fitter"',
    asIs,
    'serviced DG1 2026-01-02 pull cord tightened by "fitter"',
  ],
  ['2026-01-02 DG1 gearbox oil changed', asIs, 'serviced DG1 2026-01-02 gearbox oil changed'],
  [
    'serviced DG1 2026-01-02 walkway grating ok again',
    asIs,
    'serviced DG1 2026-01-02 closed walkway damaged "grating ok again"',
  ],
  ['hatch seized at 4 m serious "x"', record('reline'), 'hatch stuck at 4 m serious "x"'],
  ['drive guard gone urgent', record('screw change'), 'guard missing at drive urgent'],
  ['flight at 22 m depth 120 mm', record('screw change'), 'read'],
  [
    'serviced KS1 2024-10-16 spiral weld repaired at 16.4 m by "coded welder"',
    asIs,
    'serviced KS1 2024-10-16 spiral at 16.4 m "weld repaired" by "coded welder"',
  ],
  [
    'serviced DG1 2026-01-02 LowerGate cylinder renewed by "x"',
    asIs,
    'serviced DG1 2026-01-02 gate at LowerGate "cylinder renewed" by "x"',
  ],
  [
    'serviced DG1 2026-01-02 finding switch at H1 "new switch"',
    asIs,
    'serviced DG1 2026-01-02 at H1 "switch: new switch"',
  ],
  [
    'serviced DG1 2026-01-02 by "fitter" finding gate Gate "ground flush"',
    asIs,
    'serviced DG1 2026-01-02 gate at Gate "ground flush" by "fitter"',
  ],
  [
    'serviced DG1 2026-01-02 closed finding fire bucket at 15 m "refilled"',
    asIs,
    'serviced DG1 2026-01-02 closed finding at 15 m "fire bucket: refilled"',
  ],
  [
    'slide gate MidGate at 13.0 m to 13.4 m driven by air',
    machineLine,
    'break MidGate at 13.0 m to 13.4 m slide gate driven by air',
  ],
  ['feed CentrifugeA at 0.2 m to 0.8 m', machineLine, 'break CentrifugeA at 0.2 m to 0.8 m inlet'],
  ['break Feed at 0 m to 0.3 m', machineLine, 'break Feed at 0 m to 0.3 m inlet'],
  ['access Walk at 4 m to 12 m walkway', machineLine, 'access Walk at 4 m to 12 m platform'],
  ['drive at head 5.5 kW 16 rpm', machineLine, 'drive at head power 5.5 kW speed 16 rpm'],
  ['speed GW1 from 2024-03-04 14 rpm "turned up"', asIs, 'duty GW1 from 2024-03-04 speed 14 rpm "turned up"'],
])('outside one: %s', (line, around, expected) => expect(answer(line, around)).toBe(expected));

test.each(['P6 thickness 5.0 mm by eye'])('what would become another thing has no mend: %s', (line) =>
  expect(parseText(inspect(line)).slips.map(({ mend }) => mend)).toEqual([undefined]),
);

test('a line that begins with a number is not taken for the rest of the broken line above it', () => {
  const { slips } = parseText(inspect('hold-down loose at 8 m left\n  2 bolts loose at P4'));
  expect(slips.map(({ mend }) => mend?.text)).toEqual(['left side', 'bolts loose 2']);
});

test.each([
  ['look DG1 2023-08-22 4590 h {', 'inspection DG1 2023-08-22 meter 4590 h {'],
  ['panels swapped DG1 date 2024-03-04 meter 5000 h {', 'panels moved DG1 2024-03-04 meter 5000 h {'],
  ['relined DG1 on 2024-03-04 5000 h {', 'reline DG1 2024-03-04 meter 5000 h {'],
])('a record by another name: %s', (heading, meant) => {
  const text = `${heading}\n}\n`;
  const [slip] = parseText(text).slips;
  const { start = 0, end = 0, text: put = '' } = slip?.mend ?? {};
  expect((text.slice(0, start) + put + text.slice(end)).split('\n')[0]).toBe(meant);
});

test('no line is offered that says what nobody said', () => {
  const [slip] = parseText(record('reline')('old panel at 12.6 m "crack 110 mm long"')).slips;
  expect(slip?.mend?.text ?? '').not.toContain('worn through');
  for (const line of ['coupling worn', 'panel worn at 4 m', 'P3 worn badly', 'gate half closed at Gate'])
    expect(answer(line, inspect)).not.toMatch(/^(?:closed|.*worn through)/);
});

test.each(['patch run 1 at 4.9 m by Welders', 'patch at 4.9 m'])('in an order: %s', (line) => {
  const [slip] = parseText(`job J {\n  conveyor DG1\n  order {\n    ${line}\n  }\n}\n`).slips;
  expect(slip?.message).toBe(
    'A place is patched as the stretch that the plate covers: `patch from 4.6 m to 5.2 m`.',
  );
});

describe('a short line that lacks something', () => {
  const told = (text: string): string => parseText(text).slips[0]?.message ?? 'read';
  const order = (line: string): string => `job J {\n  conveyor DG1\n  order {\n    ${line}\n  }\n}\n`;
  const plantLine = (line: string): string => `plant Tarnholt {\n  ${line}\n}\n`;

  test.each([
    ['photo lost', 'inspection', 'finding "photo lost"'],
    ['rest not seen, in a hurry', 'inspection', 'finding "rest not seen, in a hurry"'],
    ['P6 not seen under material', 'inspection', 'P6 not seen "under material"'],
    ['P6 not found', 'inspection', 'P6 not seen "not found"'],
    ['crew B', 'reline', 'by "crew B"'],
    ['by "crew 3" "moved here later"', 'inspection', 'by "crew 3" | finding "moved here later"'],
    ['greased', 'inspection', 'finding "greased"'],
    ['gauge ultrasonic 2 ± 0.2 mm', 'inspection', 'gauge ultrasonic ± 0.2 mm | finding "gauge 2"'],
    ['flight bent at 2.4 m', 'inspection', 'spiral bent at 2.4 m'],
    ['seal of tail bearing drips', 'inspection', 'tail bearing seal leaking "seal of tail bearing drips"'],
    ['zero-speed sensor dead, did not trip', 'inspection', 'zero-speed sensor dead "did not trip"'],
    ['cover from WB1 put on at 20.4 m', 'inspection', 'finding cover at 20.4 m "from WB1 put on"'],
    [
      'P4 blue shows round the bolt heads',
      'inspection',
      'finding bolts at P4 "blue shows round the bolt heads"',
    ],
    [
      'right half of panel 2 of run 1 from 3.5 m to 5 m',
      'reline',
      'scope from 3.5 m to 5 m | finding panel from 3.5 m to 5 m "right half of panel 2 of run 1"',
    ],
  ])('%s, in a record of %s', (line, head, meant) => expect(answer(line, record(head))).toBe(meant));

  test.each([
    ['top bearing noisy', '`thrust bearing noise`, at the other end the tail bearing, `tail bearing noise`'],
    ['upper bearing 71 degC', '`thrust bearing temperature 71 degC`'],
    ['spiral 448 at 9 m', '`flight at 9 m outside diameter 448 mm`, if it was in mm'],
    ['flight worn at 2 m, 460 to 448', '`flight at 2 m outside diameter 448 mm`, if it was in mm'],
  ])('what is lacking is asked: %s', (line, shown) => {
    expect(told(record('inspection')(line))).toContain(shown);
    expect(parseText(record('inspection')(line)).slips[0]?.mend).toBeUndefined();
  });

  test.each([
    ['old panel 2 mm', record('reline'), '`old panel at P5 thickness 2 mm`'],
    [
      'test run wet takes 1 h',
      order,
      '`run empty takes 1 h "wet"` or, with product, `run loaded takes 1 h "wet"`',
    ],
    ['other work at 6.2 m by Weld takes 2 h "grind"', order, '`other work from … to …` around 6.2 m'],
    [
      'ordered DG1 2024-07-08 Twelve 3 panels cost 3180 EUR',
      asIs,
      '`ordered Twelve 3 panels on 2024-07-08 arrives …`',
    ],
    [
      'correction DG1 2026-01-19 meter change 2023-03-06 to 40 h "not from nought"',
      asIs,
      'A meter change stays as it was written, and what it lacks is one more of that day, from the hours that it says to those that are right: ' +
        '`meter change DG1 2023-03-06 from 0 h to 40 h "…"`, where it says `to 0 h`; where the hours of the old meter are wrong, from the right ' +
        'ones to those that it says. The two are taken together.',
    ],
    [
      'correction DG1 2024-09-25 P1 thickness before 2024-09-23 all in doubt "plywood"',
      asIs,
      '`correction DG1 2024-09-25 P1 read on 2024-09-23 does not count by "…" "plywood"`',
    ],
  ])('and in other blocks: %s', (line, around, shown) => expect(told(around(line))).toContain(shown));

  test.each([
    [
      'drive change DG1 2023-04-03 frequency converter 30 Hz to 50 Hz speed 12 rpm by "electrician"',
      asIs,
      'drive change DG1 2023-04-03 speed 12 rpm by "electrician" "frequency converter 30 Hz to 50 Hz"',
    ],
    [
      'drive change DG1 2023-04-03 frequency converter fitted by "electrician"',
      asIs,
      'serviced DG1 2023-04-03 motor "frequency converter fitted" by "electrician"',
    ],
    [
      'serviced DG1 2026-04-13 thrust bearing grease lithium instead of calcium',
      asIs,
      'serviced DG1 2026-04-13 thrust bearing greased "lithium instead of calcium"',
    ],
    [
      'serviced DG1 2025-02-10 interlock closed interlock bypassed at H1 "wire taken out"',
      asIs,
      'serviced DG1 2025-02-10 closed interlock bypassed at H1 "wire taken out"',
    ],
    [
      'patch DG1 2023-01-16 at 5 m to 5.5 m thickness 12 mm plastic sheet screwed with plugs by "crew 2" "4.5 h"',
      asIs,
      'serviced DG1 2023-01-16 panel from 5 m to 5.5 m "patch 12 mm plastic sheet screwed with plugs: 4.5 h" by "crew 2"',
    ],
    [
      'patch DG1 2023-01-16 PE sheet 10 mm glued from 5 m to 5.5 m',
      asIs,
      'serviced DG1 2023-01-16 panel from 5 m to 5.5 m "patch PE sheet 10 mm glued"',
    ],
    [
      'on the shelf 2 clips "hold-down clip, left pattern" for DG1 counted 2026-11-02',
      plantLine,
      'on the shelf 2 hold-down "clips: hold-down clip, left pattern" for DG1 counted 2026-11-02',
    ],
    [
      'on the shelf 14 plastic plugs counted 2026-11-02 "M8"',
      plantLine,
      'on the shelf 14 bolts "plastic plugs" counted 2026-11-02 "M8"',
    ],
  ])('or is offered: %s', (line, around, meant) => expect(answer(line, around)).toBe(meant));

  test.each([
    ['DG1 2022-03-15 "some day in March" {', 'DG1 2022-03-15 {\n  finding "some day in March"'],
    ['DG1 2022-03-15 meter dead {', 'DG1 2022-03-15 meter not read {\n  finding "meter dead"'],
  ])('what is told in a heading goes inside: %s', (heading, meant) => {
    const text = `inspection ${heading}\n  P1 thickness 8 mm\n}\n`;
    const [slip] = parseText(text).slips;
    const mended = slip?.mend && text.slice(0, slip.mend.start) + slip.mend.text + text.slice(slip.mend.end);
    expect(mended).toBe(`inspection ${meant}\n  P1 thickness 8 mm\n}\n`);
  });

  test('a reading by eye is shown with its own ±', () =>
    expect(told(record('inspection')('P1 thickness 11 mm by eye'))).toContain(
      '`P1 thickness 11 mm ± 1 mm "by eye"`',
    ));
});

describe('what a conveyor has once is answered with what to do where it has two', () => {
  const told = (text: string): string => parseText(text).slips[0]?.message ?? 'read';
  const jobLine = (line: string): string => `job J {\n  ${line}\n}\n`;

  test.each([
    'incline 25 deg run above Gate',
    'incline 0 deg from 0 m to 8.6 m',
    'incline 25 deg at Gate to 19.6 m',
    'incline 3 deg "level run"',
  ])('%s', (line) => {
    const message = told(machineLine(line));
    expect(message).toContain('has one incline: what it carries');
    expect(message).toContain(`\`${line.split(' ').slice(0, 3).join(' ')}\` if it is this one`);
    expect(message).toContain('are two conveyors');
    expect(parseText(machineLine(line)).slips[0]?.mend).toBeUndefined();
  });

  test.each([
    'screw Spiral355Steep run above Gate',
    'screw Spiral355Steep from 8.6 m to 19.6 m',
    'drive at head power 7.5 kW speed 22 rpm run above Gate',
    'drive 2 at head power 7.5 kW speed 22 rpm',
  ])('%s is kept as a comment', (line) => {
    expect(told(machineLine(line))).toContain('are two conveyors');
    expect(answer(line, machineLine)).toBe(`// ${line}`);
  });

  test.each([
    'change screw from 8.6 m to 19 m to S2 bolted joints',
    'change screw to S2 from 8.6 m to 19 m bolted joints',
  ])('%s', (line) => {
    expect(told(jobLine(line))).toContain('`change screw to S2 bolted joints`');
    expect(told(jobLine(line))).toContain('`scope from 8.6 m to 19 m`');
  });

  test.each([
    ['current loaded 5.9 A at tail "drive 1"', 'finding motor at tail "current loaded 5.9 A: drive 1"'],
    ['current at tail loaded 5.9 A', 'finding motor at tail "current loaded 5.9 A"'],
    ['amps 6 full at head', 'finding motor at head "amps 6 full"'],
    ['speed 12 rpm at tail', 'finding drive at tail "speed 12 rpm"'],
    ['current empty 4 A loaded 9 A at drive "cold"', 'current empty 4 A loaded 9 A "cold"'],
  ])('of one of two drives: %s', (line, meant) => expect(answer(line, record('inspection'))).toBe(meant));
});

describe('a reading in doubt keeps its doubt, and no full weight', () => {
  test.each([
    ['P4 thickness 8 mm doubtful', 'P4 thickness 8 mm ± 0.5 mm "doubtful"'],
    ['P4 8 mm?', 'P4 thickness 8 mm ± 0.5 mm "?"'],
    ['P5 perhaps 5 mm "gauge low"', 'P5 thickness 5 mm ± 0.5 mm "perhaps: gauge low"'],
    ['probably P5 5 mm', 'P5 thickness 5 mm ± 0.5 mm "probably"'],
    [
      'at 6.2 m clock 5:00 8 mm in doubt "wet"',
      'at 6.2 m clock 5:00 thickness 8 mm ± 0.5 mm "in doubt: wet"',
    ],
    ['plate at 3 m thickness 3 mm not sure', 'plate at 3 m thickness 3 mm ± 0.5 mm "not sure"'],
    [
      'from 2 m to 3 m clock 6:00 thickness 8 mm estimated',
      'from 2 m to 3 m clock 6:00 thickness 8 mm ± 0.5 mm "estimated"',
    ],
    ['P5 left side 5 mm, probably', 'at … clock 9:00 thickness 5 mm "probably"'],
    ['P2 left half 6 mm', 'at … clock 9:00 thickness 6 mm "left half"'],
  ])('%s', (line, shown) => {
    const [slip] = parseText(record('inspection')(line)).slips;
    expect(slip?.message).toContain(`\`${shown}\``);
    expect(slip?.mend).toBeUndefined();
  });

  test('a rough surface is no doubt', () =>
    expect(answer('P4 thickness 8.4 mm rough surface', record('inspection'))).toBe(
      'P4 thickness 8.4 mm "rough surface"',
    ));
});

describe('what is to come', () => {
  test.each([
    ['look again after 100 h', record('reline'), 'next look after 100 h'],
    ['next look in 4 weeks', record('reline'), 'next look after 4 weeks'],
    ['next inspection due 2026-01-10', record('inspection'), 'next look by 2026-01-10'],
    [
      'inspect again before 2026-01-10 by "inspector"',
      record('inspection'),
      'next look by 2026-01-10 by "inspector"',
    ],
    ['next look after 100 h for the bolts', record('reline'), 'next look after 100 h "for the bolts"'],
    ['look again in 4 weeks by "fitter"', record('inspection'), 'next look after 4 weeks by "fitter"'],
    ['check P4 again after 200 h', record('inspection'), 'next look after 200 h "check P4 again"'],
    [
      're-check hold-down at 9.5 m in 2 weeks',
      record('inspection'),
      'next look after 2 weeks "re-check hold-down at 9.5 m"',
    ],
    ['next look "running in" after 100 h', record('reline'), 'next look after 100 h "running in"'],
    ['next look urgent by 2026-01-10', record('inspection'), 'next look by 2026-01-10 "urgent"'],
    [
      'must not run until welded serious',
      record('inspection'),
      'finding serious "must not run until welded"',
    ],
  ])('%s', (line, around, offer) => expect(answer(line, around)).toBe(offer));

  test.each(['machine not to be run before repair', 'do not run', 'must not run until welded'])(
    'how bad it is that it must not run is for its author to say: %s',
    (line) => {
      const [slip] = parseText(record('inspection')(line)).slips;
      expect(slip?.message).toContain(`\`finding urgent "${line}"\``);
      expect(slip?.mend).toBeUndefined();
    },
  );

  test('a look is no step of the work, and no time is asked of it', () => {
    const [slip] = parseText(
      'job J {\n  conveyor DG1\n  order {\n    look again after 100 h\n  }\n}\n',
    ).slips;
    expect(slip?.message).toContain('`next look after 100 h` in its `reline`');
    expect(slip?.mend).toBeUndefined();
  });

  test.each(['renew gate Discharge', 'change gate Discharge'])('a gate is steps of the order: %s', (line) => {
    const [slip] = parseText(`job J {\n  conveyor DG1\n  ${line}\n}\n`).slips;
    expect(slip?.message).toContain('`gate off Discharge`, `gate on Discharge`');
    expect(slip?.mend).toBeUndefined();
  });
});

describe('a step in words of one’s own', () => {
  const order = (line: string): string => `job J {\n  conveyor DG1\n  order {\n    ${line}\n  }\n}\n`;
  test.each([
    ['measure plate at 15 m by Own', 'other work by Own takes … "measure plate at 15 m"'],
    [
      'lift screw from 14 m to 24.4 m by Contract using Lift',
      'other work from 14 m to 24.4 m by Contract using Lift takes … "lift screw"',
    ],
    ['lower screw by Contract', 'other work by Contract takes … "lower screw"'],
    ['vent air V7', 'other work takes … "vent air V7"'],
    ['release spring at drive', 'other work takes … "release spring at drive"'],
    ['M1: measure plate takes 2 h', 'M1: other work takes 2 h "measure plate"'],
    ['weld bracket on by Own after S1', 'other work by Own after S1 takes … "weld bracket on"'],
  ])('%s is shown as other work, and nothing is made up for it', (line, shown) => {
    const [slip] = parseText(order(line)).slips;
    expect(slip?.message).toContain(`\`${shown}\``);
    expect(slip?.mend).toBeUndefined();
  });

  test.each([
    ['empty hopper takes 1 h', 'empty takes 1 h "hopper"'],
    ['clean drain by A takes 1 h', 'clean by A takes 1 h "drain"'],
  ])('a thing is no crew: %s', (line, meant) => {
    const text = order(line);
    const [slip] = parseText(text).slips;
    const mended = slip?.mend && text.slice(0, slip.mend.start) + slip.mend.text + text.slice(slip.mend.end);
    expect(mended).toBe(order(meant));
  });

  test('where its time and its stretch are said, it is put right', () => {
    const text = order('C1: check clearance run 2 by A, B takes 40 min');
    const [slip] = parseText(text).slips;
    const mended = slip?.mend && text.slice(0, slip.mend.start) + slip.mend.text + text.slice(slip.mend.end);
    expect(mended).toContain('C1: other work run 2 by A, B takes 40 min "check clearance"');
  });

  test.each(['lock out drive', 'test for gas by Own takes 5 min', 'de-energise drive'])(
    'what keeps people safe is never other work: %s',
    (line) => {
      const [slip] = parseText(order(line)).slips;
      expect(slip?.message).not.toContain('`other work');
      expect(slip?.mend).toBeUndefined();
    },
  );

  test.each([
    'tail plate renewed at tail',
    'tighten belts',
    'plate readings every 1 m',
    'permit "23-07"',
    'gate on the left renewed',
    'covers on panel 2 of run 2 misaligned',
  ])('beside the facts of a job a comment keeps it: %s', (line) => {
    expect(answer(line, (each) => `job J {\n  ${each}\n}\n`)).toBe(`// ${line}`);
  });

  test('a step beside the facts of a job is told where it goes', () => {
    const [slip] = parseText('job J {\n  isolate drive\n}\n').slips;
    expect(slip?.message).toContain("`isolate` is a step of the job's `order { … }`.");
    expect(slip?.mend).toBeUndefined();
  });
});

describe('what belongs to the heading of a record, or to its job', () => {
  test.each([
    ['inspection', 'inspector J', 'by "J"'],
    ['inspection', 'inspected by J', 'by "J"'],
    ['reline', 'takes 6 h', '// takes 6 h'],
    ['reline', 'permit "23-07"', '// permit "23-07"'],
    ['reline', 'cost 1140 EUR "liner"', '// cost 1140 EUR "liner"'],
  ])('in a %s: %s', (head, line, meant) => expect(answer(line, record(head))).toBe(meant));

  test.each([
    ['hrs 2990', '`meter 2990 h {`'],
    ['meter 8830 or 8880 h', '`meter 8855 h ± 25 h`'],
    ['meter 8830 h or 8880 h', '`meter 8855 h ± 25 h`'],
  ])('the hours stand in the heading: %s', (line, meant) => {
    const [slip] = parseText(record('inspection')(line)).slips;
    expect(slip?.message).toContain(meant);
    expect(slip?.mend).toBeUndefined();
  });
});

test('steel is patched where it is worn, inside a panel and in a gate too', () => {
  const order = (patch: string): string =>
    `job J9 {\n  conveyor DG1\n  outage Spring27\n  crews Alpha\n  order {\n    isolate\n    ${patch}\n  }\n}`;
  const told = (patch: string): readonly string[] =>
    analyse([{ uri: 'a', text: inSoundEstate('estate', order(patch), {}) }]).findings.map(({ code }) => code);
  expect(told('patch from 4.6 m to 5.2 m')).not.toContain('TL427');
  expect(told('strip from 4.6 m to 5.2 m')).toContain('TL427');
  expect(told('patch run 9')).toContain('TL427');
});

test('what the language says elsewhere is told with the place where it goes', () => {
  const told = (text: string): readonly string[] => parseText(text).slips.map(({ message }) => message);
  expect(told('calibration ultrasonic 2023-05-02 sound velocity 2140 m/s\n')[0]).toContain(
    'on the liner: `sound velocity 2140 m/s`',
  );
  expect(told(record('screw change')('plate at 4 m thickness 3 mm'))).toEqual([
    '`plate` is not something a screw change says. `plate` is something an inspection or a reline says. In words of your own it is `finding at 4 m "plate thickness 3 mm"`.',
  ]);
});

test('a row of a look behind a line that begins no block is told of its own; free text behind it is not', () => {
  const text =
    'repair KS1 2024-07-17 spiral weld at 18 m\npanel missing KS1 2024-08-02 at 14 m "x"\nso much for that\n';
  const told = parseText(text).slips.map(({ start, message }) => [
    text.slice(0, start).split('\n').length,
    message,
  ]);
  expect(told.map(([line]) => line)).toEqual([1, 2]);
  expect(told[0]?.[1]).toContain('`serviced KS1 2024-07-17 spiral at 18 m "repair spiral weld"`');
  expect(told[1]?.[1]).toContain(
    '`inspection KS1 2024-08-02 meter 8120 h {`, `panel missing at 14 m "x"`, `}`',
  );
});

test('with a word that nobody knows no condition is answered with another one', () => {
  const parts = new Set(conditionKinds.map((kind) => kind.split(' ').slice(0, -1).join(' ')).filter(Boolean));
  for (const part of parts)
    for (const word of ['purple', 'misaligned', 'wobbling', 'noisy'])
      for (const { message } of parseText(inspect(`${part} ${word} at 4 m`)).slips)
        for (const kind of conditionKinds) expect(message).not.toContain(`Did you mean \`${kind} at`);
});

test('a part by its name stands where it is declared', () => {
  const parts =
    'hatch H1 at 9 m to 9.4 m\n  cover C1 at 2 m to 4 m\n  hold-down B1 at 5 m\n  brace X1 at 6 m\n  point P1';
  const { estate, problems } = read(
    machine.replace('point P1', parts) +
      inspect('hatch stuck at H1\n  cover bent at C1\n  hold-down loose at B1\n  brace bent at X1'),
  );
  expect(problems).toEqual([]);
  expect(estate.inspections[0]?.conditions.map((line) => [conditionWords(line), line.at?.value])).toEqual([
    ['hatch stuck at H1', 9000],
    ['cover bent at C1', 2000],
    ['hold-down loose at B1', 5000],
    ['brace bent at X1', 6000],
  ]);
});

test('records of one line that cannot be read are each told, and what stands between them is read', () => {
  const bad = 'serviced DG1 2026-01-02 wheelbarrow renewed\n';
  const good = 'serviced DG1 2026-01-03 gearbox oil changed\n';
  const { slips, root } = parseText(bad + bad + good + bad + good);
  expect(slips.map(({ start }) => start)).toEqual(
    [0, bad.length, 2 * bad.length + good.length].map((line) => line + bad.indexOf('wheelbarrow')),
  );
  expect(root.blocks.map(({ $type }) => $type)).toEqual(['Serviced', 'Serviced']);
});

test('a line that breaks does not swallow the next one, which stands no further in', () => {
  const { slips } = parseText(
    inspect('bolts loose from 14 to 15.5 m, 4 of them\n  panel 8 of run 3 lifted 5 mm\n  hatch H2 leaking'),
  );
  expect(slips).toHaveLength(3);
});

test('what is said in another way, or not held at all, is told in which', () => {
  const told = (text: string): readonly string[] => parseText(text).slips.map(({ message }) => message);
  expect(told(record('inspection')('P6 thickness 5.0 mm by eye'))[0]).toMatch(/`gauge by eye`.*± 1 mm/);
  expect(told(record('inspection')('gauge ultrasonic ± 0.2 mm "checked"'))[0]).toMatch(/`finding "checked"`/);
  for (const block of ['reline', 'screw change'])
    expect(told(record(block)('cost 6900 EUR'))[0]).toMatch(/once, in the plant.*`cost reline/);
  const gauge = 'correction DG1 2022-06-27 gauge read on 2022-06-20 ± 0.4 mm\n';
  expect(told(gauge)[0]).toMatch(/^A correction is of one reading of a liner/);
  // A slip of the pen keeps its mend.
  expect(told('serviced DG1 2026-01-02 gearbx oil changed\n')[0]).toMatch(/Did you mean `gearbox`/);
});

test('what has no measure is where the number behind it says, and a part of the drive as hot', () => {
  const { inspections } = lower(parseText(inspect('cover stuck 20.4 m\n  tail bearing 71 degC')), 0, 'a');
  expect(inspections[0]?.conditions.map(({ at, temperature }) => [at?.value, temperature?.text])).toEqual([
    [20400, undefined],
    [undefined, '71 degC'],
  ]);
});

test('of bolts of the spiral no line is offered that does not read either', () => {
  for (const line of ['spiral flange bolts loose 1 of 8 at 10.4 m', 'screw joint bolts loose 2 by "fitter"'])
    expect(answer(line, record('inspection'))).toMatch(
      /counted where the joint is: `spiral bolts loose 2 at/,
    );
});

test('a reading without its unit is not offered again without one, nor a name without a number as a point', () => {
  expect(answer('P2 11.3', record('inspection'))).toMatch(/with its unit: `P2 thickness 11\.3 mm`, if/);
  expect(answer('HeadGate leaks', record('inspection'))).not.toMatch(/colour leaks/);
});

describe('panels that changed places', () => {
  const moved = record('panels moved');
  test.each([
    ['panel 2 and 3 of run 1 swapped', 'panel 2 of run 1 exchanged with panel 3 of run 1'],
    [
      'panels 2 and 3 of run 1 exchanged "worn side up"',
      'panel 2 of run 1 exchanged with panel 3 of run 1 "worn side up"',
    ],
    ['panel 2 of run 1 exchanged with panel 3 of run 1', 'read'],
    ['panel 2 of run 1 turned end for end', 'read'],
  ])('in their record: %s', (written, meant) => {
    expect(answer(written, moved)).toBe(meant);
  });

  test.each([
    ['panel 2 and 3 of run 1 swapped', 'panel 2 of run 1 exchanged with panel 3 of run 1'],
    ['panel 5 of run 2 turned end for end', 'panel 5 of run 2 turned end for end'],
  ])('in a look they are shown their record: %s', (written, row) => {
    const told = answer(written, record('inspection'));
    expect(told).toContain('`panels moved DG1 2026-03-14 meter 8120 h {`');
    expect(told).toContain(`\`${row}\``);
  });
});

describe('nothing is passed over, and nothing made safer than it was written', () => {
  test('lines outside any block that say how much or when are told one by one', () => {
    const { slips } = parseText(
      'shelf SandGreen12 3 panels\ncounted shelf 2026-06-02 SandGreen12 5 panels\n2 days\nsome words more\n',
    );
    expect(slips).toHaveLength(3);
  });

  test('a test run is no gas test, and what was read about so is not read so', () => {
    const order = (line: string): string => `job J {\n  conveyor DG1\n  order {\n    ${line}\n  }\n}\n`;
    expect(parseText(order('test run')).slips[0]?.mend).toBeUndefined();
    const look = record('inspection')('P5 thickness about 10 mm');
    expect(parseText(look).slips[0]?.mend).toBeUndefined();
  });
});

describe('what stops the screw, in a conveyor', () => {
  test.each([
    ['e-stop at tail left side', 'emergency stop at tail left side'],
    ['pull cord both sides from 0 m to 19 m', 'pull cord from 0 m to 19 m both sides'],
    ['hatch interlock H1', 'interlock at H1 "hatch interlock"'],
    ['interlock on cover C2', 'interlock at C2 "on cover"'],
    ['zero speed switch at the tail', 'zero-speed sensor at tail'],
    ['level sensor at Inlet "paddle"', 'level probe at Inlet "paddle"'],
    ['coupling guard', 'guard at drive "coupling guard"'],
    ['interlock at H1, H2', 'read'],
    ['emergency stop at tail and head', 'read'],
  ])('%s', (line, expected) => expect(answer(line, machineLine)).toBe(expected));
});

describe('spare parts, in a plant', () => {
  test.each([
    [
      'on the shelf 2 tail bearing seals counted 2026-01-02',
      'on the shelf 2 tail bearing "seals" counted 2026-01-02',
    ],
    ['on the shelf gearbox 1 counted 2026-01-02', 'on the shelf 1 gearbox counted 2026-01-02'],
    [
      'on the shelf 1 bearing tail for DG1 counted 2026-01-02 "greased"',
      'on the shelf 1 tail bearing for DG1 counted 2026-01-02 "greased"',
    ],
    ['1 gearbox on the shelf counted 2026-01-02', 'on the shelf 1 gearbox counted 2026-01-02'],
    ['on the shelf TwoLayer12 3 panels counted 2026-01-02 "one broken"', 'read'],
  ])('%s', (line, expected) => expect(answer(line, plantLine)).toBe(expected));
});

describe('what a line in own words would have turned into another fact', () => {
  test.each([
    ['one panel cut to 870 mm', record('reline'), 'serviced panel "one panel cut to 870 mm"'],
    ['offcut 600 mm left over', record('reline'), 'offcut 600 mm'],
    ['offcut 600 mm scratched', record('reline'), 'offcut 600 mm | finding liner "offcut: scratched"'],
    ['fitted by "own crew" in 9 h', record('reline'), 'by "own crew" | finding "fitted in 9 h"'],
    ['only 5 m to 10 m renewed', record('screw change'), 'scope from 5 m to 10 m'],
    ['middle part from 5 m to 10 m new', record('screw change'), 'scope from 5 m to 10 m'],
    [
      'lower length from 0 m to 5 m replaced "second hand"',
      record('screw change'),
      'scope from 0 m to 5 m | finding spiral from 0 m to 5 m "lower length replaced: second hand"',
    ],
    ['old flight 44 mm at 7 m', record('screw change'), 'flight at 7 m depth 44 mm'],
    [
      'panel 1 of run 2 swapped with panel 3 of run 2',
      record('panels moved'),
      'panel 1 of run 2 exchanged with panel 3 of run 2',
    ],
    [
      'panel 2 of run 2 reversed "long side up"',
      record('panels moved'),
      'panel 2 of run 2 turned end for end "long side up"',
    ],
    ['panel 2 run 2 turned round', record('panels moved'), 'panel 2 of run 2 turned end for end'],
    [
      'panel 3 of run 1 split along bolt row',
      record('inspection'),
      'panel torn at panel 3 of run 1 "split along bolt row"',
    ],
    [
      'panels 2 and 3 of run 2 loose on left side',
      record('inspection'),
      'panel lifted at panel 2 of run 2 left side "loose" | panel lifted at panel 3 of run 2 left side "loose"',
    ],
    [
      'panels 1 to 3 of run 2 cracked slight',
      record('inspection'),
      'panel cracked at panel 1 of run 2 slight | panel cracked at panel 2 of run 2 slight | panel cracked at panel 3 of run 2 slight',
    ],
    ['green showing at 9.4 m clock 5-7', record('inspection'), 'at 9.4 m clock 5:00 to 7:00 colour green'],
    [
      'gap between panels 12 mm at 4.25 m',
      record('inspection'),
      'joint open 12 mm at 4.25 m "gap between panels"',
    ],
    ['emergency stop tail does not work', record('inspection'), 'emergency stop dead at tail'],
    ['P1 thickness 7.4 mm at minus 8 degC', record('inspection'), 'P1 thickness 7.4 mm "at minus 8 degC"'],
    ['photo "photos/hole.png" of the hole', record('inspection'), 'photo "photos/hole.png" "of the hole"'],
    [
      'spiral cracked at 9.2 m "hairline" next look in 2 weeks',
      record('inspection'),
      'spiral cracked at 9.2 m "hairline" | next look after 2 weeks',
    ],
    [
      'next inspection in 3 months',
      record('inspection'),
      'next look by 2026-04-01 "next inspection in 3 months"',
    ],
    ['running in check after 50 h', record('reline'), 'next look after 50 h "running in check"'],
    [
      'crack found on inspection after 200 h',
      record('inspection'),
      'finding "crack found on inspection after 200 h"',
    ],
    [
      'speed changed DG1 2026-01-02 from 20 rpm to 24 rpm',
      asIs,
      'drive change DG1 2026-01-02 speed 24 rpm "from 20 rpm"',
    ],
    [
      'new motor DG1 2026-01-02 5.5 kW by "electrician" "second hand"',
      asIs,
      'drive change DG1 2026-01-02 power 5.5 kW by "electrician" "new motor: second hand"',
    ],
    ['gearbox replaced DG1 2026-01-02', asIs, 'serviced DG1 2026-01-02 gearbox renewed'],
    [
      'patched DG1 2026-01-02 from 12.4 m to 12.9 m with 3 mm plate',
      asIs,
      'patch DG1 2026-01-02 at 12.4 m to 12.9 m thickness 3 mm',
    ],
    [
      'washed down DG1 2026-01-02 "high pressure"',
      asIs,
      'serviced DG1 2026-01-02 "washed down: high pressure"',
    ],
    ['duty DG1 from 2026-01-02 100 h/week winter', asIs, 'duty DG1 from 2026-01-02 100 h/week "winter"'],
  ])('%s', (line, around, offer) => expect(answer(line, around)).toBe(offer));

  test.each([
    ['white layer gone at P3', 'inspection', '`P3 second colour showing` where the first one is gone'],
    ['P3 green gone', 'inspection', '`P3 second colour showing` where the first one is gone'],
    [
      'at H3 clock 6:00 thickness 9.5 mm',
      'inspection',
      '`at … clock 6:00 thickness 9.5 mm`, with where H3 lies',
    ],
    ['plate next to hole 2.2 mm', 'inspection', '`plate at … thickness 2.2 mm "next to hole"`'],
    [
      'bolts loose 3 at 8 m and 9 m slight',
      'inspection',
      '`bolts loose … at 8 m slight` and `bolts loose … at 9 m slight`',
    ],
    [
      'old panel 3 worn through at bottom',
      'reline',
      '`old panel 3 of run 1 worn through "at bottom"`, if it lay in run 1',
    ],
  ])('what is lacking is for its author to say: %s', (line, block, said) => {
    const [slip] = parseText(record(block)(line)).slips;
    expect(slip?.message).toContain(said);
    expect(slip?.mend).toBeUndefined();
  });

  test('a winter stop is a stop', () =>
    expect(answer('winter stop DG1 2025-12-20 to 2026-01-09', asIs)).toContain(
      '`duty DG1 from 2025-12-20 0 h/week "winter stop"`',
    ));
});

describe('several places on one line', () => {
  test.each([
    ['interlock dead at H3 and H4 urgent', 'interlock dead at H3 urgent | interlock dead at H4 urgent'],
    [
      'interlock tried at H1, H2 and H3 by "electrician"',
      'interlock tried at H1 by "electrician" | interlock tried at H2 by "electrician" | interlock tried at H3 by "electrician"',
    ],
    [
      'emergency stop tried at tail and head by "electrician"',
      'emergency stop tried at tail by "electrician" | emergency stop tried at head by "electrician"',
    ],
    ['hold-down bent at 4 m and 13 m slight', 'hold-down bent at 4 m slight | hold-down bent at 13 m slight'],
    [
      'closed cover leaking at C1 and C3 "new seals"',
      'closed cover leaking at C1 "new seals" | closed cover leaking at C3 "new seals"',
    ],
    [
      'serviced hold-down renewed at 4 m and 12 m by "fitter"',
      'serviced hold-down renewed at 4 m by "fitter" | serviced hold-down renewed at 12 m by "fitter"',
    ],
    ['not seen at P1 and P2 no access', 'not seen at P1 no access | not seen at P2 no access'],
    [
      'finding gate at Low and High slight "stiff"',
      'finding gate at Low slight "stiff" | finding gate at High slight "stiff"',
    ],
  ])('%s', (line, offer) => expect(answer(line, record('inspection'))).toBe(offer));
});

describe('how a thing is said is not turned round', () => {
  test.each([
    ['flight at 7 m worn 8 mm', 'finding flight at 7 m "worn 8 mm"'],
    ['flight at 7 m worn to 48 mm', 'flight at 7 m depth 48 mm "worn"'],
    ['noise in gearbox gone since oil change', 'closed gearbox noise "in gearbox gone since oil change"'],
    ['P4 thickness 5 mm or less', 'P4 not seen "5 mm or less"'],
    ['2 clips of cover C3 missing', 'finding cover at C3 "2 clips of cover missing"'],
    ['handle of hatch H1 missing', 'finding hatch at H1 "handle of hatch missing"'],
    ['edge of panel torn at 4 m', 'panel torn at 4 m "edge"'],
    ['pads at 4 m and 6 m worn', 'hold-down worn at 4 m | hold-down worn at 6 m'],
    ['photo photos/p3.png', 'photo "photos/p3.png"'],
    ['P3 photo "photos/p3.png"', 'photo "photos/p3.png" "P3"'],
    ['P3 thickness 7.9 mm in a gouge', 'finding liner at P3 "thickness 7.9 mm in a gouge"'],
    [
      'thickness in the groove at 4.2 m clock 6:00 4.1 mm',
      'finding liner at 4.2 m clock 6:00 "thickness in the groove 4.1 mm"',
    ],
    ['idle current 3.1 A', 'current empty 3.1 A'],
    ['speed sensor gives no signal', 'zero-speed sensor dead "gives no signal"'],
    ['cake under the liner at 7 m', 'material behind liner at 7 m "cake under"'],
    ['steel shines at 3.4 m clock 6:00', 'at 3.4 m clock 6:00 trough showing'],
  ])('%s', (line, offer) => expect(answer(line, record('inspection'))).toBe(offer));

  test.each([
    ['at 4.2 m bottom 6.8 mm', '`at 4.2 m clock 6:00 thickness 6.8 mm`'],
    ['steel at 3 m', '`at 3 m clock 6:00 trough showing`, if it was at the bottom'],
    ['screw speed 19.6', '`speed 19.6 rpm`, if that was it'],
  ])('what is lacking is for its author to say: %s', (line, said) => {
    const [slip] = parseText(record('inspection')(line)).slips;
    expect(slip?.message).toContain(said);
    expect(slip?.mend).toBeUndefined();
  });
});

describe('a plant and a machine in own words are no comments', () => {
  test.each([
    [
      'on the shelf 6 panels TwoLayer12 counted 2026-01-02',
      plantLine,
      'on the shelf TwoLayer12 6 panels counted 2026-01-02',
    ],
    [
      'in stock TwoLayer12 6 panels 2026-01-02',
      plantLine,
      'on the shelf TwoLayer12 6 panels counted 2026-01-02',
    ],
    [
      'ordered 9 panels TwoLayer12 on 2026-01-02 arrives 2026-03-02',
      plantLine,
      'ordered TwoLayer12 9 panels on 2026-01-02 arrives 2026-03-02',
    ],
    [
      'ordered TwoLayer12 9 panels 2026-01-02 due 2026-03-02',
      plantLine,
      'ordered TwoLayer12 9 panels on 2026-01-02 arrives 2026-03-02',
    ],
    ['shift 07:00 to 17:00 weekdays', plantLine, 'shift 07:00 to 17:00 on mon, tue, wed, thu, fri'],
    ['shift 07:00 to 15:00 on tue to thu', plantLine, 'shift 07:00 to 15:00 on tue , wed, thu'],
    ['crew Mech 3 people welding and fitting', plantLine, 'crew Mech 3 people skills welding, fitting'],
    ['crew Mech 3 men fitting cost 58 EUR/h', plantLine, 'crew Mech 3 people skills fitting cost 58 EUR/h'],
    ['outage Spring26 2026-04-12 - 2026-04-23', plantLine, 'outage Spring26 2026-04-12 to 2026-04-23'],
    ['drive head 4 kW 20 rpm', machineLine, 'drive at head power 4 kW speed 20 rpm'],
    ['inlet at 0.5 m to 1.5 m', machineLine, 'break Inlet at 0.5 m to 1.5 m inlet'],
    [
      'slide gate at 11 m to 11.5 m driven by air',
      machineLine,
      'break Gate at 11 m to 11.5 m slide gate driven by air',
    ],
    [
      'break Low at 11 m to 11.5 m slide gate driven by compressed air',
      machineLine,
      'break Low at 11 m to 11.5 m slide gate driven by air',
    ],
    ['liner Hard8 0 m to 8 m', machineLine, 'liner Hard8 from 0 m to 8 m'],
    ['liner Hard8 0-8 m', machineLine, 'liner Hard8 from 0 m to 8 m'],
    ['isolation A1 air at 11 m', machineLine, 'isolation A1 pneumatic at 11 m'],
    ['isolation Q7 main switch electrical', machineLine, 'isolation Q7 "main switch" electrical'],
    ['emergency stops at head and tail', machineLine, 'emergency stop at head and tail'],
    ['e-stop both ends', machineLine, 'emergency stop at tail and head "both ends"'],
    ['pull cord left from 0 m to 15 m', machineLine, 'pull cord from 0 m to 15 m left side'],
  ])('%s', (line, around, offer) => expect(answer(line, around)).toBe(offer));

  test.each([
    ['on the shelf TwoLayer12 6 panels', plantLine, '`on the shelf TwoLayer12 6 panels counted …`'],
    ['lead time TwoLayer12 10 weeks', plantLine, '`lead time liner 10 weeks`'],
    ['motor 4 kW', machineLine, '`drive at head power 4 kW`, or `at tail`'],
    ['speed 20 rpm', machineLine, '`drive at head speed 20 rpm`, or `at tail`'],
    ['hold-downs every 2 m both sides', machineLine, '`hold-down every 2 m from … m to … m both sides`'],
    ['covers every 1.5 m 14 kg', machineLine, '`cover every 1.5 m from … m to … m mass 14 kg`'],
  ])('what is lacking is for its author to say: %s', (line, around, said) => {
    const [slip] = parseText(around(line)).slips;
    expect(slip?.message).toContain(said);
    expect(slip?.mend).toBeUndefined();
  });
});
