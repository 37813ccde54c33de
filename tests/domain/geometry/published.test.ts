// Numbers that come from outside the project, or were worked out by hand apart from it, to the digits they are given in.
// Each carries where it comes from: published (a standard, handbook or data sheet), from memory, derived, or judgement.

import { describe, expect, test } from 'vitest';
import { inclineBand, massFlow, volumeFlow } from '../../../src/domain/geometry/capacity.js';
import { crescentWear } from '../../../src/domain/geometry/crescent.js';
import { axialSpeed, conveyingPower, dragPower, torque } from '../../../src/domain/geometry/drive.js';
import { depthGaugeError } from '../../../src/domain/geometry/gauge.js';
import {
  downSlopeForce,
  handlingGuideline,
  liftingIndex,
  panelPosture,
  recommendedWeightLimit,
  slingLegShare,
  teamCapability,
} from '../../../src/domain/geometry/handling.js';
import {
  flatBlank,
  flightArea,
  flightMassPerMetre,
  flightMassPerTurn,
  springStretch,
} from '../../../src/domain/geometry/helix.js';
import { screwSizes } from '../../../src/domain/geometry/sizes.js';
import {
  bucklingPitch,
  freeGrowth,
  heldAcross,
  restrainedStress,
} from '../../../src/domain/geometry/thermal.js';
import {
  developedWidth,
  linerMassPerMetre,
  panelMass,
  sheetOffset,
} from '../../../src/domain/geometry/trough.js';

/** Equal to the digits that the source gives. */
function given(actual: number | undefined, digits: string): void {
  const places = digits.split('.')[1]?.length ?? 0;
  expect(actual?.toFixed(places)).toBe(digits);
}

describe('capacity', () => {
  // Published: the usual screw form of ISO 7119 and DIN 15262, Q = 47.124 (D² − d²) S n φ k.
  test('of a screw without a shaft', () =>
    given(volumeFlow({ outside: 150, core: 0, pitch: 200, speed: 60, fill: 0.4 }), '5.089'));
  test('of a screw with one', () =>
    given(volumeFlow({ outside: 300, core: 60, pitch: 250, speed: 60, fill: 0.4 }), '24.43'));
  test('in tonnes', () =>
    given(massFlow({ outside: 300, core: 0, pitch: 300, speed: 50, fill: 0.3 }, 1500), '28.63'));

  // From memory: the capacity table of CEMA book 350 at 1 rpm in cubic feet an hour, full pitch, with usual pipe sizes.
  const cema: [diameter: number, pipe: number, at45: number, at30: number][] = [
    [6, 2.375, 2.23, 1.49],
    [9, 2.875, 8.2, 5.5],
    [12, 2.875, 19.4, 12.9],
    [16, 4, 46.7, 31.2],
    [20, 4, 93.7, 62.8],
    [24, 4.5, 164, 109],
  ];
  test.each(cema)(
    'of a %d in screw is within 5 %% of the table from memory',
    (diameter, pipe, at45, at30) => {
      const cubicFeet = (fill: number): number =>
        volumeFlow({ outside: diameter * 25.4, core: pipe * 25.4, pitch: diameter * 25.4, speed: 1, fill }) /
        0.3048 ** 3;
      expect(Math.abs(cubicFeet(0.45) / at45 - 1)).toBeLessThan(0.05);
      expect(Math.abs(cubicFeet(0.3) / at30 - 1)).toBeLessThan(0.05);
    },
  );
  test('of a 12 in screw with a 2.875 in pipe at 30 %, from the geometry alone (derived)', () => {
    given(
      volumeFlow({ outside: 304.8, core: 2.875 * 25.4, pitch: 304.8, speed: 1, fill: 0.3 }) / 0.3048 ** 3,
      '13.33',
    );
  });

  // Published guides: about 75 % at 15° and 50 % at 25° of the level at standard pitch; losses of 10 to 70 % at 30°.
  test('left by an incline lies in a band, not on a line', () => {
    for (const [incline, factor] of [
      [15, 0.75],
      [25, 0.5],
    ] as const) {
      const band = inclineBand(incline);
      expect(band && band.from <= factor && factor <= band.to).toBe(true);
    }
    expect(inclineBand(30)?.from).toBeCloseTo(0.3, 12);
    expect(inclineBand(30)?.to).toBeCloseTo(0.9, 12);
    expect(inclineBand(0)).toEqual({ from: 1, to: 1 });
    expect(inclineBand(31)).toBeUndefined();
  });
});

