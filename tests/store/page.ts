/** The part of a page that the store needs where there is none. */
globalThis.document ??= Object.assign(new EventTarget(), {
  visibilityState: 'visible',
}) as unknown as Document;
