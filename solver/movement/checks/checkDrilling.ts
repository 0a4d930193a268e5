/** Choices for drilling that contradict each other. */
import type { Movement } from '../schema.ts';
import type { Report } from './fault.ts';

/** Reports heights in the wrong order, drills larger than their holes, and diameters and tool numbers given twice. */
export function checkDrilling({ drilling }: Movement, report: Report): void {
  const { safeHeight, clearHeight, tools } = drilling;
  if (safeHeight < clearHeight) {
    report({
      path: ['drilling', 'safeHeight'],
      found: `${safeHeight}, below the ${clearHeight} at which feeding starts`,
      expected: `at least ${clearHeight}`,
      remedy: 'raise “safeHeight”, or lower “clearHeight”',
    });
  }
  const seen = new Map<string, number>();
  tools.forEach((tool, index) => {
    const path = ['drilling', 'tools', index] as const;
    if (tool.drill !== undefined && tool.drill > tool.diameter) {
      report({
        path: [...path, 'drill'],
        found: `${tool.drill}, larger than the hole of ${tool.diameter}`,
        expected: `at most ${tool.diameter}`,
        remedy: 'give the drill that comes before the finished size',
      });
    }
    for (const field of ['diameter', 'number'] as const) {
      if (tool[field] === undefined) continue;
      const key = `${field} ${tool[field]}`;
      const first = seen.get(key);
      if (first === undefined) seen.set(key, index);
      else {
        report({
          path: [...path, field],
          found: `${tool[field]}, which drilling.tools[${first}] has already`,
          expected: field === 'diameter' ? 'one line for each diameter' : 'a number of its own for each drill',
          remedy: field === 'diameter' ? 'remove one of the two' : 'give one of the two another number',
        });
      }
    }
  });
}
