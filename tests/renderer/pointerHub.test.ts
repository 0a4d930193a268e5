/** Pointers told to the hub without a window: what begins, what ends and what is given up. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PointerHub, type Press } from '../../renderer/gestures/pointerHub.ts';

/** A surface that takes events and has its corner at (10, 20) on the page. */
class Surface extends EventTarget {
  getBoundingClientRect = () => ({ left: 10, top: 20 });
  setPointerCapture = (): void => undefined;
}

interface Told {
  readonly x: number;
  readonly y: number;
  readonly id?: number;
  readonly button?: number;
  readonly pointerType?: string;
  readonly timeStamp?: number;
}

function begun({ grabs }: { grabs: boolean }) {
  const surface = new Surface();
  const log: string[] = [];
  const at = ({ pixel }: Press) => `${pixel.x},${pixel.y}`;
  const gesture = {
    move: (press: Press) => void log.push(`move ${at(press)}`),
    finish: (press: Press) => void log.push(`finish ${at(press)}`),
    abandon: () => void log.push('abandon'),
  };
  const hub = new PointerHub(surface as unknown as HTMLElement, {
    pressed: () => undefined,
    grab: (start) => {
      log.push(`grab ${at(start)}`);
      return grabs ? gesture : undefined;
    },
    tap: (press, times) => void log.push(`tap ${at(press)} ${times}`),
    menu: () => void log.push('menu'),
    hover: () => undefined,
    pan: (dx, dy) => void log.push(`pan ${dx},${dy}`),
    zoom: (middle, factor) => void log.push(`zoom ${middle.x},${middle.y} ${factor.toFixed(3)}`),
  });
  const tell = (type: string, { x, y, id = 1, button = 0, pointerType = 'mouse', timeStamp = 0 }: Told): void => {
    const fields = { clientX: x + 10, clientY: y + 20, pointerId: id, button, pointerType, timeStamp };
    const event = new Event(type);
    for (const [name, value] of Object.entries({ ...fields, shiftKey: false, altKey: false, ctrlKey: false })) {
      Object.defineProperty(event, name, { value });
    }
    surface.dispatchEvent(event);
  };
  return { hub, log, tell };
}

// The hub gives up what is under way when the window loses the keyboard.
beforeEach(() => vi.stubGlobal('window', new EventTarget()));
afterEach(() => vi.unstubAllGlobals());

describe('the pointer hub', () => {
  test('a press that hardly travels is a tap, a second one soon after is the second of two', () => {
    const { log, tell } = begun({ grabs: true });
    for (const timeStamp of [0, 200, 900]) {
      tell('pointerdown', { x: 5, y: 5 });
      tell('pointermove', { x: 7, y: 7 });
      tell('pointerup', { x: 7, y: 7, timeStamp });
    }
    expect(log).toEqual(['tap 7,7 1', 'tap 7,7 2', 'tap 7,7 1']);
  });

  test('a press that travels picks up what lay where it began, moves it and sets it down', () => {
    const { log, tell } = begun({ grabs: true });
    tell('pointerdown', { x: 5, y: 5 });
    tell('pointermove', { x: 9, y: 5 });
    tell('pointermove', { x: 30, y: 8 });
    tell('pointerup', { x: 31, y: 8 });
    expect(log).toEqual(['grab 5,5', 'move 9,5', 'move 30,8', 'finish 31,8']);
  });

  test('where nothing is picked up, the sheet moves by what the pointer moved', () => {
    const { log, tell } = begun({ grabs: false });
    tell('pointerdown', { x: 5, y: 5 });
    tell('pointermove', { x: 15, y: 5 });
    tell('pointermove', { x: 18, y: 9 });
    tell('pointerup', { x: 18, y: 9 });
    expect(log).toEqual(['grab 5,5', 'pan 10,0', 'pan 3,4']);
  });

  test('a second finger gives up the gesture; both zoom about their middle by how their distance grows', () => {
    const { log, tell } = begun({ grabs: true });
    const pointerType = 'touch';
    tell('pointerdown', { x: 0, y: 0, pointerType });
    tell('pointermove', { x: 20, y: 0, pointerType });
    tell('pointerdown', { x: 120, y: 0, id: 2, pointerType });
    tell('pointermove', { x: 220, y: 0, id: 2, pointerType });
    expect(log).toEqual(['grab 0,0', 'move 20,0', 'abandon', 'pan 50,0', 'zoom 120,0 2.000']);
  });

  test('a lost pointer, and a window that loses the keyboard, end a gesture without a trace', () => {
    const { hub, log, tell } = begun({ grabs: true });
    tell('pointerdown', { x: 0, y: 0 });
    tell('pointermove', { x: 20, y: 0 });
    tell('pointercancel', { x: 20, y: 0 });
    tell('pointerdown', { x: 0, y: 0 });
    tell('pointermove', { x: 20, y: 0 });
    window.dispatchEvent(new Event('blur'));
    tell('pointerup', { x: 20, y: 0 });
    expect(log).toEqual(['grab 0,0', 'move 20,0', 'abandon', 'grab 0,0', 'move 20,0', 'abandon']);
    expect(hub.abandon()).toBe(false);
    hub.dispose();
    tell('pointerdown', { x: 0, y: 0 });
    tell('pointermove', { x: 20, y: 0 });
    expect(log).toHaveLength(6);
  });
});
