/**
 * Starts work when what stands on the page by now has been painted: so a number does not wait for a picture. Gives the
 * function that takes the start back.
 */
export function afterPaint(work: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const beat = requestAnimationFrame(() => {
    timer = setTimeout(work);
  });
  return () => {
    cancelAnimationFrame(beat);
    clearTimeout(timer);
  };
}
