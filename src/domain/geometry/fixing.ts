// Does a countersunk bolt suit the sheet it holds? Head diameters: ISO 7721 (the theoretical ones) up to M10, DIN 7991 above;
// clearance holes: ISO 273, medium; washers: ISO 7089; nuts: ISO 4032; thread pitches: ISO 261; proof stresses of property
// class 8.8: ISO 898-1. Heads, nuts and stresses were compared with fastener tables in print; the rest is from memory.
// Lengths in mm, torques in N·m.

export interface BoltSize {
  readonly diameter: number;
  readonly pitch: number;
  /** Of a countersunk head of 90°, sharp-edged. */
  readonly head: number;
  readonly hole: number;
  readonly washer: number;
  readonly nut: number;
}

const sizes: Readonly<Record<string, BoltSize>> = {
  M5: { diameter: 5, pitch: 0.8, head: 10.4, hole: 5.5, washer: 1, nut: 4.7 },
  M6: { diameter: 6, pitch: 1, head: 12.6, hole: 6.6, washer: 1.6, nut: 5.2 },
  M8: { diameter: 8, pitch: 1.25, head: 17.3, hole: 9, washer: 1.6, nut: 6.8 },
  M10: { diameter: 10, pitch: 1.5, head: 20, hole: 11, washer: 2, nut: 8.4 },
  M12: { diameter: 12, pitch: 1.75, head: 24, hole: 13.5, washer: 2.5, nut: 10.8 },
  M16: { diameter: 16, pitch: 2, head: 30, hole: 17.5, washer: 3, nut: 14.8 },
  M20: { diameter: 20, pitch: 2.5, head: 36, hole: 22, washer: 3, nut: 18 },
};

/** Undefined for a size that no table here holds. */
export function boltSize(name: string): BoltSize | undefined {
  return sizes[name.toUpperCase()];
}

/** Depth of a 90° countersink at which the head lies flush: (head − hole) / 2; the hole as drilled, else the usual one. */
export function flushDepth({ head, hole: usual }: BoltSize, hole = usual): number {
  return Math.max(0, (head - hole) / 2);
}

/** Width of a 90° countersink at the surface: hole + 2 × depth. */
export function countersinkWidth(depth: number, hole: number): number {
  return hole + 2 * depth;
}

export interface Clamped {
  /** Of the liner and of the trough's plate. */
  readonly liner: number;
  readonly plate: number;
  /** Depth of the countersink, and the hole. */
  readonly countersink: number;
  readonly hole: number;
}

/**
 * Least length overall: liner + plate + washer + nut, less what the head lies below the surface. ISO 4032 nuts are in full hold
 * when the bolt's end is flush with them.
 */
export function leastBoltLength(size: BoltSize, { liner, plate, countersink, hole }: Clamped): number {
  const sunk = Math.max(0, countersink - flushDepth(size, hole));
  return liner + plate + size.washer + size.nut - sunk;
}

/** Tensile stress area of a thread, mm²: π/4 · (d − 0.9382 P)² (ISO 898-1). */
export function stressArea({ diameter, pitch }: BoltSize): number {
  return (Math.PI / 4) * (diameter - 0.9382 * pitch) ** 2;
}

/** What a bolt of property class 8.8 usually bears, N·m: 0.2 · d · 75 % of the proof load (dry, steel on steel). */
export function usualTorque(size: BoltSize): number {
  const proof = size.diameter <= 16 ? 580 : 600;
  return (0.2 * size.diameter * 0.75 * proof * stressArea(size)) / 1000;
}
