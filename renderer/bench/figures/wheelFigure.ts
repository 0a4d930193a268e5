/** A wheel in plan: pitch circle in long-dash-dot and tip circle continuous (ISO 2203), roots, bore, hub, arms, teeth. */

import type { Wheel } from '../../../solver/movement/schema.ts';
import type { WheelSize } from '../../../solver/teeth/index.ts';
import type { WheelShape } from '../../state/derive/wheelShape.ts';
import type { EngravedFigure } from '../engraver.ts';
import type { ArcStroke, Stroke } from '../strokes/stroke.ts';
import { MIDDLE, THIN } from './lineWidths.ts';
import { strokesOfOutline } from './outlineStrokes.ts';

const circle = (radius: number, manner: Omit<ArcStroke, 'kind' | 'x' | 'y' | 'radius'>): ArcStroke => ({
  kind: 'arc',
  x: 0,
  y: 0,
  radius,
  ...manner,
});

/** The figure of a wheel, about its own centre. */
export function wheelFigure(wheel: Wheel, size: WheelSize, shape: WheelShape | undefined): EngravedFigure {
  const strokes: Stroke[] = [
    circle(size.tipRadius, { pen: 'ink', width: MIDDLE, untilTeeth: size.module }),
    circle(size.pitchRadius, { pen: 'soft', width: THIN, type: 'longDashDot' }),
    circle(size.rootRadius, { pen: 'faint', width: THIN, from: 0.75, untilTeeth: size.module }),
  ];
  if (wheel.bore) strokes.push(circle(wheel.bore / 2, { pen: 'soft', width: THIN, from: 0.5 }));
  if (wheel.hub) strokes.push(circle(wheel.hub.diameter / 2, { pen: 'soft', width: THIN, from: 0.8 }));
  for (const window of shape?.windows ?? []) {
    strokes.push(...strokesOfOutline(window, { x: 0, y: 0 }, { pen: 'soft', width: THIN, from: 0.8 }));
  }
  const figure: EngravedFigure = { owner: wheel.id, strokes };
  if (!shape) return figure;
  return { ...figure, teeth: { count: wheel.teeth, module: size.module, profile: shape.profile } };
}
