// A finding's key as the short text that services keep to know it again.

import { createHash } from 'node:crypto';

export function fingerprintOf(key: string): string {
  return createHash('sha256').update(key).digest('hex').slice(0, 32);
}
