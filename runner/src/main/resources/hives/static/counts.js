// The table of counts: typed, pasted or dropped, and looked at by the reader of the commands.

import { element, target } from './dom.js';
import { send } from './asking.js';
import { changed, column, state } from './draft.js';
import { say, trouble } from './hives.js';

const HEADS = {
  date: 'Date', colony: 'Hive', mites: 'Mites', bees: 'Bees', yard: 'Yard', method: 'Method',
  frame: 'Frame', note: 'Note', frames_of_bees: 'Frames of bees',
};
const ORDER = ['date', 'colony', 'mites', 'bees', 'yard', 'method', 'frame', 'note'];
const host = document.getElementById('counts-table');
const notes = document.getElementById('counts-notes');
let pending = 0;
let timer = 0;

/** Shows the screen. */
export function showCounts() {
  ORDER.forEach((name) => column(state.washes, name));
  if (state.washes.rows.length === 0) {
    addRow();
  }
  draw();
  check();
}

function addRow() {
  state.washes.rows.push(state.washes.columns.map(() => ''));
}

function draw() {
  const { columns, rows } = state.washes;
  const shown = [...ORDER, ...columns.filter((name) => !ORDER.includes(name))];
  const table = element('table', '', 'entry');
  table.append(element('caption', 'Dates such as 2026-07-25. Blank bees: an uncounted half cup.'));
  const head = table.createTHead().insertRow();
  for (const name of shown) {
    const cell = element('th', HEADS[name] ?? name);
    cell.scope = 'col';
    head.append(cell);
  }
  const last = element('th', 'What it says');
  last.scope = 'col';
  head.append(last);
  const body = table.createTBody();
  rows.forEach((row, r) => body.append(line(shown, row, r)));
  host.replaceChildren(table);
}

function line(shown, row, r) {
  const tr = element('tr');
  tr.dataset.row = String(r);
  for (const name of shown) {
    const at = state.washes.columns.indexOf(name);
    const cell = element('td');
    cell.append(field(name, row, at, r));
    tr.append(cell);
  }
  const last = element('td', '', 'says');
  last.append(element('span', '', 'interval'), element('span', '', 'fault'));
  const remove = element('button', 'Remove', 'small');
  remove.type = 'button';
  remove.setAttribute('aria-label', `Remove row ${r + 1}`);
  remove.addEventListener('click', () => {
    state.washes.rows.splice(r, 1);
    if (state.washes.rows.length === 0) {
      addRow();
    }
    changed();
    draw();
    check();
  });
  last.append(remove);
  tr.append(last);
  return tr;
}

function field(name, row, at, r) {
  const known = { method: ['', ...state.methods], frame: ['', ...state.frames] }[name];
  const choice = known && known.includes(row[at]);
  const input = element(choice ? 'select' : 'input');
  if (choice) {
    known.forEach((word) => input.append(new Option(word || 'usual', word)));
  } else {
    input.type = 'text';
    input.autocomplete = 'off';
    input.spellcheck = false;
    if (name === 'bees') {
      input.placeholder = 'half cup';
    }
    if (name === 'mites' || name === 'bees') {
      input.inputMode = 'numeric';
    }
  }
  input.value = row[at];
  input.dataset.column = name;
  input.setAttribute('aria-label', `${HEADS[name] ?? name}, row ${r + 1}`);
  input.addEventListener('input', () => {
    row[at] = name === 'bees' && /^half ?cup$/i.test(input.value.trim()) ? '' : input.value;
    changed();
    later();
    if (r === state.washes.rows.length - 1 && name === 'mites') {
      addRow();
      const tbody = host.querySelector('tbody');
      const shown = [...tbody.rows[0].querySelectorAll('[data-column]')]
        .map((one) => /** @type {HTMLElement} */ (one).dataset.column);
      tbody.append(line(shown, state.washes.rows.at(-1), r + 1));
    }
  });
  return input;
}

function later() {
  clearTimeout(timer);
  timer = setTimeout(check, 250);
}

/** The table without rows in which nothing stands, and where each of its rows stands on the page. */
function filled() {
  const places = [];
  const rows = state.washes.rows.filter((row, r) => {
    const any = row.some((cell) => cell.trim());
    if (any) {
      places.push(r);
    }
    return any;
  });
  return { table: { columns: state.washes.columns, rows }, places };
}

async function check() {
  const mine = ++pending;
  const { table, places } = filled();
  try {
    const { washes } = await send('check', { washes: table });
    if (mine === pending) {
      mark(washes, places);
    }
  } catch (error) {
    trouble(error);
  }
}

