/** client/ride/use-width.ts - how wide an element is, in CSS pixels, whenever it changes; 0 until it is laid out. */
import { useSignal } from "@preact/signals";
import { useLayoutEffect } from "preact/hooks";

export function useWidth(element: { readonly current: HTMLElement | null }): number {
  const width = useSignal(0);
  useLayoutEffect(() => {
    const { current } = element;
    if (current === null) return;
    const measure = new ResizeObserver(() => {
      width.value = current.clientWidth;
    });
    measure.observe(current);
    return () => measure.disconnect();
  }, []);
  return width.value;
}
