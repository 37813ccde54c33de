import { describe, expect, test } from 'vitest';
import { codesIn, findingsIn, messageOf } from './findings-in.js';

describe('screw and trough', () => {
  test('a clearance exactly at the edge of its band is inside it', () => {
    // 226 − 12 − 400/2 = 14 mm.
    expect(codesIn('conveyor', '  clearance 14 mm to 20 mm')).toEqual([]);
    expect(codesIn('conveyor', '  clearance 5 mm to 14 mm')).toEqual([]);
    expect(codesIn('conveyor', '  clearance 15 mm to 20 mm')).toEqual(['TL202']);
  });

  test('a screw that a job brings is tried in the liner that the same job brings', () => {
    const lines = (liner: string): string => `
screw Large430 {
  shaftless
  outside diameter 430 mm
  pitch 350 mm
  flight 80 mm by 25 mm
}
liner Thin8 {
  layer ivory 4 mm
  layer teal 4 mm
  panel length 1200 mm ± 1 mm
  condemn at 2 mm
}
job J1 {
  conveyor DG1
  outage Spring27
  reline all with ${liner}
  change screw to Large430
  crews Alpha
  lift limit 500 kg
}`;
    // 2(226 − 12) = 428 mm for a screw of 430 mm; 2(226 − 8) = 436 mm.
    expect(codesIn('estate', lines('TwoLayer12'))).toContain('TL201');
    expect(codesIn('estate', lines('Thin8'))).not.toContain('TL201');
  });

  test('a left-hand screw turns the other way, and a change of hand is told at the change', () => {
    expect(codesIn('conveyor', '  rotation counter-clockwise')).toEqual([]);
    expect(codesIn('screw', '  hand left')).toEqual([]); // no rotation is declared
    const [finding] = findingsIn(
      'specifications',
      `
screw Left400 {
  shaftless
  outside diameter 400 mm
  pitch 350 mm
  hand left
}
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  rotation counter-clockwise
  commissioned 2024-01-08 meter 0 h
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 electrical
}
screw change DG1 2025-03-10 meter 6200 h { screw Left400 }`,
    );
    expect(finding?.code).toBe('TL209');
    expect(finding?.related?.map((one) => one.message)).toEqual(['the rotation of DG1']);
  });

  test('sizes in inches are as good as sizes in millimetres', () => {
    expect(codesIn('liner', '  layer ivory 1/4 in\n  layer teal 1/4 in')).toEqual([]);
    expect(codesIn('liner', '  layer ivory 1/4 mm\n  layer teal 1/4 in')).toContain('TL234');
  });

  test('a size beyond belief is told once, and what would be computed from it is left alone', () => {
    expect(codesIn('conveyor', '  trough inside radius 226 in side height 260 mm plate 4 mm')).toEqual([
      'TL234',
    ]);
    expect(codesIn('screw', '  outside diameter 400 in\n  pitch 350 mm')).toEqual(['TL234']);
    expect(codesIn('liner', '  layer ivory 10 in\n  layer teal 6 mm')).toEqual(['TL234']);
  });
});

describe('the length and what lies on it', () => {
  test('sections may be off by rounding, not by a millimetre', () => {
    expect(codesIn('conveyor', '  length 12 m\n  section S1 5999.6 mm\n  section S2 6 m')).toEqual([]);
    expect(codesIn('conveyor', '  length 12 m\n  section S1 5999 mm\n  section S2 6 m')).toEqual(['TL211']);
  });

  test('a conveyor that describes no sections is not asked to add them up', () => {
    expect(messageOf('TL211', 'conveyor', '  section S1 6 m')).toContain('6.00 m too little');
  });

  test('breaks that touch do not overlap', () => {
    expect(
      codesIn(
        'conveyor',
        '  break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm\n  break Gate at 7 m to 7.5 m slide gate allowance 20 mm\n  break Ring at 7.5 m to 7.6 m joint ring allowance 20 mm',
      ),
    ).toEqual([]);
  });

  test('a row of parts that runs over the end is told once', () => {
    expect(codesIn('conveyor', '  brace every 1 m from 1 m to 15 m')).toEqual(['TL212']);
  });

  test('a hold-down on either side only is not twice in one place', () => {
    expect(
      codesIn(
        'conveyor',
        '  hold-down every 1.5 m from 2.25 m to 11.25 m left side\n  hold-down every 1.5 m from 2.25 m to 11.25 m right side',
      ),
    ).toEqual([]);
    expect(
      codesIn(
        'conveyor',
        '  hold-down every 1.5 m from 2.25 m to 11.25 m both sides\n  hold-down at 3.75 m left side',
      ),
    ).toEqual(['TL216']);
  });

  test('temperatures of a plant that run backwards are told once, not for every conveyor', () => {
    expect(codesIn('plant', '  service temperature 35 degC to 5 degC')).toEqual(['TL213']);
  });
});

describe('numbers that come from outside', () => {
  test('drive power: ISO 7119, Q 10 t/h, L 12 m, H 5 m, λ 3, D 0.35 m', () => {
    // P = 10(3·12 + 5)/367 + 0.35·12/20 = 1.117 + 0.21 = 1.327 kW; sin⁻¹(5/12) = 24.624°. A shafted screw has the last term.
    const screw = '\nscrew Shaft350 {\n  shaft 100 mm\n  outside diameter 350 mm\n  pitch 350 mm\n}\n';
    const conveyor = (power: string): string => `${screw}conveyor C9 {
  plant Tarnholt
  length 12 m
  incline 24.624 deg
  trough inside radius 195 mm side height 230 mm plate 4 mm
  screw Shaft350
  liner TwoLayer12
  drive at head power ${power}
  capacity 10 t/h
  resistance factor 3
  commissioned 2024-01-08 meter 0 h
  break Gate at 7 m to 7.5 m slide gate allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 electrical
}`;
    expect(codesIn('specifications', conveyor('1.32 kW'))).toContain('TL222');
    expect(codesIn('specifications', conveyor('1.34 kW'))).not.toContain('TL222');
  });

  test('buckling pitch: flat strip of 12 mm at 30 K against carbon steel', () => {
    // l = π·12/√(3·188e-6·30) = 289.8 mm, the form that gives 355 mm at 20 K.
    expect(codesIn('liner', '  bolt M10 rows 2 pitch 289 mm countersink 4 mm')).toEqual([]);
    expect(codesIn('liner', '  bolt M10 rows 2 pitch 290 mm countersink 4 mm')).toEqual(['TL219']);
  });

  test('panel mass: π(226 − 6) + 2·260 = 1211.2 mm wide, 12 mm thick, at the stated 935 kg/m³ 13.59 kg/m', () => {
    expect(codesIn('liner', '  density 935 kg/m3\n  panel length 1839 mm ± 1 mm')).toEqual([]);
    expect(codesIn('liner', '  density 935 kg/m3\n  panel length 1841 mm ± 1 mm')).toEqual(['TL221']);
  });

  test('capacity: 47.124(D² − d²)·S·n·φ, three quarters of it left at 15° at most by 0.95', () => {
    // D 0.4, S 0.35, n 18, φ 0.4, ρ 900: 47.124·0.16·0.35·18·0.4 = 19.0 m³/h = 17.1 t/h level.
    const level = (capacity: string): string =>
      `  incline 0 deg\n  bulk density 900 kg/m3\n  fill 40 %\n  capacity ${capacity}`;
    expect(codesIn('conveyor', level('17 t/h'))).toEqual([]);
    expect(codesIn('conveyor', level('17.2 t/h'))).toEqual(['TL223']);
  });
});
