import { type Sketch, writeSnapshot } from './snapshot';

/** Milliseconds between two pictures while the screen changes. */
const PAUSE = 500;

function sketchOf(node: Node): readonly Sketch[] {
  if (node instanceof Text) return [node.data];
  if (!(node instanceof Element)) return [];
  const attributes = Object.fromEntries(
    [...node.attributes]
      .filter(({ name }) => name !== 'style')
      .map(({ name, value }) => [name, value]),
  );
  if (node instanceof HTMLInputElement) attributes['value'] = node.value;
  return [[node.localName, attributes, [...node.childNodes].flatMap(sketchOf)]];
}

/** Today's list at rest, and nothing else that the app has to say. */
const isAtRest = (root: Element): boolean =>
  root.querySelector('[data-ready="today"]') !== null &&
  root.querySelector('[role="alert"], [role="status"]:not(:empty)') === null;

/**
 * Keeps a picture of what `root` shows, as long as that is today's list; whatever changes it or leads away from it, in
 * this window or another, forgets the picture. `isOwn`: whether what is shown is the person's own.
 */
export function keepSnapshot(root: Element, isOwn: () => boolean): void {
  let timer = 0;
  const settle = () => {
    timer = 0;
    writeSnapshot(isOwn() && isAtRest(root) ? [...root.childNodes].flatMap(sketchOf) : null);
  };
  const observer = new MutationObserver(() => {
    timer ||= window.setTimeout(settle, PAUSE);
  });
  const everything = { attributes: true, characterData: true, childList: true, subtree: true };
  observer.observe(root, everything);
  addEventListener('pagehide', settle);
}
