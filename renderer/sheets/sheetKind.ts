/** How a workshop file is shown and what it is called. */

/** `picture` drawn from its own bytes, `machine` read by machines, `text` read by people. */
export function sheetKind(name: string): 'picture' | 'machine' | 'text' {
  if (name.endsWith('.svg')) return 'picture';
  return /\.(dxf|ngc|csv)$/.test(name) ? 'machine' : 'text';
}

const ENDINGS: readonly (readonly [RegExp, string])[] = [
  [/-cut\.dxf$/, 'To cut, DXF'],
  [/-cut\.svg$/, 'To cut, SVG'],
  [/-numbers\.dxf$/, 'Numbers, DXF'],
  [/-numbers\.svg$/, 'Numbers sheet'],
  [/-context\.svg$/, 'Context sheet'],
  [/-drill\.ngc$/, 'Drill program'],
  [/-holes\.csv$/, 'Table of holes'],
  [/-steps\.txt$/, 'Marking-out steps'],
  [/^preflight\.txt$/, 'Pre-flight report'],
];

/** "Back plate, upper face: numbers sheet" in short: the kind of file, then plate and face from the name. */
export function sheetTitle(name: string): string {
  const ending = ENDINGS.find(([pattern]) => pattern.test(name));
  if (!ending) return name;
  const where = name.replace(ending[0], '').replaceAll('-', ' ').trim();
  return where === '' ? ending[1] : `${ending[1]} · ${where}`;
}
