/** Wheel with Ctrl (a touchpad's pinch sends the same) and two fingers zoom the time of what they are over. */
export function zooming(zoom: (factor: number) => void): (element: HTMLElement) => () => void {
  return (element) => {
    const held = new Map<number, number>();
    const spread = (): number => {
      const [a, b] = [...held.values()];
      return a === undefined || b === undefined ? NaN : Math.max(24, Math.abs(a - b));
    };
    const wheel = (event: WheelEvent): void => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      zoom(Math.exp(-0.005 * event.deltaY));
    };
    const down = (event: PointerEvent): void => {
      if (event.pointerType === "touch") held.set(event.pointerId, event.clientX);
    };
    const move = (event: PointerEvent): void => {
      if (!held.has(event.pointerId)) return;
      const before = spread();
      held.set(event.pointerId, event.clientX);
      const now = spread();
      if (held.size !== 2 || !Number.isFinite(before / now)) return;
      // Two fingers do not drag the playhead as well.
      event.stopPropagation();
      zoom(now / before);
    };
    const up = (event: PointerEvent): void => void held.delete(event.pointerId);
    element.addEventListener("wheel", wheel, { passive: false });
    element.addEventListener("pointerdown", down, true);
    element.addEventListener("pointermove", move, true);
    for (const name of ["pointerup", "pointercancel"] as const) element.addEventListener(name, up, true);
    return () => {
      element.removeEventListener("wheel", wheel);
      element.removeEventListener("pointerdown", down, true);
      element.removeEventListener("pointermove", move, true);
      for (const name of ["pointerup", "pointercancel"] as const) element.removeEventListener(name, up, true);
    };
  };
}
