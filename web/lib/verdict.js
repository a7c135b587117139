import { msv, msvTyped } from './units.js';

/** The standing as one plain sentence: "Forecast 43.1 person-mSv, 3.1 above the target of 40". */
export function verdict({ totals, targets }) {
  if (totals.tasks === 0) return 'No tasks yet, so nothing is forecast';
  const target = targets.find(each => each.scope === 'campaign');
  const dose = `Forecast ${msv(totals.person_usv)} person-mSv`;
  if (!target) return `${dose}; no target is set`;
  const off = target.person_usv - target.target_usv;
  if (off === 0) return `${dose}, just the target`;
  return `${dose}, ${msv(Math.abs(off), Math.abs(off) < 100 ? 1 : 2)} ${off > 0 ? 'above' : 'below'} the target of ${msvTyped(target.target_usv)}`;
}
