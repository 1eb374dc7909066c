// The temperature of a bag's core while it thaws, as the model of heat has it: a band between the slowest bag
// and the quickest.

import { drawn, el, say } from "./ui.js";
import { dish_name, duration, keyed, moment } from "./said.js";

const edges = { left: 46, right: 14, top: 18, bottom: 44 };
const widest = 640; // in sixteenths of the type's size, as all lengths here
const narrowest = 240;
const height = 270;
const inner_height = height - edges.top - edges.bottom;
const celsius_steps = [5, 10, 20, 50];
const minute_steps = [5, 10, 15, 30, 60, 120, 240, 360, 720, 1440, 2880];

/** What the page has room for, so that figures are as large as the words around them. */
function room() {
  const { fontSize } = getComputedStyle(document.documentElement);
  const all = (document.documentElement.clientWidth * 16) / Number.parseFloat(fontSize);
  const beside = all >= 1024; // where the drawing of the plan stands beside it
  return Math.min(widest, Math.max(narrowest, beside ? all * 0.36 : all - 40));
}

/** The first step that cuts `length` into few enough pieces. */
function step_of(length, steps, most) {
  return steps.find((step) => length / step <= most) ?? steps.at(-1);
}

function scales(points, width) {
  const end = Math.max(1, points.at(-1)[0]);
  const all = points.flatMap(([, low, high]) => [low, high]);
  const low = Math.floor(Math.min(...all) / 5) * 5;
  const high = Math.max(low + 5, Math.ceil(Math.max(...all) / 5) * 5);
  const inner_width = width - edges.left - edges.right;
  return {
    end, low, high, width,
    x: (minutes) => edges.left + (inner_width * minutes) / end,
    y: (celsius) => edges.top + (inner_height * (high - celsius)) / (high - low),
  };
}

function horizontal({ low, high, width, y }) {
  const step = step_of(high - low, celsius_steps, 8);
  const lines = [];
  for (let celsius = Math.ceil(low / step) * step; celsius <= high; celsius += step) {
    lines.push(
      drawn("line", { class: celsius === 0 ? "zero" : "grid", x1: edges.left, x2: width - edges.right,
        y1: y(celsius), y2: y(celsius) }),
      drawn("text", { class: "end", x: edges.left - 7, y: y(celsius) + 5 }, String(celsius).replace("-", "−")));
  }
  return lines;
}

function vertical({ end, x }, step) {
  const lines = [];
  for (let minutes = 0; minutes <= end; minutes += step) {
    lines.push(
      drawn("line", { class: "grid", x1: x(minutes), x2: x(minutes), y1: edges.top, y2: edges.top + inner_height }),
      drawn("text", { class: "middle", x: x(minutes), y: height - edges.bottom + 18 },
        String(step < 60 ? minutes : minutes / 60)));
  }
  return lines;
}

const [lower, upper] = [1, 2]; // which of a point's figures is meant

/** When an edge of the band first reaches `celsius`, in minutes; undefined where it never does. */
export function reached(points, edge, celsius) {
  const after = points.findIndex((point) => point[edge] >= celsius);
  if (after <= 0) {
    return after === 0 ? points[0][0] : undefined;
  }
  const [from, to] = [points[after - 1], points[after]];
  return from[0] + ((to[0] - from[0]) * (celsius - from[edge])) / (to[edge] - from[edge]);
}

function band(points, { x, y }) {
  const line = (edge) => points.map((point) => `${x(point[0]).toFixed(1)},${y(point[edge]).toFixed(1)}`);
  return [
    drawn("polygon", { class: "band", points: [...line(upper), ...line(lower).reverse()].join(" ") }),
    drawn("polyline", { class: "edge", points: line(upper).join(" ") }),
    drawn("polyline", { class: "edge slow", points: line(lower).join(" ") }),
  ];
}

function mark(minutes, { x, end }, words, line) {
  if (minutes === undefined) {
    return null;
  }
  const at = x(minutes);
  const before = minutes > end / 2;
  return [
    drawn("line", { class: "mark-line", x1: at, x2: at, y1: edges.top, y2: edges.top + inner_height }),
    drawn("text", { class: before ? "end" : "", x: at + (before ? -6 : 6),
      y: edges.top + inner_height - 8 - 18 * line }, words),
  ];
}

function picture(core) {
  const width = room();
  const scale = scales(core.points, width);
  const step = step_of(scale.end, minute_steps, width / 60);
  const axis = say(step < 60 ? "plan.minutes_from" : "plan.hours_from", moment(core.thaw_begins));
  const svg = drawn("svg", { class: "core", viewBox: `0 0 ${width} ${height}`, role: "img",
    "aria-label": say("plan.core_drawn", core.dish) },
  horizontal(scale), vertical(scale, step), band(core.points, scale),
  mark(reached(core.points, upper, 0), scale, say("plan.thawed_first"), 1),
  mark(reached(core.points, lower, 0), scale, say("plan.thawed_last"), 0),
  drawn("text", { class: "", x: 2, y: 12 }, "°C"),
  drawn("text", { class: "end", x: width - edges.right, y: height - 6 }, axis));
  svg.style.maxWidth = `${width / 16}rem`; // no larger than it was drawn for
  return svg;
}

function in_words({ points }) {
  const said = (minutes) => duration(Math.max(1, Math.round(minutes / 5)) * 5);
  const [first, last] = [reached(points, upper, 0), reached(points, lower, 0)];
  if (first === undefined) {
    return say("plan.core_never");
  }
  return last === undefined ? say("plan.core_perhaps", said(first)) : say("plan.core_words", said(first), said(last));
}

/** The curve of one dish; in words below: it is a model, and a thermometer decides. */
export function core_curve(core) {
  return el("figure", { class: "curve" },
    el("figcaption", {}, el("strong", {}, dish_name(core)), `, ${say(`bag.thaw_${keyed(core.method)}`)}`),
    picture(core),
    el("p", {}, in_words(core), " ", core.warmest === undefined ? null : [say("plan.core_warmest",
      core.warmest.toFixed(0).replace("-", "−")), " "], say("plan.core_model")));
}
