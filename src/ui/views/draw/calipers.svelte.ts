import { aNumber, groupOf, keptWith, listOf } from "../../state";

/** Thickness across the body at a height, as a caliper reads it. mm */
export interface Reading {
  readonly height: number;
  readonly thickness: number;
}

/** What was read at one station, mm. */
interface Measured {
  readonly station: number;
  readonly readings: readonly Reading[];
}

const readings = listOf(groupOf<Reading>({ height: aNumber, thickness: aNumber }));

/** Caliper readings by their stations. They are not of the document, but they are kept beside it. */
export class Calipers {
  stations = $state.raw<readonly Measured[]>([]);

  at(station: number): readonly Reading[] {
    return this.stations.find((one) => one.station === station)?.readings ?? [];
  }

  set(station: number, readings: readonly Reading[]): void {
    const others = this.stations.filter((one) => one.station !== station);
    const own = readings.length === 0 ? [] : [{ station, readings }];
    this.stations = [...others, ...own].sort((a, b) => a.station - b.station);
  }
}

export const calipersOf = keptWith(({ beside }) => {
  const calipers = new Calipers();
  beside.keep<Pick<Calipers, "stations">>("calipers", "work", calipers, {
    stations: listOf(groupOf<Measured>({ station: aNumber, readings })),
  });
  return calipers;
});
