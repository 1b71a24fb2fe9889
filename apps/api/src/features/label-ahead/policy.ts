export { mayPlanSessions as mayLabelAhead } from '../packing-session/policy.ts';
