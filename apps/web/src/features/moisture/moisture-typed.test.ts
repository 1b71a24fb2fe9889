import { expect, test } from 'vitest';
import { moistureStart, readingsTyped } from './moisture-typed.ts';

test.for([
  { was: '12', is: '11', read: { wasTenths: 120, isTenths: 110 }, because: 'both were read' },
  {
    was: '12.5',
    is: '10.25',
    read: { wasTenths: 125, isTenths: 103 },
    because: 'a tenth is as fine as it is kept',
  },
  { was: '12', is: '', read: null, because: 'nobody read anything now' },
  { was: '', is: '', read: null, because: 'nobody read anything at all' },
  { was: '', is: '11', read: undefined, because: 'nobody knows what it was' },
  { was: '12', is: '51', read: undefined, because: 'no grain is that moist' },
  { was: '12', is: 'dry', read: undefined, because: 'that is no figure' },
  { was: 'dry', is: '11', read: undefined, because: 'that was no figure' },
])('“$was” and “$is”: $because', ({ was, is, read }) => {
  expect(readingsTyped({ was, is })).toEqual(read);
});

test('a bag’s last reading stands there already', () => {
  expect(moistureStart(118)).toEqual({ was: '11.8', is: '' });
  expect(moistureStart(null)).toEqual({ was: '', is: '' });
});
