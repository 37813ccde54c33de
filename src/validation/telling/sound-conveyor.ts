// A conveyor for examples that need one in a plant of their own, or a second one: nothing in it gives a finding.

/** `more`: further facts, a line each. */
export function soundConveyor(name: string, plant: string, ...more: readonly string[]): string {
  const facts = [
    `plant ${plant}`,
    'length 12 m',
    'incline 20 deg',
    'trough inside radius 226 mm side height 260 mm plate 4 mm',
    'screw Spiral400',
    'liner TwoLayer12',
    'commissioned 2024-01-08 meter 0 h',
    'break Gate at 7 m to 7.5 m slide gate allowance 20 mm',
    'access Floor at 0 m to 12 m ground',
    'isolation Q1 electrical',
    'isolation Feed material',
    ...more,
  ];
  return [`conveyor ${name} {`, ...facts.map((fact) => `  ${fact}`), '}'].join('\n');
}
