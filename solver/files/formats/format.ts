/** What a file format is: its ending, what reads it, and its own reader for the pre-flight. */
import type { Found } from '../preflight/found.ts';

/** Every format of a file that leaves the program; each has a file of its own in this folder. */
export type FormatName = 'dxf' | 'svg' | 'drill' | 'table' | 'text' | 'pdf' | 'movement';

/** All that the rest of the program asks of one format. */
export interface FileFormat<Name extends FormatName = FormatName> {
  readonly name: Name;
  /** Ending of its files, with the dot. */
  readonly ending: string;
  /** What it is called where a drawing comes in several. */
  readonly called: string;
  /** `picture` shown from its own bytes, `machine` read by machines, `text` read by people. */
  readonly seen: 'picture' | 'machine' | 'text';
  /** A drawing has a size and loops that close; a list has holes alone. */
  readonly holds: 'drawing' | 'list' | 'nothing to check';
  /** Takes out of a finished text what acts on whoever shows it; absent where the writer does so itself. */
  readonly clean?: (text: string) => string;
  /** Reads a file back for the pre-flight; absent where nothing can be checked. */
  readonly readBack?: (text: string) => Found;
}
