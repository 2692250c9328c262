/** Limits for values that come out of a JSON file, checked before anything else looks at them. */

/** Levels of objects and arrays within each other. */
export const DEEPEST = 8;

/** JSON.parse makes own properties of these; no file of ours has them, and no code of ours should meet them. */
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);

/** What is wrong with a parsed value, or null: nested too deeply, or with a key that has a meaning in JavaScript. */
export function findFault(value: unknown, level = 1): string | null {
  if (typeof value !== 'object' || value === null) return null;
  if (level > DEEPEST) return 'nested too deeply';
  for (const [key, inner] of Object.entries(value)) {
    if (FORBIDDEN.has(key)) return `a field called ${key}`;
    const fault = findFault(inner, level + 1);
    if (fault !== null) return fault;
  }
  return null;
}
