/** `depthwright cutting`: blank, cutter and dividing of each wheel, and with `--out` its outline and check-off list as files. */
import { wheelFiles } from '../../solver/files/index.ts';
import type { Movement, Wheel } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { type CuttingData, cuttingDataOf } from '../../solver/teeth/cutting/index.ts';
import { wheelOutline } from '../../solver/teeth/outlines/index.ts';
import {
  CUTTING_CAUTIONS,
  counted,
  cutterSays,
  cuttingLines,
  cuttingSheet,
  dividingWaySays,
  nearWaySays,
  type Speaker,
  sizeSays,
  speakerOf,
  teethSay,
} from '../../solver/words/index.ts';
import { type Answer, CommandRefusal } from './answer.ts';
import { inBlocks } from './columns.ts';
import { written } from './filesAnswers.ts';
import { partsMeant } from './meant.ts';
import { titleLine } from './plantAnswer.ts';

/** The wheels asked for, by name or id; all of them where none is. */
function wheelsAsked(asked: string | undefined, { wheels }: Movement, speaker: Speaker): readonly Wheel[] {
  if (asked === undefined) return wheels;
  const ids = new Set(partsMeant(asked, wheels, speaker));
  if (ids.size > 0) return wheels.filter(({ id }) => ids.has(id));
  const known = wheels.map(({ id }) => speaker.name(id)).join(', ');
  throw new CommandRefusal(`There is no wheel "${asked}". Wheels of this movement: ${known || 'none'}.`);
}

/** The data for another program: all its fields, with the words beside the kinds. */
function cuttingJson({ doubts, ...data }: CuttingData, speaker: Speaker): object {
  return {
    ...data,
    name: speaker.name(data.wheel),
    size: sizeSays(data.size, speaker),
    cutter: { ...data.cutter, says: cutterSays(data.cutter, speaker) },
    dividing: data.dividing.map((way) => ({ ...way, says: dividingWaySays(way, speaker) })),
    nearest: data.nearest.map((way) => ({ ...way, says: nearWaySays(way, speaker) })),
    cautions: CUTTING_CAUTIONS,
    warns: doubts.map((doubt) => teethSay(doubt, speaker)),
  };
}

/** Blank, cutter and dividing of every wheel. */
export function cuttingAnswer({ movement }: PlacedMovement, asked: string | undefined): Answer {
  const speaker = speakerOf(movement, { minus: '-' });
  const wheels = wheelsAsked(asked, movement, speaker).map((wheel) => cuttingDataOf(wheel, movement));
  const blocks = wheels.map((data) => cuttingLines(data, speaker));
  return {
    text: inBlocks([[titleLine(movement)], ...blocks, CUTTING_CAUTIONS.map((caution) => `! ${caution}`)]),
    json: { title: movement.title, wheels: wheels.map((data) => cuttingJson(data, speaker)) },
    code: 0,
  };
}

/** Turns of the handle for one turn of the table that check-off lists are written for: what most small tables have. */
const TABLE_RATIO = 90;

/** Writes outline, numbers and check-off list of the wheels asked for, and tells the files' names. */
export async function wheelsAnswer(
  { movement }: PlacedMovement,
  out: string,
  asked: string | undefined,
): Promise<Answer> {
  const speaker = speakerOf(movement, { minus: '-' });
  const troubles: string[] = [];
  const files = wheelsAsked(asked, movement, speaker).flatMap((wheel) => {
    const data = cuttingDataOf(wheel, movement, { tableRatio: TABLE_RATIO });
    const outline = wheelOutline(wheel, movement, { phase: 0 });
    if (outline.kind === 'none') troubles.push(teethSay(outline.why, speaker));
    const words = { name: speaker.name(wheel.id), cutting: cuttingSheet(data, TABLE_RATIO, speaker) };
    return wheelFiles(words, outline.kind === 'outline' ? outline : undefined);
  });
  const names = await written(
    out,
    files.map(({ name, text }) => ({ name, content: text })),
  );
  const text = inBlocks([
    [titleLine(movement), `${counted(names.length, 'file')} written to ${out}:`],
    names.map((name) => `  ${name}`),
    ...(troubles.length > 0 ? [troubles] : []),
  ]);
  return { text, json: { title: movement.title, folder: out, files: names }, code: troubles.length > 0 ? 1 : 0 };
}
