import type { Kind, Shelved } from './queries.ts';

export type Shape = 'can' | 'pail' | 'jar' | 'bottle' | 'pouch' | 'drum';
/** Containers that stand together: one lot of a food in one kind, as many as go beside each other on one plank. */
export type Run = {
  readonly key: string;
  readonly containers: readonly Shelved[];
  /** How many of the lot and kind there are in this place. */
  readonly count: number;
  readonly shape: Shape;
  readonly width: number;
  readonly height: number;
  readonly high: number;
};

const PIXELS_A_MILLIMETRE = 0.138;
const WIDEST = 264; // px: what a phone of 320 px has room for
/** How tall a shape is for one of its width, and how many stand on each other (common practice, no source). */
const SHAPES: Readonly<Record<Shape, { ratio: number; high: number }>> = {
  can: { ratio: 1.13, high: 3 },
  pail: { ratio: 1.25, high: 2 },
  jar: { ratio: 1.7, high: 1 },
  bottle: { ratio: 3, high: 1 },
  pouch: { ratio: 1.2, high: 1 },
  drum: { ratio: 1.5, high: 1 },
};

function shapeOf(kindCode: string): Shape {
  const found = (Object.keys(SHAPES) as Shape[]).find((shape) => kindCode.startsWith(shape));
  return found ?? 'jar';
}

/** A round container of this capacity and proportion, as it is drawn. */
export function sizeOf(shape: Shape, capacityMicrolitres: number): { width: number; height: number } {
  const { ratio } = SHAPES[shape];
  const millimetres = Math.cbrt((4 * capacityMicrolitres) / (Math.PI * ratio)); // a microlitre is a cubic millimetre
  const width = Math.max(8, millimetres * PIXELS_A_MILLIMETRE);
  return { width, height: width * ratio };
}

/** A place at home with what stands there; null is where nobody has said. */
export type Planks = { readonly place: Shelved['place']; readonly runs: readonly Run[] };

/** The containers that hold something, place by place by name, those without one last. */
export function planksOf(containers: readonly Shelved[], kinds: readonly Kind[]): Planks[] {
  const full = containers.filter(({ grams }) => grams > 0);
  const places = [...new Map(full.map(({ place }) => [place?.id ?? '', place])).values()];
  return places
    .toSorted(
      (a, b) => Number(a === null) - Number(b === null) || (a?.name ?? '').localeCompare(b?.name ?? ''),
    )
    .map((place) => ({
      place,
      runs: runsOf(
        full.filter((one) => one.place?.id === place?.id),
        kinds,
      ),
    }));
}

/** The containers that hold something, lot by lot and kind by kind, cut to what one plank carries. */
export function runsOf(containers: readonly Shelved[], kinds: readonly Kind[]): Run[] {
  const together = new Map<string, Shelved[]>();
  for (const container of containers.filter(({ grams }) => grams > 0)) {
    const key = `${container.food.code} ${container.kind.code} ${container.lotId}`;
    together.set(key, [...(together.get(key) ?? []), container]);
  }
  return [...together.entries()]
    .toSorted(([a], [b]) => a.localeCompare(b))
    .flatMap(([key, all]) => {
      const code = all[0]?.kind.code ?? '';
      const shape = shapeOf(code);
      const { high } = SHAPES[shape];
      const size = sizeOf(
        shape,
        kinds.find(({ kindCode }) => kindCode === code)?.capacityMicrolitres ?? 1_000_000,
      );
      const most = Math.max(1, Math.floor(WIDEST / (size.width + 1))) * high;
      const parts = Array.from({ length: Math.ceil(all.length / most) }, (_, at) =>
        all.slice(at * most, (at + 1) * most),
      );
      return parts.map((part, at) => ({
        key: `${key} ${at}`,
        containers: part,
        count: all.length,
        shape,
        high,
        ...size,
      }));
    });
}
