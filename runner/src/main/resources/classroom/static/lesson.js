// A lesson: the learner commits to an answer, then the curves come.

import './page.js';
import { ask, calm, dayAfter, daysBetween, element, troubleWords } from './dom.js';
import { Chart } from './chart.js';
import { chooseTask } from './choose.js';
import { drawTask } from './draw.js';
import { washesTask } from './washes.js';

const name = document.querySelector('.lesson').dataset.lesson;
const form = document.getElementById('task');
const get = (id) => document.getElementById(id);
const task = { choose: chooseTask, draw: drawTask, washes: washesTask }[form.dataset.kind](form);

function lastDay(lines) {
  return lines
    .map((line) => dayAfter(line.start, line.values.length - 1))
    .reduce((a, b) => (a > b ? a : b));
}

function showCharts(answer) {
  get('charts').replaceChildren();
  const names = answer.charts.filter(({ lines }) => lines.length > 1)
    .flatMap(({ lines }) => lines.map((line) => line.name.length));
  const letters = Math.max(0, ...names);
  answer.charts.forEach((chart, i) => {
    const figure = element('figure', '', 'chart');
    const plot = element('div', '', 'plot');
    figure.append(element('figcaption', chart.title), plot);
    get('charts').append(figure);
    const alone = chart.lines.length === 1;
    new Chart(plot, { height: 11, letters }).show({
      label: chart.title,
      start: chart.lines[0].start,
      end: lastDay(chart.lines),
      marks: answer.marks.filter(
        (mark) => daysBetween(mark.on, lastDay(chart.lines)) >= 0 && (i === 0 || !alone)),
      lines: chart.lines.map((line, kind) => ({ ...line, kind, name: alone ? '' : line.name })),
    });
  });
}

function showFigures(figures) {
  get('figures').replaceChildren(...figures.map(({ say, value }) => {
    const row = element('tr');
    const head = element('th', say);
    head.scope = 'row';
    row.append(head, element('td', value));
    return row;
  }));
}

async function reveal() {
  const problem = task.problem();
  get('problem').textContent = problem;
  if (problem) {
    return;
  }
  try {
    const answer = await ask(`/api/lessons/${name}`);
    const part = await task.reveal(answer, name);
    get('answer').replaceChildren(...part.shown);
    get('reveal-text').textContent = answer.reveal;
    const first = get('reveal').hidden;
    get('reveal').hidden = false;
    showCharts(answer);
    showFigures(answer.figures);
    get('verdict').replaceChildren(element('p', part.verdict));
    if (first) {
      get('reveal-title').focus({ preventScroll: true });
      get('reveal').scrollIntoView({ behavior: calm() ? 'auto' : 'smooth', block: 'start' });
    }
  } catch (error) {
    get('problem').textContent = troubleWords(error);
  }
}

form.addEventListener('submit', (event) => {
  event.preventDefault();
  reveal();
});
form.addEventListener('again', reveal);
