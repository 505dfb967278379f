/** server/publish/write/face-coverage.ts - which characters a face has a shape for.
 *  May import: nothing. Reads the `cmap` table of an OpenType file (formats 4 and 12, those that cover Unicode). */

export type CodePoints = ReadonlySet<number>;

/** Throws RangeError when the bytes are no OpenType face with such a table. */
export function codePointsOf(bytes: Uint8Array): CodePoints {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const points = new Set<number>();
  for (const start of unicodeTables(view, tableStart(view, "cmap"))) {
    const format = view.getUint16(start);
    if (format === 4) addSegments(view, start, points);
    else if (format === 12) addGroups(view, start, points);
  }
  if (points.size === 0) throw new RangeError("The face has no table of Unicode characters.");
  return points;
}

function tableStart(view: DataView, name: string): number {
  for (let index = 0; index < view.getUint16(4); index += 1) {
    const record = 12 + index * 16;
    const tag = [0, 1, 2, 3].map((at) => String.fromCharCode(view.getUint8(record + at))).join("");
    if (tag === name) return view.getUint32(record + 8);
  }
  throw new RangeError(`The face has no table “${name}”.`);
}

/** Offsets of the subtables for Unicode: platform 0, or platform 3 with encoding 1 or 10. */
function unicodeTables(view: DataView, cmap: number): number[] {
  const starts: number[] = [];
  for (let index = 0; index < view.getUint16(cmap + 2); index += 1) {
    const record = cmap + 4 + index * 8;
    const platform = view.getUint16(record);
    const encoding = view.getUint16(record + 2);
    if (platform === 0 || (platform === 3 && (encoding === 1 || encoding === 10))) {
      starts.push(cmap + view.getUint32(record + 4));
    }
  }
  return starts;
}

function addSegments(view: DataView, start: number, points: Set<number>): void {
  const doubled = view.getUint16(start + 6);
  const ends = start + 14;
  const starts = ends + doubled + 2;
  const deltas = starts + doubled;
  const offsets = deltas + doubled;
  for (let at = 0; at < doubled; at += 2) {
    const from = view.getUint16(starts + at);
    const to = view.getUint16(ends + at);
    const delta = view.getUint16(deltas + at);
    const offset = view.getUint16(offsets + at);
    for (let point = from; point <= to && point < 0xffff; point += 1) {
      const glyph = offset === 0 ? point + delta : view.getUint16(offsets + at + offset + (point - from) * 2);
      if ((glyph & 0xffff) !== 0) points.add(point);
    }
  }
}

function addGroups(view: DataView, start: number, points: Set<number>): void {
  for (let index = 0; index < view.getUint32(start + 12); index += 1) {
    const group = start + 16 + index * 12;
    const from = view.getUint32(group);
    const to = view.getUint32(group + 4);
    const glyph = view.getUint32(group + 8);
    for (let point = from; point <= to; point += 1) if (glyph + point - from !== 0) points.add(point);
  }
}
