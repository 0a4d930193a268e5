/**
 * Starts the window: the looks, the state, the shell (or the plain browser's part), the page.
 *
 * How the renderer is laid out, for whoever joins:
 * - `state/`    one module, `bench.ts`, holds the movement and all that is chosen; everything else is derived.
 *               `../commands/` defines each command once for menu, key and button.
 * - `bench/`    the drawing. `scene.ts` turns the state into figures (`figures/`, plain data), `engraver.ts` draws
 *               them with three (`strokes/`), `lettering.ts` writes names and dimensions, `view.ts` alone converts
 *               between millimetres and pixels. `BenchSheet.svelte` joins them with the page.
 * - `gestures/` pointer events in, edits out, without a framework: `pointerHub.ts`, dragging, snapping, setting down.
 * - `frame/`, `slips/`, `fields/`  header, train list, strip; what is chosen, in numbers; the fields that take them.
 * - `levels/`, `steps/`, `sheets/` the faces beside the bench; the other folders are views that open over it.
 * - `looks/`    tokens of the two looks and the type.
 */
import './looks/base.css';
import { mount } from 'svelte';
import App from './App.svelte';

const target = document.getElementById('window');
if (!target) throw new Error('The page has no place for the window (#window).');
mount(App, { target });
