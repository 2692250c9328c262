/** XML 1.0 as text: just what a writer needs. */

type Attributes = Readonly<Record<string, string | number>>;

/** Characters that XML 1.0 cannot hold in any form (section 2.2), lone surrogates among them. */
const IMPOSSIBLE = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;
const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

const escape = (text: string): string =>
  text.replace(IMPOSSIBLE, '').replace(/[&<>"]/g, (sign) => ESCAPES[sign]!);

/** An element that holds elements, or nothing. */
export function element(
  name: string,
  children: readonly string[] = [],
  attributes: Attributes = {},
): string {
  const tag = [
    name,
    ...Object.entries(attributes).map(([key, value]) => `${key}="${escape(String(value))}"`),
  ].join(' ');
  return children.length === 0 ? `<${tag}/>` : `<${tag}>${children.join('')}</${name}>`;
}

/** An element that holds text, which is escaped. */
export const textElement = (
  name: string,
  text: string | number,
  attributes: Attributes = {},
): string => element(name, [escape(String(text))], attributes);
