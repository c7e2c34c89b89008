// What is taken away: the report and its tables, the place of the files, days for a calendar.

import { element } from './dom.js';
import { send } from './asking.js';
import { state } from './draft.js';
import { answer, save, trouble } from './hives.js';
import { offer } from './counts.js';

const body = document.getElementById('away-body');

/** Shows the screen. */
export function showAway() {
  body.replaceChildren();
  const report = element('section');
  report.append(element('h3', 'A report to print'),
    element('p', 'The same pages, pictures and tables that the command compare writes.'));
  const make = element('button', 'Make the report', 'main');
  make.type = 'button';
  make.id = 'make-report';
  const place = element('div');
  make.addEventListener('click', async () => {
    const found = await answer('report', {});
    if (found) {
      const link = element('a', 'Open the report');
      link.href = found.address;
      link.target = '_blank';
      link.rel = 'noopener';
      link.id = 'open-report';
      const line = element('p');
      line.append(link);
      const files = found.files.filter((name) => !/[.](svg|png)$/.test(name));
      const pictures = files.length < found.files.length ? ', and pictures' : '';
      place.replaceChildren(line, element('p', `Written to ${found.folder}: ${files.join(', ')}${pictures}.`));
      if (found.note) {
        place.append(element('p', found.note));
      }
    }
  });
  report.append(make, place);
  const days = element('section');
  days.append(element('h3', 'Remind me'),
    element('p', 'A file for your calendar, with the next days to wash and the days of one plan.'));
  const which = element('select');
  which.id = 'remind-plan';
  which.append(new Option('no plan', ''));
  const label = element('label', 'Plan ');
  label.append(which);
  const remind = element('button', 'Save the days as a calendar file');
  remind.type = 'button';
  remind.id = 'remind';
  const said = element('p', '', 'quiet');
  remind.addEventListener('click', async () => {
    try {
      if (state.dirty && !(await save())) {
        return;
      }
      const found = await send('calendar', { plan: which.value });
      offer(found.name, 'text/calendar', found.text);
    } catch (error) {
      trouble(error);
    }
  });
  days.append(label, remind, said);
  const files = element('section');
  files.append(element('h3', 'Your files'),
    element('p', `washes.csv, treatments.csv and study.json are in ${state.folder}. A spreadsheet opens the tables, and the commands read all three. When you save, the last version stays beside each, as washes.before.csv.`));
  body.append(report, days, files);
  if (!state.dirty && state.place && state.washes.rows.length > 0) {
    send('calendar', {}).then((found) => {
      said.textContent = found.words;
      found.plans.forEach((name) => which.append(new Option(name, name)));
    }).catch(() => { said.textContent = ''; });
  }
}
