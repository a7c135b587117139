// Which words go beside which field: the server's paths are matched to the fields on the page, else to the nearest one around them.

/** "points[1].usv_per_h" → its own id, else that of "points[1]", else "points". */
export function placeOf(path, known) {
  for (let at = path; at !== ''; at = outer(at)) {
    if (known.has(at)) return at;
  }
  return '';
}

const outer = path => path.replace(/(\.?[^.[\]]+|\[\d+\])$/, '');

/** Label and detail as one sentence: details that start small continue the label. */
export function worded(label, detail) {
  return /^[a-zµ]/.test(detail) && !/^there /.test(detail) && label ? `${label} ${detail}` : detail.charAt(0).toUpperCase() + detail.slice(1);
}

/** Paths and labels of all fields that are on the page now. */
export function labelsOf(fields, draft, root = draft, path = '', into = new Map()) {
  for (const field of fields) {
    if (field.when && !field.when(draft, root)) continue;
    const at = path === '' ? field.name : `${path}.${field.name}`;
    into.set(at, field.label);
    const inside = draft[field.name];
    if (field.type === 'likely') ['low', 'likely', 'high'].forEach(name => into.set(`${at}.${name}`, `${field.label}, ${name},`));
    if (field.type === 'group' && inside.on) labelsOf(field.fields, inside.in, root, at, into);
    if (field.type === 'list') inside.forEach((item, i) => into.set(`${at}[${i}]`, `${field.item.label} ${i + 1}`));
    if (field.type === 'rows') inside.forEach((row, i) => { into.set(`${at}[${i}]`, `${field.one} ${i + 1}`); labelsOf(field.fields, row, root, `${at}[${i}]`, into); });
  }
  return into;
}
