import { readSnapshot, type Sketch } from './snapshot';

const SVG = 'http://www.w3.org/2000/svg';

function elementOf(sketch: Sketch, parent: Element): Node {
  if (typeof sketch === 'string') return document.createTextNode(sketch);
  const [tag, attributes, children] = sketch;
  const space = tag === 'svg' ? SVG : parent.namespaceURI;
  const element = document.createElementNS(space, tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  element.append(...children.map((child) => elementOf(child, element)));
  return element;
}

/** Shows the picture of today's list, if the address asks for the list and there is one. Whether it did. */
export function showSnapshot(root: Element): boolean {
  if (!/^(?:#\/?(?:today)?)?$/.test(location.hash)) return false;
  try {
    const sketches = readSnapshot()?.sketches ?? [];
    root.append(...sketches.map((sketch) => elementOf(sketch, root)));
  } catch {
    // A damaged picture; what there is of it is taken away again.
    root.replaceChildren();
  }
  return root.hasChildNodes();
}
