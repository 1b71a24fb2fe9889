import './landing.css';

export { BagByBag } from './bag-by-bag.tsx';
export { BagSheet } from './bag-sheet.tsx';
export { LandingPage } from './landing-page.tsx';
