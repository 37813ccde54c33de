// What must hold for any machine: symmetry, growth, shares that add up, and a clear refusal of what cannot be.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { volumeFlow } from '../../../src/domain/geometry/capacity.js';
import { radialClearance } from '../../../src/domain/geometry/clearance.js';
import { crescentEdge, crescentWear, depthFromEdge } from '../../../src/domain/geometry/crescent.js';
import { conveyingPower, rise, torque } from '../../../src/domain/geometry/drive.js';
import { peopleNeeded, slopingLegTension, teamCapability } from '../../../src/domain/geometry/handling.js';
import {
  edgeLength,
  flightArea,
  flatBlank,
  ownWeightStretch,
  springStretch,
  torsionConstant,
} from '../../../src/domain/geometry/helix.js';
import { bucklingPitch, freeGrowth } from '../../../src/domain/geometry/thermal.js';
import {
  developedWidth,
  isOnArc,
  linerMassPerMetre,
  panelCentreDepth,
  panelMass,
  sheetOffset,
} from '../../../src/domain/geometry/trough.js';

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const section = fc.record({ insideRadius: size(60, 700), thickness: size(4, 30), sideHeight: size(0, 600) });
const shape = fc
  .tuple(size(20, 500), size(5, 400), size(50, 1200))
  .map(([inside, width, pitch]) => ({ inside, outside: inside + 2 * width, pitch }));

describe('trough', () => {
  test('the sheet’s area is that of the bent section: half a ring and two sides', () => {
    fc.assert(
      fc.property(section, (s) => {
        const ring = (Math.PI / 2) * (s.insideRadius ** 2 - (s.insideRadius - s.thickness) ** 2);
        expect(developedWidth(s) * s.thickness).toBeCloseTo(ring + 2 * s.sideHeight * s.thickness, 4);
      }),
    );
  });

  test('two layers of one material weigh what the whole weighs', () => {
    fc.assert(
      fc.property(section, size(0.1, 0.9), (s, part) => {
        const outer = { ...s, thickness: s.thickness * part };
        const inner = {
          insideRadius: s.insideRadius - outer.thickness,
          thickness: s.thickness - outer.thickness,
          sideHeight: s.sideHeight,
        };
        expect(linerMassPerMetre(outer, 930) + linerMassPerMetre(inner, 930)).toBeCloseTo(
          linerMassPerMetre(s, 930),
          9,
        );
      }),
    );
  });

  test('mass is proportional to length', () => {
    fc.assert(
      fc.property(section, size(0, 5000), (s, length) => {
        expect(panelMass(s, length, 930) * 2).toBeCloseTo(panelMass(s, 2 * length, 930), 9);
      }),
    );
  });

  test('a thin half pipe hangs 2/π of its radius below its centre (Pappus); taller sides lift the centre of gravity', () => {
    expect(panelCentreDepth({ insideRadius: 200, thickness: 0.01, sideHeight: 0 })).toBeCloseTo(
      (200 * 2) / Math.PI,
      2,
    );
    expect(panelCentreDepth({ insideRadius: 200, thickness: 12, sideHeight: 300 })).toBeLessThan(
      panelCentreDepth({ insideRadius: 200, thickness: 12, sideHeight: 100 }),
    );
  });

  test('the sheet runs without a step from arc to side, left and right alike', () => {
    expect(sheetOffset(163, 6)).toBe(0);
    expect(sheetOffset(163, 3)).toBeCloseTo((163 * Math.PI) / 2, 9);
    expect(sheetOffset(163, 9)).toBeCloseTo((-163 * Math.PI) / 2, 9);
    expect(sheetOffset(163, 2.999, 100)).toBeCloseTo((163 * Math.PI) / 2, 0);
    expect(sheetOffset(163, 2)).toBeUndefined();
    expect(sheetOffset(163, 2, 100)).toBeCloseTo((163 * Math.PI) / 2 + 163 * Math.tan(Math.PI / 6), 6);
    expect([12, 11.999, 0.001, 1].map((clock) => sheetOffset(163, clock, 200))).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
    fc.assert(
      fc.property(size(0.1, 11.9), size(0, 300), (clock, side) => {
        const [one, other] = [sheetOffset(163, clock, side), sheetOffset(163, 12 - clock, side)];
        expect(one === undefined).toBe(other === undefined);
        if (one !== undefined && other !== undefined) expect(one).toBeCloseTo(-other, 4);
      }),
    );
    expect([3, 6, 9, 2.9, 9.1, 12].map(isOnArc)).toEqual([true, true, true, false, false, false]);
  });
});

