// What was done already: a list by day and hive, and a strip of the months.

import { element } from './dom.js';
import { send } from './asking.js';
import { changed, column, hives, state } from './draft.js';
import { trouble } from './hives.js';
import { strip, words } from './year.js';

const form = document.getElementById('done-form');
const date = /** @type {HTMLInputElement} */ (document.getElementById('done-date'));
const hive = /** @type {HTMLSelectElement} */ (document.getElementById('done-hive'));
const what = /** @type {HTMLSelectElement} */ (document.getElementById('done-what'));
const list = document.getElementById('done-list');
const notes = document.getElementById('done-notes');

/** Shows the screen. */
export function showDone() {
  ['date', 'colony', 'control'].forEach((name) => column(state.treatments, name));
  date.max = state.today;
  const chosen = [hive.value, what.value];
  hive.replaceChildren(new Option('every hive', ''));
  hives().forEach((name) => hive.append(new Option(name, name)));
  what.replaceChildren();
  state.controls.forEach((c) => what.append(new Option(c.title, c.name)));
  hive.value = chosen[0];
  what.value = chosen[1] || state.controls[0]?.name || '';
  draw();
  check();
}

function cell(row, name) {
  return row[state.treatments.columns.indexOf(name)] ?? '';
}

function title(name) {
  return state.controls.find((c) => c.name === name)?.title ?? name;
}

function draw() {
  list.replaceChildren();
  state.treatments.rows.forEach((row, r) => {
    const item = element('li');
    item.dataset.row = String(r);
    const colony = cell(row, 'colony');
    item.append(element('span',
      `${cell(row, 'date')}: ${title(cell(row, 'control'))}, ${colony && colony !== '*' ? colony : 'every hive'} `));
    item.append(element('span', '', 'fault'));
    const remove = element('button', 'Remove', 'small');
    remove.type = 'button';
    remove.setAttribute('aria-label', `Remove ${title(cell(row, 'control'))} of ${cell(row, 'date')}`);
    remove.addEventListener('click', () => {
      state.treatments.rows.splice(r, 1);
      changed();
      draw();
      check();
    });
    item.append(remove);
    list.append(item);
  });
}

async function check() {
  try {
    const { treatments } = await send('check', { treatments: state.treatments });
    for (const fault of treatments.faults) {
      const place = list.querySelector(`[data-row="${fault.row}"] .fault`);
      if (place) {
        place.textContent = `${fault.message}. `;
      }
    }
    notes.replaceChildren();
    if (treatments.notes.length > 0) {
      const all = element('ul', '', 'notes');
      treatments.notes.forEach((text) => all.append(element('li', text)));
      notes.append(all);
    }
    drawStrip(treatments.days);
  } catch (error) {
    trouble(error);
  }
}

function drawStrip(days) {
  const host = document.getElementById('done-strip');
  host.replaceChildren();
  if (days.length === 0) {
    return;
  }
  const first = `${days.map((d) => d.from).sort()[0].slice(0, 4)}-01-01`;
  const made = strip(first, `${days.map((d) => d.to).sort().at(-1).slice(0, 4)}-12-31`);
  const names = [...new Set(days.map((d) => d.colony))];
  for (const name of names) {
    made.row(name || 'every hive', days.filter((d) => d.colony === name)
      .map((d) => ({ from: d.from, words: `${words(d.from)} ${d.title}` })));
  }
  host.append(made.box);
}

form.addEventListener('submit', (event) => {
  event.preventDefault();
  const row = state.treatments.columns.map(() => '');
  row[column(state.treatments, 'date')] = date.value;
  row[column(state.treatments, 'colony')] = hive.value;
  row[column(state.treatments, 'control')] = what.value;
  state.treatments.rows.push(row);
  changed();
  draw();
  check();
});
