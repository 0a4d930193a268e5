/** The sections of a DXF file around its entities: header, tables, blocks and objects, as each version requires them. */
import type { Drawing, LayerName } from '../drawing.ts';
import type { DxfLines } from './dxfLines.ts';

/** What the sections before the entities must know. */
interface Opening {
  readonly modern: boolean;
  readonly layers: readonly LayerName[];
  readonly extents: Drawing['extents'];
  /** One more than the last handle of an entity. */
  readonly nextHandle: number;
}

/** Colour numbers by layer (of the format: 7 ink, 1 red, 8 grey); sorting is by name, colour only helps the eye. */
const COLOURS: Readonly<Record<LayerName, number>> = {
  OUTLINE: 7,
  HOLES: 7,
  OPENINGS: 7,
  SCRIBE: 1,
  PITCH: 8,
  TIPS: 8,
  TEETH: 7,
  CENTRES: 8,
  CASE: 8,
  LETTERING: 5,
};

/** Writes all that stands before the entities. */
export function openingSections(out: DxfLines, opening: Opening): void {
  header(out, opening);
  if (opening.modern) {
    out.add(0, 'SECTION').add(2, 'CLASSES').add(0, 'ENDSEC');
    modernTables(out, opening.layers);
    modernBlocks(out);
  } else plainTables(out, opening.layers);
}

/** Writes all that stands after the entities. */
export function closingSections(out: DxfLines, modern: boolean): void {
  if (!modern) return;
  out.add(0, 'SECTION').add(2, 'OBJECTS');
  out.add(0, 'DICTIONARY').add(5, 'C').add(330, '0').add(100, 'AcDbDictionary').add(281, 1);
  out.add(3, 'ACAD_GROUP').add(350, 'D');
  out.add(0, 'DICTIONARY').add(5, 'D').add(330, 'C').add(100, 'AcDbDictionary').add(281, 1);
  out.add(0, 'ENDSEC');
}

function header(out: DxfLines, { modern, extents, nextHandle }: Opening): void {
  const [minX, minY, maxX, maxY] = extents;
  out.add(0, 'SECTION').add(2, 'HEADER');
  out.add(9, '$ACADVER').add(1, modern ? 'AC1015' : 'AC1009');
  if (modern) {
    out.add(9, '$DWGCODEPAGE').add(3, 'ANSI_1252');
    out.add(9, '$HANDSEED').add(5, nextHandle.toString(16).toUpperCase());
    out.add(9, '$INSUNITS').add(70, 4);
    out.add(9, '$MEASUREMENT').add(70, 1);
  }
  out.add(9, '$EXTMIN').point(10, minX, minY);
  out.add(9, '$EXTMAX').point(10, maxX, maxY);
  out.add(0, 'ENDSEC');
}

function plainTables(out: DxfLines, layers: readonly LayerName[]): void {
  out.add(0, 'SECTION').add(2, 'TABLES');
  out.add(0, 'TABLE').add(2, 'LTYPE').add(70, 1);
  out.add(0, 'LTYPE').add(2, 'CONTINUOUS').add(70, 0).add(3, 'Solid line').add(72, 65).add(73, 0).real(40, 0);
  out.add(0, 'ENDTAB');
  out
    .add(0, 'TABLE')
    .add(2, 'LAYER')
    .add(70, layers.length + 1);
  for (const [name, colour] of [['0', 7] as const, ...layers.map((each) => [each, COLOURS[each]] as const)]) {
    out.add(0, 'LAYER').add(2, name).add(70, 0).add(62, colour).add(6, 'CONTINUOUS');
  }
  out.add(0, 'ENDTAB').add(0, 'ENDSEC');
}

/** Handles of the tables and of what every R2000 file must hold; entities start at 100 hexadecimal. */
const TABLES = {
  VPORT: '8',
  LTYPE: '5',
  LAYER: '2',
  STYLE: '3',
  VIEW: '6',
  UCS: '7',
  APPID: '9',
  DIMSTYLE: 'A',
} as const;
const BLOCK_RECORDS = '1';

