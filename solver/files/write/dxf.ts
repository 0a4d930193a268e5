/**
 * DXF drawings: R12 by default, because every machine reads it, R2000 on request.
 *
 * Only CIRCLE, ARC, LINE and polylines with bulges are written: no splines, no blocks, no texts (lettering is single
 * strokes on its own layer). R12 has no unit variable, so the lettering of every sheet says millimetres; R2000 carries
 * $INSUNITS 4.
 *
 * Sources: Autodesk DXF Reference (entities, header variables); the ezdxf project's documentation of the file structure.
 */
import { piecesOfPath } from '../draw/extents.ts';
import { type Drawing, LAYER_NAMES, type LayerName, type ShapeOf } from '../drawing.ts';
import { DxfLines } from './dxfLines.ts';
import { closingSections, openingSections } from './dxfSections.ts';
import { type DrawingSink, walkDrawing } from './walk.ts';

/** Version and manner of the file. */
export interface DxfOptions {
  readonly version?: 'R12' | 'R2000' | undefined;
  /** Outlines as polylines with bulges (default), or as single lines and arcs for readers that ignore bulges. */
  readonly outlines?: 'bulged' | 'pieces' | undefined;
}

/** The drawing as a DXF file: same drawing, same bytes. */
export function writeDxf(drawing: Drawing, options: DxfOptions = {}): string {
  const modern = options.version === 'R2000';
  const entities = new Entities(modern, options.outlines === 'pieces');
  walkDrawing(drawing, entities);
  const layers = LAYER_NAMES.filter((name) => entities.layers.has(name));
  const out = new DxfLines();
  openingSections(out, { modern, layers, extents: drawing.extents, nextHandle: entities.nextHandle });
  out.add(0, 'SECTION').add(2, 'ENTITIES');
  const text = out.text() + entities.out.text();
  const end = new DxfLines().add(0, 'ENDSEC');
  closingSections(end, modern);
  return text + end.add(0, 'EOF').text();
}

/** Everything that the sections need has a lower handle. */
const FIRST_ENTITY_HANDLE = 0x100;
const MODEL_SPACE_HANDLE = '1F';
const DEGREES = 180 / Math.PI;

/** The entities section: a sink of the walk over a drawing. */
class Entities implements DrawingSink {
  readonly out = new DxfLines();
  readonly layers = new Set<LayerName>();
  nextHandle = FIRST_ENTITY_HANDLE;
  private current: LayerName = 'OUTLINE';

  constructor(
    private readonly modern: boolean,
    private readonly inPieces: boolean,
  ) {}

  layer(name: LayerName): void {
    this.current = name;
    this.layers.add(name);
  }

  line({ from, to }: ShapeOf<'line'>): void {
    this.start('LINE', 'AcDbLine').point(10, from[0], from[1]).point(11, to[0], to[1]);
  }

  circle({ centre, radius }: ShapeOf<'circle'>): void {
    this.start('CIRCLE', 'AcDbCircle').point(10, centre[0], centre[1]).real(40, radius);
  }

  arc({ centre, radius, start, end }: ShapeOf<'arc'>): void {
    this.start('ARC', 'AcDbCircle').point(10, centre[0], centre[1]).real(40, radius);
    this.marker('AcDbArc');
    this.out.real(50, degrees(start)).real(51, degrees(end));
  }

  path(path: ShapeOf<'path'>): void {
    if (this.inPieces) {
      for (const piece of piecesOfPath(path)) {
        if (piece.kind === 'line') this.line(piece);
        else this.arc(piece);
      }
    } else if (this.modern) this.lightPolyline(path);
    else this.polyline(path);
  }

  /** R12: a POLYLINE with its vertices as entities of their own. */
  private polyline(path: ShapeOf<'path'>): void {
    this.start('POLYLINE')
      .add(66, 1)
      .point(10, 0, 0)
      .add(70, path.closed ? 1 : 0);
    for (const vertex of path.vertices) {
      this.start('VERTEX').point(10, vertex.x, vertex.y);
      if (vertex.bulge !== 0) this.out.real(42, vertex.bulge);
    }
    this.start('SEQEND');
  }

  /** R2000: one LWPOLYLINE. */
  private lightPolyline(path: ShapeOf<'path'>): void {
    this.start('LWPOLYLINE', 'AcDbPolyline')
      .add(90, path.vertices.length)
      .add(70, path.closed ? 1 : 0);
    for (const vertex of path.vertices) {
      this.out.real(10, vertex.x).real(20, vertex.y);
      if (vertex.bulge !== 0) this.out.real(42, vertex.bulge);
    }
  }

  /** Kind and layer of an entity, with handle, owner and marker where the version wants them. */
  private start(kind: string, marker?: string): DxfLines {
    this.out.add(0, kind);
    if (this.modern) {
      this.out.add(5, this.nextHandle.toString(16).toUpperCase()).add(330, MODEL_SPACE_HANDLE).add(100, 'AcDbEntity');
      this.nextHandle++;
    }
    this.out.add(8, this.current);
    if (marker !== undefined) this.marker(marker);
    return this.out;
  }

  private marker(name: string): void {
    if (this.modern) this.out.add(100, name);
  }
}

const degrees = (angle: number): number => (((angle * DEGREES) % 360) + 360) % 360;
