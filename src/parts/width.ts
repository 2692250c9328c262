import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** The width that a figure has on the page, so that a chart's words keep their size on a phone. */
export function useWidth() {
  const figure = useRef<HTMLElement>(null);
  const [width, setWidth] = useState(640);
  useLayoutEffect(() => {
    const observer = new ResizeObserver(([entry]) =>
      setWidth(Math.round(entry!.contentRect.width)),
    );
    observer.observe(figure.current!);
    return () => observer.disconnect();
  }, []);
  return [figure, width] as const;
}
