export { TenEmpties } from '../tare/ten-empties.tsx';
export { ChangeSession } from './change-session.tsx';
export { LabelsAhead } from './labels-ahead.tsx';
export { Log } from './log.tsx';
export { OpenSession } from './open-session.tsx';
export { Plan } from './plan.tsx';
export { Session } from './session.tsx';
export { Sessions } from './sessions.tsx';
