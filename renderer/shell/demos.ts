/** The demo movements and the templates that come with the program, loaded when they are asked for. */
const files = import.meta.glob<string>('../../demo-data/*.json', { query: '?raw', import: 'default' });
const templates = import.meta.glob<string>('../../demo-data/templates/*.json', { query: '?raw', import: 'default' });

const nameOf = (path: string): string => path.replace(/^.*\//, '').replace(/\.json$/, '');

/** The demo that the first start shows. */
export const FIRST_DEMO = 'moons-of-jupiter';

/** Names of the demos, in the order of the alphabet. */
export const demoNames: readonly string[] = Object.keys(files).map(nameOf).sort();

/** Names of the templates: plates and pillars to begin a train on, in the order of the alphabet. */
export const templateNames: readonly string[] = Object.keys(templates).map(nameOf).sort();

/** Text of a demo or a template; undefined when there is none of that name. */
export async function demoText(name: string): Promise<string | undefined> {
  const all = { ...files, ...templates };
  const path = Object.keys(all).find((each) => nameOf(each) === name);
  return path === undefined ? undefined : all[path]?.();
}
