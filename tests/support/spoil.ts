/** As much of JSON Schema as the API's own document uses. */
export type JsonSchema = {
  type?: string | readonly string[];
  anyOf?: readonly JsonSchema[];
  enum?: readonly unknown[];
  const?: unknown;
  format?: string;
  minLength?: number;
  maxLength?: number;
  minimum?: number;
  maximum?: number;
  exclusiveMinimum?: number;
  minItems?: number;
  maxItems?: number;
  items?: JsonSchema;
  properties?: Readonly<Record<string, JsonSchema>>;
  required?: readonly string[];
};

/** A body with one thing wrong: where, what, and the body itself. */
export type Spoiled = { field: string; because: string; body: unknown };

/** A schema of one kind, what it says of null left out. */
type Plain = Omit<JsonSchema, 'type'> & { type?: string };
type Wrong = { because: string; value: unknown };
const MISSING = Symbol('left out');

/** Every way in which a well-formed body can be spoiled at one place, by what its schema promises to refuse. */
export function spoil(schema: JsonSchema, good: unknown): Spoiled[] {
  if (schema.type !== 'object' || !isRecord(good)) return [];
  const unknown = { field: 'colour', because: 'no such field', body: { ...good, colour: 'red' } };
  const known = Object.entries(schema.properties ?? {}).flatMap(([key, property]) => {
    const put = (value: unknown) => (value === MISSING ? without(good, key) : { ...good, [key]: value });
    const missing = schema.required?.includes(key) ? [{ because: 'left out', value: MISSING }] : [];
    const wrongs = key in good ? wrongsOf(property, good[key]) : [];
    const here = [...missing, ...wrongs].map(({ because, value }) => ({
      field: key,
      because,
      body: put(value),
    }));
    const inside = insideOf(property, good[key]).map(({ field, because, body }) => ({
      field: `${key}.${field}`,
      because,
      body: put(body),
    }));
    return [...here, ...inside];
  });
  return [unknown, ...known];
}

/** Every way in which a body can be put to the edge of what its schema still allows, one place at a time. */
export function extremes(schema: JsonSchema, good: unknown): unknown[] {
  const known = nonNull(schema);
  if (known.type === 'object' && isRecord(good))
    return Object.entries(known.properties ?? {}).flatMap(([key, property]) =>
      key in good ? extremes(property, good[key]).map((value) => ({ ...good, [key]: value })) : [],
    );
  if (known.type === 'array' && Array.isArray(good)) {
    const [first, ...others] = good;
    return first === undefined ? [] : extremes(known.items ?? {}, first).map((value) => [value, ...others]);
  }
  const { type, minimum, maximum, exclusiveMinimum, maxLength = 200 } = known;
  if (type === 'integer') {
    const least = exclusiveMinimum === undefined ? minimum : exclusiveMinimum + 1;
    return [least, maximum].filter((value) => value !== undefined);
  }
  if (type !== 'string' || typeof good !== 'string' || known.enum || known.format === 'uuid') return [];
  if (!/^\d{4}-\d{2}-\d{2}/.test(good)) return ['😀'.repeat(maxLength / 2), '%_\\\u2028\u202e\'"`$1'];
  return ['0001-01-01', '9999-12-31'].map((day) => (good.includes('T') ? `${day}T00:00:00Z` : day));
}

/** What `spoil` does, for what stands inside a field: an object, or the first thing of a list. */
function insideOf(schema: JsonSchema, good: unknown): Spoiled[] {
  const known = nonNull(schema);
  if (known.type === 'object') return spoil(known, good);
  if (known.type !== 'array' || known.items === undefined || !Array.isArray(good) || good.length === 0)
    return [];
  const [first, ...others] = good;
  const items = nonNull(known.items);
  const wrongs = wrongsOf(items, first).map(({ because, value }) => ({ field: '0', because, body: value }));
  const nested = insideOf(items, first).map((spoiled) => ({ ...spoiled, field: `0.${spoiled.field}` }));
  return [...wrongs, ...nested].map((spoiled) => ({ ...spoiled, body: [spoiled.body, ...others] }));
}

