export { Doubts } from './doubts.tsx';
export { Machines } from './machines.tsx';
export { Seals } from './seals.tsx';
