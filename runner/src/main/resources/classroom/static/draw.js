// Drawing a curve through given days, with a finger, a mouse, or numbers.

import { dayWords, daysBetween, draw, element, figure, SVG } from './dom.js';
import { Scale, ticks } from './scale.js';

const CLOSE = 1.5; // a point counts as close within this factor of the model
const NEAR_ZERO = 0.03; // or within this share of the axis

export function drawTask(form) {
  const host = document.getElementById('pad');
  const inputs = [...form.querySelectorAll('input[data-day]')];
  const days = inputs.map((input) => input.dataset.day);
  const top = Number(form.dataset.top);
  let scale = null;
  let model = null;

  const valueOf = (input) => (input.value.trim() === '' ? null : Number(input.value));

  function redraw() {
    const rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
    const width = host.clientWidth - 1.2 * rem;
    if (width <= 0) {
      return;
    }
    const height = Math.min(22 * rem, Math.max(13 * rem, width * 0.5));
    const svg = document.createElementNS(SVG, 'svg');
    svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
    svg.setAttribute('height', String(height));
    svg.setAttribute('role', 'img');
    svg.setAttribute('aria-label',
      'The grid to draw on. The numbers below it say the same and can be typed.');
    scale = new Scale({
      start: days[0],
      end: days[days.length - 1],
      top,
      left: 3.2 * rem,
      right: width - 1.8 * rem,
      upper: 0.8 * rem,
      lower: height - 1.8 * rem,
    });
    grid(svg, scale, rem, width);
    if (model) {
      curve(svg, model.values.map((v, i) => [daysBetween(days[0], model.start) + i, v])
        .filter(([day]) => day >= 0 && day <= scale.days), 'curve kind-0');
    }
    const points = inputs.map((input, i) => [daysBetween(days[0], days[i]), valueOf(input)])
      .filter(([, value]) => value !== null && Number.isFinite(value));
    curve(svg, points, 'yours');
    points.forEach(([day, value], i) => draw(svg, 'circle',
      { cx: scale.x(day), cy: scale.y(value), r: 0.5 * rem, class: i ? 'handle' : 'handle given' }));
    if (model) {
      name(svg, rem);
    }
    host.replaceChildren(svg);
  }

  function name(svg, rem) {
    const last = scale.days;
    const value = model.values[last - daysBetween(days[0], model.start)] ?? 0;
    draw(svg, 'text',
      { x: scale.x(last) - 0.6 * rem, y: Math.max(1.4 * rem, scale.y(value) - 0.7 * rem),
        'text-anchor': 'end', class: 'name kind-0' }, 'the model');
  }

  function curve(svg, points, className) {
    const path = points
      .map(([day, value], i) => `${i ? 'L' : 'M'}${scale.x(day).toFixed(1)} ${scale.y(value).toFixed(1)}`)
      .join('');
    if (path) {
      draw(svg, 'path', { d: path, class: className });
    }
  }

  function grid(svg, at, rem, width) {
    ticks(top).filter((step) => step <= top).forEach((step) => {
      const y = at.y(step);
      draw(svg, 'line', { x1: at.left, x2: at.right, y1: y, y2: y, class: 'rule' });
      draw(svg, 'text', { x: at.left - 0.8 * rem, y: y + 0.28 * rem, 'text-anchor': 'end' },
        step.toLocaleString('en-US'));
    });
    const every = width / days.length > 4.2 * rem ? 1 : 2;
    days.forEach((day, i) => {
      const x = at.x(daysBetween(days[0], day));
      draw(svg, 'line', { x1: x, x2: x, y1: at.upper, y2: at.lower, class: 'column' });
      if (i % every === 0) {
        draw(svg, 'text', { x, y: at.lower + 1.2 * rem, 'text-anchor': 'middle' },
          dayWords(day, true));
      }
    });
  }

  function put(event) {
    if (model || !scale || (event.type === 'pointermove' && event.buttons === 0)) {
      return;
    }
    event.preventDefault();
    const box = host.querySelector('svg').getBoundingClientRect();
    const day = scale.dayAt(event.clientX - box.left);
    let nearest = 1;
    days.forEach((d, i) => {
      const better = Math.abs(daysBetween(days[0], d) - day)
        < Math.abs(daysBetween(days[0], days[nearest]) - day);
      nearest = i > 0 && better ? i : nearest;
    });
    const value = scale.valueAt(event.clientY - box.top);
    inputs[nearest].value = top >= 1000 ? Math.round(value / 10) * 10 : value.toFixed(1);
    redraw();
  }

  host.addEventListener('pointerdown', (event) => {
    host.setPointerCapture(event.pointerId);
    put(event);
  });
  host.addEventListener('pointermove', put);
  form.addEventListener('input', redraw);
  form.addEventListener('reset', () => {
    model = null;
    host.classList.remove('done');
    inputs.forEach((input, i) => {
      input.readOnly = i === 0;
    });
    window.setTimeout(redraw);
  });
  new ResizeObserver(redraw).observe(host);
  window.addEventListener('resize', redraw);
  redraw();

  function table(points) {
    const made = element('table', '', 'compare-table');
    const head = made.createTHead().insertRow();
    ['Day', 'You', 'The model'].forEach((text) => {
      const cell = element('th', text);
      cell.scope = 'col';
      head.append(cell);
    });
    const body = made.createTBody();
    points.slice(1).forEach((point, i) => {
      const row = body.insertRow();
      const day = element('th', dayWords(point.day));
      day.scope = 'row';
      row.append(day, element('td', figure(valueOf(inputs[i + 1]))), element('td', figure(point.value)));
    });
    return made;
  }

  /** Only rising and falling is scored; a change of less than a thirtieth is neither. */
  function directions(points) {
    const way = (from, to) => (Math.abs(to - from) <= from / 30 ? 0 : Math.sign(to - from));
    const model = points.slice(1).map((point, i) => way(points[i].value, point.value));
    const mine = inputs.slice(1).map((input, i) => way(valueOf(inputs[i]), valueOf(input)));
    const told = model.filter((w) => w !== 0).length;
    const right = model.filter((w, i) => w !== 0 && w === mine[i]).length;
    return `${right} of ${told} times your line goes the way of the model, up or down. `
      + 'How high it runs is not scored.';
  }

  /** Days down, a column for each pair, and the model last. */
  function pairTable(all, points) {
    const made = element('table', '', 'compare-table');
    const head = made.createTHead().insertRow();
    ['Day', ...all.map((_, i) => `Pair ${i + 1}`), 'The model'].forEach((text) => {
      const cell = element('th', text);
      cell.scope = 'col';
      head.append(cell);
    });
    const body = made.createTBody();
    points.forEach((point, i) => {
      const row = body.insertRow();
      const day = element('th', dayWords(point.day));
      day.scope = 'row';
      row.append(day, ...all.map((pair) => element('td', figure(pair.values[i]))),
        element('td', figure(point.value)));
    });
    const box = element('div', '', 'scroll');
    box.tabIndex = 0;
    box.setAttribute('role', 'region');
    box.setAttribute('aria-label', 'What the pairs said');
    box.append(made);
    return box;
  }

  return {
    taken() {
      const values = inputs.map(valueOf);
      return { values, words: values.map((value) => figure(value)).join(', ') };
    },
    clear: () => form.reset(),
    pairs: (all, answer) => ({ verdict: '', shown: pairTable(all, answer.drawn.points) }),
    problem() {
      const missing = inputs.filter((input) => valueOf(input) === null);
      if (missing.length > 0) {
        missing[0].focus();
        return `Draw or type a number for ${dayWords(missing[0].dataset.day)}; all days are needed.`;
      }
      const outside = inputs.find(
        (input) => !input.readOnly && !(valueOf(input) >= 0 && valueOf(input) <= top));
      if (outside) {
        outside.focus();
        return `For ${dayWords(outside.dataset.day)} a number from 0 to ${top.toLocaleString('en-US')}`
          + ' is needed.';
      }
      return '';
    },
    reveal(answer) {
      model = answer.drawn;
      host.classList.add('done');
      inputs.forEach((input) => {
        input.readOnly = true;
      });
      redraw();
      const { points } = model;
      const close = points.slice(1).filter((point, i) => {
        const mine = valueOf(inputs[i + 1]);
        const [low, high] = [Math.min(mine, point.value), Math.max(mine, point.value)];
        return high <= CLOSE * low || high - low <= NEAR_ZERO * top;
      }).length;
      if (form.dataset.direction === 'true') {
        return { verdict: directions(points), shown: [table(points)] };
      }
      const verdict = `${close} of your ${points.length - 1} points came close, `
        + 'within one and a half times of the model.';
      return { verdict, shown: [table(points)] };
    },
  };
}
