// Repeated groups of fields. A <template data-rows="dial"> holds one row's
// markup and stands where the rows are to come; each row gets data-key. A
// button with data-add="dial" adds a row, one with data-remove in a row takes
// it out. Both are edits of the job like any other: undo brings a row back.
import { newKey } from './job.js';
import { nameOf } from './fields.js';

/** The keys of a group's rows in a form, in order. */
export function keysOf(form, group) {
  const keys = new Set();
  const start = `${group}.`;
  for (const name of Object.keys(form)) {
    if (name.startsWith(start)) keys.add(name.slice(start.length).split('.', 1)[0]);
  }
  const order = (key) => Number(form[`${group}.${key}.order`] ?? 0);
  return [...keys].sort((a, b) => order(a) - order(b) || (a < b ? -1 : 1));
}

/** The edit that adds a row at the end of a group. */
export function added(form, group, key = newKey()) {
  const last = Math.max(0, ...keysOf(form, group).map((other) => Number(form[`${group}.${other}.order`] ?? 0)));
  return { [`${group}.${key}.order`]: String(last + 1) };
}

/** The edit that takes a row out, with whatever else in the job belongs to it. */
export function removed(form, group, key) {
  const own = `${group}.${key}.`;
  // A row of a row is its row's own: another pass may have one of the same key.
  const inside = group.includes('.') ? own : `.${group}.${key}.`;
  return Object.fromEntries(Object.keys(form).filter((name) => name.startsWith(own) || name.includes(inside)).map((name) => [name, '']));
}

/** Makes the rows under root match the form; true when any came or went. */
export function matchRows(root, form) {
  let changed = false;
  for (const template of root.querySelectorAll('template[data-rows]')) {
    if (!match(template, keysOf(form, nameOf(template.dataset.rows, template)))) continue;
    changed = true;
    // New rows may hold templates of their own.
    for (const row of rowsOf(template)) matchRows(row, form);
  }
  return changed;
}

function rowsOf(template) {
  return [...template.parentElement.children].filter((row) => row.dataset.row === template.dataset.rows);
}

function match(template, keys) {
  const group = template.dataset.rows;
  const rows = rowsOf(template);
  if (rows.length === keys.length && rows.every((row, i) => row.dataset.key === keys[i])) return false;
  const known = new Map(rows.map((row) => [row.dataset.key, row]));
  rows.filter((row) => !keys.includes(row.dataset.key)).forEach((row) => row.remove());
  let last = template;
  for (const key of keys) {
    const row = known.get(key) ?? made(template, group, key);
    if (last.nextElementSibling !== row) last.after(row);
    last = row;
  }
  return true;
}

function made(template, group, key) {
  const row = template.content.firstElementChild.cloneNode(true);
  row.dataset.row = group;
  row.dataset.key = key;
  return row;
}