describe('drive', () => {
  test('axial speed S n / 60', () => given(axialSpeed(350, 20), '0.1167'));
  // Published: ISO 7119, P = Q_m (λL + H)/367 + DL/20.
  test('power', () =>
    given(
      conveyingPower({ massFlow: 10, length: 12_000, rise: 5000, resistanceFactor: 3, diameter: 350 }).total,
      '1.327',
    ));
  // Published handbook form, T = 9550 P / n: 5.5 kW at 18 rpm is 9550 × 5.5 / 18 = 2918.06 N·m by hand.
  test('torque', () => given(torque(5.5, 18), '2918.06'));
  // Derived: the rim's way over the liner, π D n 60 h.
});

describe('helix of outside 300, inside 180, pitch 300 mm', () => {
  const shape = { outside: 300, inside: 180, pitch: 300 };
  // Published: the handbook form for the flat blank of a screw flight.
  test('flat blank', () => {
    const blank = flatBlank(shape);
    given(blank.outerEdge, '989.07');
    given(blank.innerEdge, '640.14');
    given(blank.innerRadius, '110.07');
    given(blank.outerRadius, '170.07');
    given(blank.gap, '26.79');
  });
  // Derived: the area integral and what follows from it.
  test('area of a turn', () => expect(Math.round(flightArea(shape) / 10) * 10).toBe(48_750));
  test('mass of a 60 × 20 mm bar', () => {
    given(flightMassPerTurn(shape, 20, 7850), '7.654');
    given(flightMassPerMetre(shape, 20, 7850), '25.51');
  });
  test('mass of an inner flight 160/80, 12 mm thick', () =>
    given(flightMassPerMetre({ outside: 160, inside: 80, pitch: 300 }, 12, 7850), '6.08'));
  test('stretch of a turn under a kilonewton', () =>
    given(springStretch({ shape, thickness: 20 }, 1000, 300), '1.03'));
});

describe('trough of inside radius 175, liner 12, sides 150 mm', () => {
  const section = { insideRadius: 175, thickness: 12, sideHeight: 150 };
  // Derived: the middle arc and two sides.
  test('developed width', () => given(developedWidth(section), '830.9'));
  test('mass at 935 kg/m³', () => given(linerMassPerMetre(section, 935), '9.32'));
  test('a 3 m panel is above the guideline for one person', () => {
    given(panelMass(section, 3000, 935), '27.97');
    expect(panelMass(section, 3000, 935)).toBeGreaterThan(handlingGuideline); // published: HSE L23, 25 kg
  });
  test('5 o’clock on the sheet', () => given(sheetOffset(163, 5), '85.3'));
});

describe('sizes', () => {
  // Published: IS 5563:1985, diameter / centre to top.
  test('are those of the table', () => {
    expect(screwSizes.map((size) => `${size.diameter}/${size.centreToTop}`).join(' ')).toBe(
      '100/63 125/75 160/90 200/112 250/140 315/180 400/224 500/280 630/355 800/450 1000/560 1250/710',
    );
  });
});

describe('heat', () => {
  // Published data sheets of PE-UHMW: 200e-6/K, 750 MPa; steel 12e-6 and 16e-6/K are handbook values from memory.
  test('stress of a sheet that cannot grow, 20 K warmer', () => {
    expect(restrainedStress(750, 200e-6 - 12e-6, 20)).toBeCloseTo(2.82, 2);
    expect(restrainedStress(750, 200e-6 - 12e-6, -20)).toBeLessThan(0);
    expect(() => restrainedStress(0, 188e-6, 20)).toThrow(RangeError);
  });
  test('12 m over 20 K', () => {
    given(freeGrowth(12_000, 200e-6, 20), '48.0');
  });
  test('2 mm a metre for 10 K', () => given(freeGrowth(1000, 200e-6, 10), '2.0'));
  // Derived: E Δα ΔT, and Euler's strut with clamped ends.
  test('bolt spacing at which a flat strip buckles', () => {
    given(bucklingPitch(10, 188e-6, 20), '296');
    given(bucklingPitch(12, 188e-6, 20), '355');
  });
});