function modernTables(out: DxfLines, layers: readonly LayerName[]): void {
  out.add(0, 'SECTION').add(2, 'TABLES');
  table(out, 'VPORT', TABLES.VPORT, 1);
  record(out, 'VPORT', '2E', TABLES.VPORT, 'AcDbViewportTableRecord').add(2, '*ACTIVE').add(70, 0);
  out.real(10, 0).real(20, 0).real(11, 1).real(21, 1).real(12, 0).real(22, 0).real(40, 1).real(41, 1);
  out.add(0, 'ENDTAB');
  table(out, 'LTYPE', TABLES.LTYPE, 3);
  for (const [name, handle] of [
    ['ByBlock', '14'],
    ['ByLayer', '15'],
    ['Continuous', '16'],
  ] as const) {
    record(out, 'LTYPE', handle, TABLES.LTYPE, 'AcDbLinetypeTableRecord').add(2, name).add(70, 0);
    out.add(3, '').add(72, 65).add(73, 0).real(40, 0);
  }
  out.add(0, 'ENDTAB');
  layerTable(out, layers);
  table(out, 'STYLE', TABLES.STYLE, 1);
  record(out, 'STYLE', '11', TABLES.STYLE, 'AcDbTextStyleTableRecord').add(2, 'Standard').add(70, 0);
  out.real(40, 0).real(41, 1).real(50, 0).add(71, 0).real(42, 2.5).add(3, 'txt').add(4, '');
  out.add(0, 'ENDTAB');
  for (const name of ['VIEW', 'UCS'] as const) {
    table(out, name, TABLES[name], 0);
    out.add(0, 'ENDTAB');
  }
  table(out, 'APPID', TABLES.APPID, 1);
  record(out, 'APPID', '12', TABLES.APPID, 'AcDbRegAppTableRecord').add(2, 'ACAD').add(70, 0);
  out.add(0, 'ENDTAB');
  table(out, 'DIMSTYLE', TABLES.DIMSTYLE, 1);
  out.add(100, 'AcDbDimStyleTable').add(71, 0);
  out.add(0, 'DIMSTYLE').add(105, '27').add(330, TABLES.DIMSTYLE).add(100, 'AcDbSymbolTableRecord');
  out.add(100, 'AcDbDimStyleTableRecord').add(2, 'Standard').add(70, 0).add(0, 'ENDTAB');
  table(out, 'BLOCK_RECORD', BLOCK_RECORDS, 2);
  for (const { name, handle } of SPACES) {
    record(out, 'BLOCK_RECORD', handle, BLOCK_RECORDS, 'AcDbBlockTableRecord').add(2, name);
  }
  out.add(0, 'ENDTAB').add(0, 'ENDSEC');
}

function layerTable(out: DxfLines, layers: readonly LayerName[]): void {
  table(out, 'LAYER', TABLES.LAYER, layers.length + 1);
  const all = [['0', 7] as const, ...layers.map((each) => [each, COLOURS[each]] as const)];
  all.forEach(([name, colour], index) => {
    const handle = (0x40 + index).toString(16).toUpperCase();
    record(out, 'LAYER', handle, TABLES.LAYER, 'AcDbLayerTableRecord').add(2, name).add(70, 0);
    out.add(62, colour).add(6, 'Continuous').add(370, -3);
  });
  out.add(0, 'ENDTAB');
}

const SPACES = [
  { name: '*Model_Space', handle: '1F', begin: '20', end: '21' },
  { name: '*Paper_Space', handle: '1B', begin: '1C', end: '1D' },
] as const;

function modernBlocks(out: DxfLines): void {
  out.add(0, 'SECTION').add(2, 'BLOCKS');
  for (const { name, handle, begin, end } of SPACES) {
    out.add(0, 'BLOCK').add(5, begin).add(330, handle).add(100, 'AcDbEntity').add(8, '0').add(100, 'AcDbBlockBegin');
    out.add(2, name).add(70, 0).point(10, 0, 0).add(3, name).add(1, '');
    out.add(0, 'ENDBLK').add(5, end).add(330, handle).add(100, 'AcDbEntity').add(8, '0').add(100, 'AcDbBlockEnd');
  }
  out.add(0, 'ENDSEC');
}

function table(out: DxfLines, name: string, handle: string, count: number): void {
  out.add(0, 'TABLE').add(2, name).add(5, handle).add(330, '0').add(100, 'AcDbSymbolTable').add(70, count);
}

function record(out: DxfLines, kind: string, handle: string, owner: string, marker: string): DxfLines {
  return out.add(0, kind).add(5, handle).add(330, owner).add(100, 'AcDbSymbolTableRecord').add(100, marker);
}
