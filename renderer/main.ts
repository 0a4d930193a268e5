/**
 * Starts the window: the looks, the state, the shell (or the plain browser's part), the page.
 *
 * How the renderer is laid out, for whoever joins:
 * - `state/`    one module, `bench.svelte.ts`, holds the movement and all that is chosen; everything else is derived.
 *               `commands/` defines each command once for menu, key and button. Nothing here knows a component.
 * - `bench/`    the drawing. `scene.ts` turns the state into figures (`figures/`, plain data), `engraver.ts` draws
 *               them with three (`strokes/`), `lettering.ts` writes names and dimensions, `view.ts` alone converts
 *               between millimetres and pixels. `BenchSheet.svelte` joins them with the page.
 * - `gestures/` pointer events in, edits out, without a framework: `pointerHub.ts`, dragging, snapping, setting down.
 * - `panels/`   train list, slip, strip, title block; each reads the state and calls its methods or commands.
 * - `faces/`    what fills the middle: bench, levels, steps, sheets.
 * - `looks/`    tokens of the two looks and the type.
 */
import './looks/base.css';
import { mount } from 'svelte';
import App from './App.svelte';

const target = document.getElementById('window');
if (!target) throw new Error('The page has no place for the window (#window).');
mount(App, { target });
