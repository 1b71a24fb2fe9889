/** A key is compared level by level, the first difference decides; a missing level counts as equal. */
export function compareKeys(a: readonly number[], b: readonly number[]): number {
  const shared = Math.min(a.length, b.length);
  for (let level = 0; level < shared; level += 1) {
    const difference = (a[level] ?? 0) - (b[level] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Adds keys level by level. Sums keep the order of their parts, which lets lines be looked at one by one. */
export function addKeys(keys: readonly (readonly number[])[]): number[] {
  const [first = []] = keys;
  return first.map((_, level) => keys.reduce((sum, key) => sum + (key[level] ?? 0), 0));
}

/** A binary heap: the smallest item comes out first. */
export class Heap<Item> {
  private readonly items: Item[] = [];
  private readonly compare: (a: Item, b: Item) => number;

  constructor(compare: (a: Item, b: Item) => number) {
    this.compare = compare;
  }

  get first(): Item | undefined {
    return this.items[0];
  }

  push(item: Item): void {
    let position = this.items.push(item) - 1;
    while (position > 0) {
      const above = (position - 1) >> 1;
      if (this.isInOrder(above, position)) return;
      this.swap(above, position);
      position = above;
    }
  }

  pop(): Item | undefined {
    const [top] = this.items;
    const last = this.items.pop();
    if (last === undefined || this.items.length === 0) return top;
    this.items[0] = last;
    let position = 0;
    while (true) {
      const smaller = [2 * position + 1, 2 * position + 2]
        .filter((below) => below < this.items.length)
        .reduce((best, below) => (this.isInOrder(best, below) ? best : below), position);
      if (smaller === position) return top;
      this.swap(position, smaller);
      position = smaller;
    }
  }

  private isInOrder(a: number, b: number): boolean {
    const [first, second] = [this.items[a], this.items[b]];
    return first === undefined || second === undefined || this.compare(first, second) <= 0;
  }

  private swap(a: number, b: number): void {
    const [first, second] = [this.items[a], this.items[b]];
    if (first === undefined || second === undefined) return;
    this.items[a] = second;
    this.items[b] = first;
  }
}