describe('helix', () => {
  test('an edge is longer than the way round and the pitch, shorter than both', () => {
    fc.assert(
      fc.property(size(10, 1500), size(10, 1500), (diameter, pitch) => {
        const edge = edgeLength(diameter, pitch);
        expect(edge).toBeGreaterThanOrEqual(Math.max(Math.PI * diameter, pitch));
        expect(edge).toBeLessThanOrEqual(Math.PI * diameter + pitch);
      }),
    );
  });

  test('the area agrees with adding up thin strips', () => {
    fc.assert(
      fc.property(shape, (s) => {
        const strips = 2000;
        const width = (s.outside - s.inside) / 2 / strips;
        let sum = 0;
        for (let i = 0; i < strips; i++) {
          const r = s.inside / 2 + (i + 0.5) * width;
          sum += Math.hypot(2 * Math.PI * r, s.pitch) * width;
        }
        expect(flightArea(s) / sum).toBeCloseTo(1, 5);
      }),
    );
  });

  test('the flat blank has the width of the flight and edges of the helix’s length', () => {
    fc.assert(
      fc.property(shape, (s) => {
        const blank = flatBlank(s);
        const part = 1 - blank.gap / 360;
        expect(2 * Math.PI * blank.outerRadius * part).toBeCloseTo(blank.outerEdge, 6);
        expect(2 * Math.PI * blank.innerRadius * part).toBeCloseTo(blank.innerEdge, 6);
        expect(blank.outerRadius - blank.innerRadius).toBeCloseTo((s.outside - s.inside) / 2, 9);
      }),
    );
  });

  test('a spring gives in proportion, and half as much under its own weight', () => {
    const spring = { shape: { outside: 300, inside: 180, pitch: 300 }, thickness: 20 };
    expect(springStretch(spring, -2000, 600)).toBeCloseTo(-4 * springStretch(spring, 1000, 300), 9);
    expect(ownWeightStretch(spring, 1268, 12_000)).toBeCloseTo(springStretch(spring, 1268, 12_000) / 2, 12);
  });

  test('torsion of a bar: 0.141 a⁴ for a square, near ab³/3 for a thin strip (handbook values)', () => {
    expect(torsionConstant(10, 10) / 10 ** 4).toBeCloseTo(0.141, 3);
    expect(torsionConstant(1000, 10) / (1000 * 10 ** 3)).toBeCloseTo(1 / 3, 2);
    expect(torsionConstant(60, 20)).toBe(torsionConstant(20, 60));
  });
});

describe('crescent', () => {
  const clearance = size(0.5, 60);
  const wear = size(0.01, 30);
  const radius = size(100, 600);

  test('is deepest at the bottom, alike on both sides, and nothing beyond its edge', () => {
    fc.assert(
      fc.property(clearance, wear, radius, size(0, 180), (e, w, screwRadius, angle) => {
        const of = { e, screwRadius };
        expect(crescentWear(of, w, 0)).toBeCloseTo(w, 9);
        expect(crescentWear(of, w, angle)).toBe(crescentWear(of, w, -angle));
        expect(crescentWear(of, w, angle)).toBeLessThanOrEqual(w + 1e-9);
        if (angle > crescentEdge(of, w) + 1e-6) expect(crescentWear(of, w, angle)).toBeCloseTo(0, 9);
        // The first order overstates it everywhere.
        expect(crescentWear(of, w, angle)).toBeLessThanOrEqual(
          Math.max(0, (e + w) * Math.cos((angle * Math.PI) / 180) - e) + 1e-9,
        );
      }),
    );
  });

  test('the worn liner lies on the screw’s circle: every point is one screw radius from its centre', () => {
    fc.assert(
      fc.property(clearance, wear, radius, size(0, 1), (e, w, screwRadius, share) => {
        const of = { e, screwRadius };
        const angle = (share * crescentEdge(of, w) * Math.PI) / 180;
        const r = screwRadius + e + crescentWear(of, w, (angle * 180) / Math.PI);
        // A second road: Pythagoras in the plane, without the law of cosines.
        expect(Math.hypot(r * Math.sin(angle), r * Math.cos(angle) - (e + w))).toBeCloseTo(screwRadius, 6);
      }),
    );
  });

  test('more wear is wider, and width tells the depth again', () => {
    fc.assert(
      fc.property(clearance, wear, radius, (e, w, screwRadius) => {
        const of = { e, screwRadius };
        // Up to where the strip is widest; wear never gets that far: d² = R² − r².
        fc.pre((e + 1.1 * w) ** 2 < e * (2 * screwRadius + e));
        expect(crescentEdge(of, w * 1.1)).toBeGreaterThan(crescentEdge(of, w));
        expect(depthFromEdge(of, crescentEdge(of, w))).toBeCloseTo(w, 5);
      }),
    );
  });

  test('a strip wider than the screw can wear is told as such; without wear there is none', () => {
    expect(depthFromEdge({ e: 7, screwRadius: 156 }, 85)).toBeUndefined();
    expect(crescentEdge({ e: 7, screwRadius: 156 }, 0)).toBe(0);
    expect(crescentWear({ e: 7, screwRadius: 156 }, 6, 180)).toBe(0);
  });
});

