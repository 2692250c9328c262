/** The characters of a TrueType font, read from its "cmap" table (OpenType 1.9, formats 4 and 12). */
export function charactersOf(font: Uint8Array): ReadonlySet<number> {
  const view = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const tables = Array.from({ length: view.getUint16(4) }, (_, i) => 12 + 16 * i);
  const nameAt = (at: number) => String.fromCodePoint(...font.subarray(at, at + 4));
  const cmap = view.getUint32(tables.find((at) => nameAt(at) === 'cmap')! + 8);
  const maps = Array.from(
    { length: view.getUint16(cmap + 2) },
    (_, i) => cmap + view.getUint32(cmap + 8 + 8 * i),
  );
  const ranges = maps.flatMap((at) => {
    const format = view.getUint16(at);
    if (format === 12) {
      return Array.from({ length: view.getUint32(at + 12) }, (_, i) => [
        view.getUint32(at + 16 + 12 * i),
        view.getUint32(at + 20 + 12 * i),
      ]);
    }
    if (format !== 4) return [];
    const size = view.getUint16(at + 6);
    return Array.from({ length: size / 2 }, (_, i) => [
      view.getUint16(at + 16 + size + 2 * i),
      view.getUint16(at + 14 + 2 * i),
    ]);
  });
  return new Set(
    ranges.flatMap(([first, last]) =>
      Array.from({ length: last! - first! + 1 }, (_, i) => first! + i),
    ),
  );
}
