/** `depthwright errors` as it is typed: text, JSON, and bad options told by name. */
import { describe, expect, it } from 'vitest';
import { depthwright } from './runCommand.ts';

const DEMO = 'demo-data/tide-dial.json';

describe('depthwright errors', () => {
  it('tells depths, gaps, checks and what each error does', async () => {
    const { code, out } = await depthwright(['errors', DEMO, '--trials', '100', '--holes', '0']);
    expect(out).toContain('Tide arbor 83 : 45 Lunar-day pipe');
    expect(out).toMatch(/Upper moon wheel and Pillar upper right/);
    expect(out.replace(/\s+/g, ' ')).toMatch(
      /0\.020 mm on "Tide arbor: depth from the day arbor" moves "Tide arbor: depth from the day arbor" by 0\.020 mm/,
    );
    expect(out.replace(/\s+/g, ' ')).toContain('100 of 100 trials could be planted');
    expect(code).toBe(0);
  });

  it('gives JSON that is the same each time', async () => {
    const asked = ['errors', DEMO, '--json', '--trials', '50', '--seed', '5'];
    const [first, second] = [await depthwright(asked), await depthwright(asked)];
    expect(first.out).toBe(second.out);
    const found = JSON.parse(first.out);
    expect(found).toMatchObject({ trials: 50, planted: 50, seed: 5 });
    expect(found.checks).toHaveLength(1);
  });

  it('names a bad option, what was found and what is expected', async () => {
    const bad = await depthwright(['errors', DEMO, '--holes', '-1']);
    expect(bad.code).toBe(2);
    expect(bad.err).toContain('--holes: found "-1", expected a ± from 0 to 5 mm');
    expect((await depthwright(['errors', DEMO, '--trials', '3.5'])).err).toContain('--trials: found "3.5"');
  });
});
