export { Machines } from './machines.tsx';
export { Seals } from './seals.tsx';