function wrongsOf(schema: JsonSchema, good: unknown): Wrong[] {
  const known = nonNull(schema);
  const none = mayBeNull(schema) ? [] : [{ because: 'null', value: null }];
  return [
    ...none,
    ...wrongKinds(known),
    ...wrongNumbers(known),
    ...wrongTexts(known, good),
    ...wrongLists(known, good),
  ];
}

function wrongKinds({ type }: Plain): Wrong[] {
  const kinds = { string: 7, integer: '7', number: '7', boolean: 'true', array: {}, object: [] };
  const value = kinds[type as keyof typeof kinds];
  return value === undefined ? [] : [{ because: `no ${type}`, value }];
}

function wrongNumbers({ type, minimum, maximum, exclusiveMinimum }: Plain): Wrong[] {
  if (type !== 'integer') return [];
  const least = exclusiveMinimum ?? (minimum === undefined ? undefined : minimum - 1);
  return [
    { because: 'a fraction', value: Math.min(maximum ?? 3, 3) - 0.5 },
    { because: 'enormous', value: 1e30 },
    { because: 'past what is exact', value: 9_007_199_254_740_992 },
    ...(maximum === undefined || !Number.isSafeInteger(maximum + 1)
      ? []
      : [{ because: 'too much', value: maximum + 1 }]),
    ...(least === undefined || !Number.isSafeInteger(least) ? [] : [{ because: 'too little', value: least }]),
    ...(least === undefined || least < -1 ? [] : [{ because: 'below zero', value: -1_000_000 }]),
  ];
}

function wrongTexts(schema: Plain, good: unknown): Wrong[] {
  if (schema.type !== 'string' || typeof good !== 'string') return [];
  const { minLength = 0, maxLength, format } = schema;
  if (schema.enum) return [{ because: 'not one of the words', value: 'nonsense' }];
  if (format === 'uuid') return [{ because: 'no id', value: '1234' }];
  const isDay = /^\d{4}-\d{2}-\d{2}/.test(good);
  const days = ['2026-02-30', 'tomorrow', '2026-13-01', '', '-1', '99999-01-01'].map((value) => ({
    because: `the day “${value}”`,
    value: value.startsWith('2026') && good.includes('T') ? `${value}T00:00:00Z` : value,
  }));
  return [
    ...(isDay ? days : [{ because: 'holding a NUL', value: `${good}\0` }]),
    ...(maxLength === undefined ? [] : [{ because: 'too long', value: 'x'.repeat(maxLength + 1) }]),
    ...(minLength === 0 ? [] : [{ because: 'empty', value: '' }]),
  ];
}

function wrongLists({ type, minItems = 0, maxItems }: Plain, good: unknown): Wrong[] {
  if (type !== 'array' || !Array.isArray(good)) return [];
  return [
    ...(minItems > 0 ? [{ because: 'empty', value: [] }] : []),
    ...(maxItems !== undefined && good.length > 0
      ? [{ because: 'too many', value: Array.from({ length: maxItems + 1 }, () => good[0]) }]
      : []),
  ];
}

/** A field that may be null is described by what else it may be. */
function nonNull(schema: JsonSchema): Plain {
  const { type, ...known } = schema.anyOf?.find((one) => one.type !== 'null') ?? schema;
  const named = typeof type === 'string' ? type : type?.find((name) => name !== 'null');
  return named === undefined ? known : { ...known, type: named };
}

const mayBeNull = ({ type, anyOf = [] }: JsonSchema): boolean =>
  (Array.isArray(type) && type.includes('null')) || anyOf.some((one) => one.type === 'null');

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const without = (body: Readonly<Record<string, unknown>>, key: string) =>
  Object.fromEntries(Object.entries(body).filter(([known]) => known !== key));
