/** Long functions of the solver are written one way: steps that can be watched, and a sister that runs them to the end. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runSteps, type Steps, watchSteps } from '../../solver/steps.ts';

const SOLVER = resolve(import.meta.dirname, '../../solver');
const files = readdirSync(SOLVER, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .map((file) => ({ file: file.replaceAll('\\', '/'), text: readFileSync(join(SOLVER, file), 'utf8') }));

/** All generators, with what they are declared to give. */
const generators = files.flatMap(({ file, text }) =>
  [...text.matchAll(/(export )?function\* (\w+)(?:<\w+>)?\([\s\S]*?\): ([\s\S]*?) \{\n/g)].map(
    ([, exported, name = '', gives = '']) => ({ file, text, name, gives, isExported: exported !== undefined }),
  ),
);

describe('long functions', () => {
  it('are named Steps when they have an answer at their end, and nothing else is', () => {
    expect(generators.length).toBeGreaterThan(15);
    for (const { file, name, gives } of generators) {
      expect(`${file} ${name}: ${gives}`).toMatch(
        name.endsWith('Steps') ? /: Steps</ : /: Generator<[^<>]*(\[[^\]]*\])?(, void, void)?>$/,
      );
    }
  });

  it('have a sister that runs them to the end, wherever a face of a room offers them', () => {
    const faces = files.filter(({ file }) => file.endsWith('/index.ts'));
    const offered = faces.flatMap(({ file, text }) =>
      [...text.matchAll(/\b(\w+)Steps\b/g)]
        .map(([, name = '']) => ({ file, text, name }))
        .filter(({ name }) => generators.some((each) => each.name === `${name}Steps`)),
    );
    expect(offered.length).toBeGreaterThanOrEqual(5);
    for (const { file, text, name } of offered) {
      expect(text, `${file} offers ${name}Steps without ${name}`).toMatch(new RegExp(`\\b${name}\\b`));
      const home = generators.find((each) => each.name === `${name}Steps`);
      expect(home?.text, name).toMatch(
        new RegExp(`export function ${name}\\([\\s\\S]*?return runSteps\\(${name}Steps\\(`),
      );
    }
  });

  it('give the same answer run and watched, and stop where they are told to', () => {
    function* countSteps(to: number): Steps<number, string> {
      for (let i = 1; i <= to; i++) yield i;
      return `counted to ${to}`;
    }
    const told: number[] = [];
    expect(runSteps(countSteps(3))).toBe('counted to 3');
    expect(
      watchSteps(countSteps(3), (i) => {
        told.push(i);
        return true;
      }),
    ).toBe('counted to 3');
    expect(told).toEqual([1, 2, 3]);
    expect(watchSteps(countSteps(3), (i) => i < 2)).toEqual({ kind: 'stopped' });
  });
});