describe('wear', () => {
  // The exact intersection of two circles, by the numbers of the maintainers' list: e 25, w 10, at 30° 4.58 (first order 5.31).
  test('crescent of 10 mm at 30 degrees', () => {
    given(crescentWear({ e: 25, screwRadius: 210 }, 10, 30), '4.58');
    given(35 * Math.cos(Math.PI / 6) - 25, '5.31');
  });
  // Sliding friction by hand: 45 kg/m × 34 m = 1530 kg; × 9.80665 × cos 25° × 0.2 = 2720 N; edge π·0.47·18/60 = 0.4430 m/s.
  test('a spiral of 34 m drags with about 1.2 kW where D·L/20 has 0.8', () => {
    given(dragPower({ mass: 1530, incline: 25, diameter: 470, speed: 18 }), '1.2');
    given(2720 * 0.443, '1205');
    given(
      conveyingPower({ massFlow: 0, length: 34_000, rise: 0, resistanceFactor: 3, diameter: 470 }).empty,
      '0.80',
    );
  });
  // Euler's strut free at its sides against a plate held across: 215 and 178 mm (the maintainers' list), ν 0.46 from memory.
  test('a sheet held across its width buckles at 0.83 of the free strip', () => {
    given(215 * heldAcross(), '178');
  });
});

describe('gauges', () => {
  // Published: a relative error of sound velocity is the same relative error of thickness; 1 % of 12 mm is 0.12 mm.
  test('a depth gauge is taken at half a millimetre (judgement)', () => expect(depthGaugeError).toBe(0.5));
});

describe('lifts', () => {
  // Published: NIOSH, DHHS 94-110, the 1991 equation; the example's factors multiplied out by hand.
  // Published: NIOSH, DHHS 94-110, the 1991 equation; the example's factors multiplied out by hand.
  test('recommended weight limit and lifting index', () => {
    const lift = { reach: 400, height: 400, travel: 600, twist: 30, frequency: 0.95, coupling: 0.95 };
    given(recommendedWeightLimit(lift), '9.39');
    given(liftingIndex(28, recommendedWeightLimit(lift)), '2.98');
  });
  test('the equation’s own edges: the load constant, and no lift beyond reach', () => {
    const ideal = { reach: 250, height: 750, travel: 250, twist: 0, frequency: 1, coupling: 1 };
    expect(recommendedWeightLimit(ideal)).toBe(23);
    expect(recommendedWeightLimit({ ...ideal, reach: 630 })).toBeGreaterThan(0);
    expect(recommendedWeightLimit({ ...ideal, reach: 640 })).toBe(0);
    expect(recommendedWeightLimit({ ...ideal, twist: 136 })).toBe(0);
    expect(liftingIndex(10, 0)).toBeUndefined();
  });
  // By hand: 23 × 25/35 × 1 × (0.82 + 4.5/30) × (1 − 0.0032 × 30) × 0.9 = 12.97 kg for a trough of 250 mm radius, sides 300 mm.
  test('a panel laid into a trough from beside it', () => {
    given(recommendedWeightLimit(panelPosture(250, 300)), '12.97');
    expect(recommendedWeightLimit(panelPosture(540, 300))).toBe(0);
  });
  // Published: HSE L23; two people two thirds, three half of the sum.
  test('teams', () => {
    given(teamCapability(25, 2), '33.3');
    given(teamCapability(25, 3), '37.5');
  });
  // Published: statics of a two-leg sling.
  test('sling legs', () => {
    given(slingLegShare(30), '0.577');
    given(slingLegShare(45), '0.707');
    given(slingLegShare(0), '0.500');
  });
  // Derived: 12 m of 25.5 kg/m on 25°.
  test('down the slope', () => given(downSlopeForce(12 * 25.5, 25) / 1000, '1.27'));
  // Derived: eight panels of ± 1 mm.
});