describe('clearance', () => {
  test('trough 175, liner 12, screw 312: e = 7; a screw of 330 does not fit', () => {
    expect(radialClearance(175, 12, 312)).toBe(7);
    expect(radialClearance(175, 12, 330)).toBe(-2);
  });
});

describe('capacity and drive', () => {
  test('a falling conveyor gives power back, a rising one takes it', () => {
    const at = (incline: number) =>
      conveyingPower({
        massFlow: 10,
        length: 12_000,
        rise: rise(12_000, incline),
        resistanceFactor: 3,
        diameter: 350,
      });
    expect(at(-20).lift).toBeCloseTo(-at(20).lift, 9);
    expect(rise(10_000, 30)).toBeCloseTo(5000, 9);
    expect(at(20).total).toBeCloseTo(at(20).material + at(20).lift + at(20).empty, 12);
    expect(torque(0, 18)).toBe(0);
  });
});

describe('heat', () => {
  test('cooling shrinks, and a liner that does not grow against its steel does not buckle', () => {
    expect(freeGrowth(12_000, 200e-6, -20)).toBe(-48);
    expect(bucklingPitch(12, 188e-6, 0)).toBeUndefined();
    expect(bucklingPitch(12, 188e-6, -20)).toBeUndefined();
    expect(bucklingPitch(12, 188e-6, 40)).toBeLessThan(bucklingPitch(12, 188e-6, 20) ?? 0);
  });
});

describe('lifts', () => {
  test('a flatter sling pulls harder; a bigger team never lifts less', () => {
    fc.assert(
      fc.property(size(1, 2000), size(0, 80), (mass, angle) => {
        expect(slopingLegTension(mass, angle + 5, 20)).toBeGreaterThan(slopingLegTension(mass, angle, 20));
      }),
    );
    for (let people = 1; people < 6; people++)
      expect(teamCapability(25, people + 1)).toBeGreaterThanOrEqual(teamCapability(25, people));
    expect([20, 25, 30, 35, 37.5, 40].map((mass) => peopleNeeded(mass, 25))).toEqual([
      1,
      1,
      2,
      3,
      3,
      undefined,
    ]);
  });
});
describe('what cannot be is refused in words', () => {
  test.each<[string, () => unknown, RegExp]>([
    [
      'a liner thicker than the trough',
      () => developedWidth({ insideRadius: 10, thickness: 12, sideHeight: 0 }),
      /liner thickness \(12 mm\) must be below the inside radius/,
    ],
    [
      'a flight inside out',
      () => flightArea({ outside: 100, inside: 200, pitch: 300 }),
      /inside diameter \(200 mm\) must be below the outside diameter/,
    ],
    ['no pitch', () => edgeLength(300, 0), /pitch is 0 mm; it must be above zero/],
    [
      'a screw too large for its crescent',
      () => crescentEdge({ e: -1, screwRadius: 156 }, 3),
      /radial clearance is -1 mm/,
    ],
    ['NaN', () => edgeLength(NaN, 300), /diameter is NaN mm/],
    ['infinite length', () => freeGrowth(Infinity, 200e-6, 20), /length is Infinity mm/],
    [
      'more than full',
      () => volumeFlow({ outside: 300, core: 0, pitch: 300, speed: 10, fill: 1.2 }),
      /fill is 1.2/,
    ],
    ['torque of a standing screw', () => torque(5, 0), /speed is 0 rpm/],
    [
      'a level sling',
      () => slopingLegTension(100, 90, 0),
      /sling angle is 90 deg; it must lie between 0 and 89/,
    ],
    ['half a person', () => teamCapability(25, 1.5), /whole people/],
  ])('%s', (_, call, message) => {
    expect(call).toThrow(RangeError);
    expect(call).toThrow(message);
  });
});