function mark(found, places) {
  for (const node of host.querySelectorAll('.interval, .fault')) {
    node.replaceChildren();
  }
  for (const input of host.querySelectorAll('[aria-invalid]')) {
    input.removeAttribute('aria-invalid');
    input.removeAttribute('aria-describedby');
  }
  const row = (r) => host.querySelector(`tr[data-row="${places[r]}"]`);
  found.said.forEach((words, r) => {
    const cell = row(r)?.querySelector('.interval');
    if (cell) {
      cell.textContent = words;
    }
  });
  const general = [];
  for (const fault of found.faults) {
    const tr = row(fault.row);
    if (!tr) {
      general.push(fault.message);
      continue;
    }
    const says = tr.querySelector('.fault');
    says.id = `fault-${places[fault.row]}`;
    const name = HEADS[fault.column] ?? fault.column;
    says.append(element('span', `${name ? `${name}: ` : ''}${fault.message}. `));
    const input = tr.querySelector(`[data-column="${fault.column}"]`);
    if (input) {
      input.setAttribute('aria-invalid', 'true');
      input.setAttribute('aria-describedby', says.id);
    }
    for (const reading of fault.readings ?? []) {
      const button = element('button', `It is ${reading.words}`, 'small');
      button.type = 'button';
      button.addEventListener('click', () => readDates(reading.order));
      says.append(button, ' ');
    }
  }
  if (found.more > 0) {
    general.push(`${found.more} more errors; they appear once these are fixed`);
  }
  notes.replaceChildren();
  const all = [...general, ...found.notes];
  if (all.length > 0) {
    const list = element('ul', '', 'notes');
    all.forEach((text) => list.append(element('li', text)));
    notes.append(list);
  }
}

/** Rewrites all dates that could be read in two ways, in the order that was chosen. */
function readDates(order) {
  const at = state.washes.columns.indexOf('date');
  for (const row of state.washes.rows) {
    const found = /^(\d{1,2})([/-])(\d{1,2})\2(\d{4})$/.exec(row[at].trim());
    if (found) {
      const [day, month] = order === 'day first' ? [found[1], found[3]] : [found[3], found[1]];
      row[at] = `${found[4]}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
    }
  }
  changed();
  draw();
  check();
}

/** Adds rows of a pasted or dropped text below those that are there. */
async function take(text) {
  try {
    const found = await send('paste', { text });
    const rows = found.rows.map((row) => {
      const made = [];
      found.columns.forEach((name, i) => {
        if (name) {
          const at = column(state.washes, name);
          made[at] = row[i];
        }
      });
      return made;
    });
    const kept = state.washes.rows.filter((row) => row.some((cell) => cell.trim()));
    state.washes.rows = [...kept, ...rows.map((row) => state.washes.columns.map((_, i) => row[i] ?? ''))];
    changed();
    draw();
    check();
    say('');
  } catch (error) {
    trouble(error);
  }
}

async function takeFile(file) {
  if (!file) {
    return;
  }
  if (file.size > 900000) {
    say('This file is larger than a page can take at once. Put it into your folder as washes.csv, '
      + 'then load the page again.');
    return;
  }
  await take(await file.text());
}

host.addEventListener('paste', (event) => {
  const text = event.clipboardData?.getData('text/plain') ?? '';
  if (/[\t\n;]/.test(text.trim())) {
    event.preventDefault();
    take(text);
  }
});
host.addEventListener('dragover', (event) => {
  event.preventDefault();
  host.classList.add('over');
});
host.addEventListener('dragleave', () => host.classList.remove('over'));
host.addEventListener('drop', (event) => {
  event.preventDefault();
  host.classList.remove('over');
  takeFile(event.dataTransfer?.files?.[0]);
});
document.getElementById('counts-file').addEventListener('change', (event) => {
  takeFile(target(event).files[0]);
  target(event).value = '';
});
document.getElementById('counts-more').addEventListener('click', () => {
  addRow();
  draw();
  check();
  /** @type {HTMLElement} */ (host.querySelector('tbody tr:last-child input')).focus();
});
document.getElementById('counts-take').addEventListener('click', () => {
  const box = /** @type {HTMLInputElement} */ (document.getElementById('counts-paste'));
  if (box.value.trim()) {
    take(box.value);
    box.value = '';
  }
});
document.getElementById('counts-copy').addEventListener('click', () => {
  const quoted = (cell) => (/[",;\t\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
  const { table } = filled();
  const text = [table.columns, ...table.rows].map((row) => row.map(quoted).join(',')).join('\r\n');
  offer('washes-copy.csv', 'text/csv', `${text}\r\n`);
});

/** Hands a text to the user as a file. */
export function offer(name, type, text) {
  const link = element('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
}
