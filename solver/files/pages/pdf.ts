/**
 * Pages as a PDF file, written directly in millimetres: one matrix turns them into points, the page box is the paper's
 * own size, and PrintScaling None asks every viewer to print without fitting. No clock, no random name: the same pages
 * give the same bytes.
 *
 * Source: ISO 32000-1 (PDF 1.7): file structure 7.5, page objects 7.7.3, viewer preferences 12.2, composite fonts 9.7,
 * ToUnicode maps 9.10.3.
 */
import { zlibSync } from 'fflate';
import { trimmed } from '../../movement/decimal.ts';
import type { Page, Weight } from './page.ts';
import { contentOf } from './pdfContent.ts';
import type { FaceSubset, FaceWriter, SheetFonts } from './sheetFonts.ts';

/** What the file says of itself. */
export interface PdfInfo {
  readonly title: string;
  /** ISO date of the movement, never of the clock; left out when the movement has none. */
  readonly date?: string | undefined;
}

const POINTS_A_MM = 72 / 25.4;
const FACES: readonly Weight[] = ['regular', 'bold'];

/** The file. Pages may differ in size. */
export function writePdf(pages: readonly Page[], fonts: SheetFonts, info: PdfInfo): Uint8Array {
  const faces: Record<Weight, FaceWriter> = { regular: fonts.startSubset('regular'), bold: fonts.startSubset('bold') };
  const contents = pages.map((page) => contentOf(page, faces));
  const objects = new PdfObjects();
  const catalog = objects.reserve();
  const tree = objects.reserve();
  const used = FACES.filter((weight) => faces[weight].isUsed);
  const resources = used.map(
    (weight) => `/${weight === 'bold' ? 'FB' : 'FR'} ${fontObject(objects, faces[weight].finish())} 0 R`,
  );
  const kids = pages.map((page, index) => {
    const content = objects.stream('', latin1(contents[index] ?? ''));
    const box = `[0 0 ${trimmed(page.width * POINTS_A_MM, 4)} ${trimmed(page.height * POINTS_A_MM, 4)}]`;
    return objects.add(
      `<< /Type /Page /Parent ${tree} 0 R /MediaBox ${box} /Contents ${content} 0 R /Resources << /Font << ${resources.join(' ')} >> >> >>`,
    );
  });
  objects.put(tree, `<< /Type /Pages /Count ${kids.length} /Kids [${kids.map((kid) => `${kid} 0 R`).join(' ')}] >>`);
  const viewer = '/ViewerPreferences << /PrintScaling /None /PickTrayByPDFSize true >>';
  objects.put(catalog, `<< /Type /Catalog /Pages ${tree} 0 R ${viewer} >>`);
  const date = info.date === undefined ? '' : ` /CreationDate (D:${info.date.replaceAll('-', '')})`;
  const about = objects.add(`<< /Title ${unicodeString(info.title)} /Producer (Depthwright)${date} >>`);
  return objects.file(catalog, about);
}

/** The objects of a file, by number; the file is put together at the end. */
class PdfObjects {
  private readonly bodies: Uint8Array[] = [];

  reserve(): number {
    return this.bodies.push(new Uint8Array());
  }

  put(number: number, text: string): void {
    this.bodies[number - 1] = latin1(text);
  }

  add(text: string): number {
    return this.bodies.push(latin1(text));
  }

  stream(entries: string, bytes: Uint8Array): number {
    const packed = zlibSync(bytes, { level: 9 });
    const head = latin1(`<< ${entries} /Filter /FlateDecode /Length ${packed.length} >>\nstream\n`);
    return this.bodies.push(joined([head, packed, latin1('\nendstream')]));
  }

  file(root: number, info: number): Uint8Array {
    // The second line marks the file as binary for programs that guess (ISO 32000-1, 7.5.2).
    const parts: Uint8Array[] = [latin1('%PDF-1.7\n%\u00e2\u00e3\u00cf\u00d3\n')];
    let offset = parts[0]?.length ?? 0;
    const offsets = this.bodies.map((body, index) => {
      const at = offset;
      const piece = joined([latin1(`${index + 1} 0 obj\n`), body, latin1('\nendobj\n')]);
      parts.push(piece);
      offset += piece.length;
      return at;
    });
    const count = this.bodies.length + 1;
    const table = offsets.map((at) => `${String(at).padStart(10, '0')} 00000 n \n`).join('');
    parts.push(latin1(`xref\n0 ${count}\n0000000000 65535 f \n${table}`));
    parts.push(
      latin1(`trailer\n<< /Size ${count} /Root ${root} 0 R /Info ${info} 0 R >>\nstartxref\n${offset}\n%%EOF\n`),
    );
    return joined(parts);
  }
}

/** A composite font: glyph numbers are written as they are (Identity-H), and a map gives the characters back to readers. */
function fontObject(objects: PdfObjects, face: FaceSubset): number {
  const file = objects.stream(`/Length1 ${face.file.length}`, face.file);
  const descriptor = objects.add(
    `<< /Type /FontDescriptor /FontName /${face.name} /Flags 4 /FontBBox [${face.bounds.join(' ')}] /ItalicAngle 0 /Ascent ${face.ascent} /Descent ${face.descent} /CapHeight ${face.capHeight} /StemV 80 /FontFile2 ${file} 0 R >>`,
  );
  const descendant = objects.add(
    `<< /Type /Font /Subtype /CIDFontType2 /BaseFont /${face.name} /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> /FontDescriptor ${descriptor} 0 R /CIDToGIDMap /Identity /DW 600 /W [0 [${Array.from(face.widths, (width) => width ?? 600).join(' ')}]] >>`,
  );
  const map = objects.stream('', latin1(toUnicode(face.characters)));
  return objects.add(
    `<< /Type /Font /Subtype /Type0 /BaseFont /${face.name} /Encoding /Identity-H /DescendantFonts [${descendant} 0 R] /ToUnicode ${map} 0 R >>`,
  );
}

function toUnicode(characters: readonly string[]): string {
  const entries = Array.from(characters, (character, number) => ({ number, character: character ?? '' }))
    .filter(({ character }) => character !== '')
    .map(({ number, character }) => `<${hex4(number)}> <${utf16Hex(character)}>`);
  const blocks: string[] = [];
  // At most a hundred lines a block (ISO 32000-1, 9.10.3).
  for (let at = 0; at < entries.length; at += 100) {
    const own = entries.slice(at, at + 100);
    blocks.push(`${own.length} beginbfchar`, ...own, 'endbfchar');
  }
  return [
    '/CIDInit /ProcSet findresource begin',
    '12 dict begin',
    'begincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def',
    '/CMapType 2 def',
    '1 begincodespacerange',
    '<0000> <FFFF>',
    'endcodespacerange',
    ...blocks,
    'endcmap',
    'CMapName currentdict /CMap defineresource pop',
    'end',
    'end',
  ].join('\n');
}

const hex4 = (value: number): string => value.toString(16).toUpperCase().padStart(4, '0');

function utf16Hex(text: string): string {
  let hex = '';
  for (let index = 0; index < text.length; index++) hex += hex4(text.charCodeAt(index));
  return hex;
}

const unicodeString = (text: string): string => `<FEFF${utf16Hex(text)}>`;

function latin1(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length);
  for (let index = 0; index < text.length; index++) bytes[index] = text.charCodeAt(index);
  return bytes;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}
