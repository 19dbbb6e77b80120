import { useCallback, useState } from 'react';

/** Width of an element in px, followed as the window changes; `least` is drawn (and scrolled) when there is less room. */
export function useWidth(least: number): [(element: HTMLElement | null) => void, number] {
  const [width, setWidth] = useState(0);
  const attach = useCallback((element: HTMLElement | null) => {
    if (!element) return;
    const observer = new ResizeObserver((entries) => {
      const entry = entries[0];
      if (entry) setWidth(Math.floor(entry.contentRect.width));
    });
    observer.observe(element);
    setWidth(Math.floor(element.getBoundingClientRect().width));
  }, []);
  return [attach, Math.max(least, width)];
}
