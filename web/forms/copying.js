// A routine of the library on its way into a campaign: who, where and how hard it is there.
import { code, group, number, pick, refs, roles, text } from './field.js';

const WITHOUT = '(without)';
const has = (list, value) => (list.includes(value) ? value : undefined);

/** @param routine of the library; {@code names} of its roles and areas */
export function copying(routine, names) {
  const areas = refs('areas');
  const factors = context => [...refs('factors')(context), [WITHOUT, 'leave it out']];
  const one = (kind, options) => each => pick(each, names[kind].get(each) ?? each, options, { hint: '' });
  return [
    text('name', 'Name'), code(),
    ...(routine.handbook_techniques.length > 0 ? [pick('technique', 'Technique of the campaign', refs('techniques'))] : []),
    ...(routine.lifts ? [number('lift_cover_mm', 'Water above a piece on the hook', 'm', { power: 3, sent: 'mm' })] : []),
    ...(routine.roles.length > 0 ? [group('roles', 'Who does it here', routine.roles.map(one('roles', roles)), { wide: true })] : []),
    ...(routine.areas.length > 0 ? [group('areas', 'Where it is done here', routine.areas.map(one('areas', areas)), { wide: true })] : []),
    ...(routine.factors.length > 0 ? [group('factors', 'What makes it harder here', routine.factors.map(one('factors', factors)), { wide: true })] : []),
  ];
}

/** What bears the same code in the campaign stands there already. */
export function firstCopy(routine, camp) {
  const codes = kind => (camp.doc[kind] ?? []).map(each => each.code);
  const known = roles({ camp }).map(([role]) => role);
  const same = (list, among) => Object.fromEntries(list.map(each => [each, has(among, each)]));
  const technique = camp.doc.techniques.find(each => routine.handbook_techniques.includes(each.code));
  return { name: routine.name, code: routine.code, technique: technique?.code, roles: same(routine.roles, known), areas: same(routine.areas, codes('areas')), factors: same(routine.factors, codes('factors')) };
}

/** The mappings as the server wants them. */
export function copied(routine, { roles: who, areas, factors, ...value }) {
  const pairs = map => Object.entries(map ?? {}).map(([library, campaign]) => ({ library, campaign }));
  return {
    library: routine.code, ...value, roles: pairs(who), areas: pairs(areas), factors: pairs(factors).filter(pair => pair.campaign !== WITHOUT),
    without_factors: pairs(factors).filter(pair => pair.campaign === WITHOUT).map(pair => pair.library),
  };
}
