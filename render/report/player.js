// A player of one stroke: controls, readouts, the chart's dot, and words for those who do not see the picture.

const calm = window.matchMedia("(prefers-reduced-motion: reduce)");

function html(name, attributes, parent, words) {
  const element = document.createElement(name);
  for (const key in attributes) element.setAttribute(key, attributes[key]);
  if (words !== undefined) element.textContent = words;
  if (parent) parent.appendChild(element);
  return element;
}

function choice(parent, words, options) {
  const label = html("label", {}, parent, words);
  const select = html("select", {}, label);
  for (const [value, text] of options) html("option", {value: value}, select, text);
  return select;
}

// With a true minus sign, and none before zero.
function fixed(value, decimals) {
  const words = value.toFixed(decimals);
  return Number(words) === 0 ? words.replace("-", "") : words.replace("-", "\u2212");
}

function degrees(angle) { return Math.abs(angle).toFixed(1) + "\u00b0"; }

// Where the chart's axes lie, as the program has written them on it.
function chartOf(svg) {
  const n = name => Number(svg.dataset[name]);
  return {svg: svg, x: t => n("left") + (t - n("from")) * n("perMm"), y: f => n("bottom") - f * n("perN"),
    dot: make("circle", {class: "dot", r: 6}, svg)};
}

function makePlayer(holder, data, page) {
  const stroke = unpackStroke(data), length = stroke.keys[stroke.keys.length - 1].at;
  const named = "Stroke " + stroke.number + ", " + stroke.name;
  const step = 20; // ms of the slider
  let at = stroke.pressed, playing = false, untouched = true, last = 0, said = "", saidAt = 0;

  // The parts of the player.
  const stage = holder.querySelector(".stage"), beside = holder.querySelector(".beside");
  const svg = make("svg", {role: "img", "aria-label": named + ": the strip and its tools"});
  stage.insertBefore(svg, stage.firstChild);
  const drawing = makeDrawing(stroke, svg, page.palette);
  const says = html("p", {class: "says"}, stage);
  const saysName = html("b", {}, says);
  says.append(" ");
  const saysWords = html("span", {}, says), saysHit = html("strong", {class: "alarm"}, says);
  const controls = html("div", {class: "controls", role: "group", "aria-label": "Player: " + named}, stage);
  const scrub = html("div", {class: "scrub"}, controls);
  const slider = html("input", {type: "range", min: 0, max: Math.round(length / step), step: 1, "aria-label": "Position in the stroke"}, scrub);
  const play = html("button", {type: "button", class: "play"}, controls, "Play");
  const jumps = html("div", {class: "jumps"}, controls);
  const speed = choice(controls, "Speed", [["0.25", "quarter"], ["0.5", "half"], ["1", "normal"], ["2", "double"]]);
  speed.value = "1";
  const loopLabel = html("label", {}, controls);
  const loop = html("input", {type: "checkbox"}, loopLabel);
  loopLabel.append("Loop");
  const colours = choice(controls, "Colours", [["stress", "hoop stress"], ["strain", "plastic strain"]]);
  const key = makeLegend(stage, stroke, page);
  const readouts = html("dl", {class: "readouts"});
  beside.insertBefore(readouts, beside.firstChild);
  const close = makeCloseUp(stroke, page, beside, named);
  const live = html("p", {class: "unseen", "aria-live": "polite"}, holder);
  const chart = chartOf(beside.querySelector(".chart svg"));

  const readout = name => {
    const box = html("div", {}, readouts);
    html("dt", {}, box, name);
    const value = html("dd", {}, box);
    return {box: box, set(words) { if (value.textContent !== words) value.textContent = words; }};
  };
  const shown = {travel: readout("Travel"), force: readout("Punch force")};
  const bends = stroke.bends.map(b => readout("Bend angle, " + b.name));
  shown.clear = readout("Clearance");

  function fieldsOf(instant) {
    const force = instant.recorded ? between(stroke.force[instant.first], stroke.force[instant.second], instant.part) : 0;
    const near = drawing.nearest(instant), hits = drawing.hitsNow(instant);
    return {travel: fixed(instant.travel, 2) + " mm", force: (Math.max(0, force) / 1000 + 0).toFixed(2) + " kN", newtons: force,
      angles: stroke.bends.map(b => degrees(drawing.bendNow(b, instant).angle)), hits: hits,
      clear: hits.length ? "interference" : near ? fixed(near.distance, 2) + " mm" : instant.recorded ? "nothing near" : "\u2013"};
  }

  function sentence(instant, fields) {
    return instant.passage.name + ". Travel " + fields.travel + ", force " + fields.force + ", " +
      stroke.bends.map((b, i) => b.name + " " + fields.angles[i]).join(", ") + ". " +
      (fields.hits.length ? "Interference: " + fields.hits[0].words + "." : instant.recorded ? "Clearance: " + fields.clear + "." : "");
  }

  // The caption keeps the height of the longest one, so that nothing moves below a finger.
  function reserve() {
    says.style.minHeight = "";
    let height = 0;
    const hits = stroke.hits.length ? " Interference: " + stroke.hits[0].words + "." : "";
    for (const p of stroke.passages) {
      saysName.textContent = p.name + ":";
      saysWords.textContent = p.words;
      saysHit.textContent = hits;
      height = Math.max(height, says.offsetHeight);
    }
    says.style.minHeight = height + "px";
  }

  function show() {
    const instant = instantAt(stroke, at), fields = fieldsOf(instant);
    drawing.draw(instant);
    close.drawing.draw(instant);
    slider.value = Math.round(at / step);
    const words = instant.passage.words, hits = fields.hits.length ? " Interference: " + fields.hits.map(h => h.words).join("; ") + "." : "";
    const name = instant.passage.name + ":";
    if (saysName.textContent !== name) saysName.textContent = name;
    if (saysWords.textContent !== words) saysWords.textContent = words;
    if (saysHit.textContent !== hits) saysHit.textContent = hits;
    shown.travel.set(fields.travel);
    shown.force.set(fields.force);
    bends.forEach((b, i) => b.set(fields.angles[i]));
    shown.clear.set(fields.clear);
    shown.clear.box.className = fields.hits.length ? "warns" : "";
    chart.dot.setAttribute("visibility", instant.recorded ? "visible" : "hidden");
    chart.dot.setAttribute("cx", thousandths(chart.x(Math.max(Number(chart.svg.dataset.from), instant.travel))));
    chart.dot.setAttribute("cy", thousandths(chart.y(fields.newtons)));
    const full = sentence(instant, fields);
    slider.setAttribute("aria-valuetext", full);
    holder.dataset.at = Math.round(at);
    say(instant, full);
  }

  // Spoken when a phase begins or the picture stops, and at most once in two seconds while it plays.
  function say(instant, words) {
    const now = performance.now(), passage = instant.passage.name;
    if (untouched || (playing && (passage === said || now - saidAt < 2000))) return;
    if (document.activeElement === slider && !playing) return; // the slider announces it itself
    said = passage;
    saidAt = now;
    live.textContent = words;
  }

  function go(to) {
    untouched = false;
    at = Math.min(length, Math.max(0, to));
    show();
  }

  function set(running) {
    playing = running;
    play.textContent = running ? "Pause" : "Play";
    if (!running) { said = ""; show(); return; }
    if (untouched || at >= length) at = 0;
    untouched = false;
    last = performance.now();
    requestAnimationFrame(frame);
  }

  // With reduced motion, one still per second.
  function frame(now) {
    if (!playing) return;
    const passed = now - last;
    if (calm.matches && passed < 1000) { requestAnimationFrame(frame); return; }
    last = now;
    at += (calm.matches ? 500 : Math.min(100, passed)) * Number(speed.value);
    if (at >= length && loop.checked) at = 0;
    at = Math.min(at, length);
    show();
    if (at >= length) set(false);
    else requestAnimationFrame(frame);
  }

  function jump(words, to) {
    html("button", {type: "button"}, jumps, words).addEventListener("click", () => { set(false); go(to); });
  }
  jump("Placed", 0);
  jump("Pressed", stroke.pressed);
  jump("Free", length);

  play.addEventListener("click", () => set(!playing));
  slider.addEventListener("input", () => { if (playing) set(false); go(slider.value * step); });
  holder.addEventListener("keydown", event => {
    if (event.key !== " " || (event.target !== slider && event.target !== chart.svg)) return;
    event.preventDefault();
    set(!playing);
  });
  colours.addEventListener("change", () => {
    drawing.options.look = close.drawing.options.look = colours.value;
    key(colours.value);
    show();
  });
  if (close.select) close.select.addEventListener("change", () => { close.drawing.options.close = Number(close.select.value); show(); });
  followChart(chart, stroke, to => { if (playing) set(false); go(to); });
  new ResizeObserver(() => { if (svg.clientWidth) { reserve(); show(); } }).observe(svg);
  reserve();
  show();
  return {stroke: stroke, holder: holder, at: () => at, playing: () => playing, go: go};
}

// A magnified picture that follows a bend, above the chart.
function makeCloseUp(stroke, page, beside, named) {
  const figure = html("figure", {class: "close-up"});
  beside.insertBefore(figure, beside.querySelector(".chart"));
  const svg = make("svg", {role: "img", "aria-label": named + ": the bend magnified, layer by layer"}, figure);
  const drawing = makeDrawing(stroke, svg, page.palette);
  drawing.options.close = 0;
  const caption = html("figcaption", {}, figure);
  if (stroke.bends.length < 2) {
    caption.textContent = "The bend magnified, layer by layer. It follows the strip.";
    return {drawing: drawing, select: null};
  }
  return {drawing: drawing, select: choice(caption, "Magnified", stroke.bends.map((b, i) => [String(i), b.name]))};
}

// The instant of the stroke whose travel and force lie nearest to a point of the chart; times from touch to free.
function followChart(chart, stroke, go) {
  const begin = stroke.passages.find(p => p.name === "Press").at;
  const free = stroke.passages.find(p => p.name === "Free"), end = free ? free.at : stroke.keys[stroke.keys.length - 1].at;
  const svg = chart.svg;
  function instant(event) {
    const box = svg.getBoundingClientRect(), view = svg.viewBox.baseVal;
    const x = (event.clientX - box.left) * view.width / box.width, y = (event.clientY - box.top) * view.height / box.height;
    let best = begin, least = Infinity;
    for (let at = begin; at <= end; at += 10) {
      const m = instantAt(stroke, at), force = between(stroke.force[m.first], stroke.force[m.second], m.part);
      const off = Math.hypot(chart.x(m.travel) - x, chart.y(force) - y);
      if (off < least) { least = off; best = at; }
    }
    go(best);
  }
  let held = false;
  svg.addEventListener("pointerdown", event => { held = true; svg.setPointerCapture(event.pointerId); instant(event); });
  svg.addEventListener("pointermove", event => { if (held) instant(event); });
  for (const over of ["pointerup", "pointercancel"]) svg.addEventListener(over, () => { held = false; });
}

// Which tool is which, and what the colours mean. Gives back a function that turns to other colours.
function makeLegend(stage, stroke, page) {
  const list = html("ul", {class: "legend"}, stage), shown = new Set();
  for (const tool of stroke.tools) {
    if (shown.has(tool.role + tool.name)) continue;
    shown.add(tool.role + tool.name);
    const item = html("li", {}, list);
    html("span", {class: "swatch", style: "background:repeating-linear-gradient(" + (90 + (HATCH[tool.role] || 0)) + "deg,var(--" +
      roleClass(tool.role) + "-fill) 0 4px,var(--" + roleClass(tool.role) + "-hatch) 4px 6px)", "aria-hidden": "true"}, item);
    item.append(tool.name && tool.name !== tool.role ? tool.role + " \u2018" + tool.name + "\u2019" : tool.role);
  }
  const scale = html("li", {class: "scale"}, list);
  const box = html("div", {style: "flex:1"}, scale);
  const title = html("div", {}, box), bar = html("div", {class: "bar", "aria-hidden": "true"}, box), ends = html("div", {class: "ends"}, box);
  const middle = (page.palette.length - 1) / 2;
  function turn(look) {
    const stress = look === "stress", colours = stress ? page.palette : page.palette.slice(middle);
    title.textContent = stress ? "Hoop stress, MPa: minus is compression, plus is tension" : "Plastic strain, per cent; white: elastic";
    bar.style.background = "linear-gradient(90deg," + colours.filter((c, i) => i % 4 === 0).join(",") + ")";
    ends.textContent = "";
    for (const part of stress ? [-1, -0.5, 0, 0.5, 1] : [0, 0.25, 0.5, 0.75, 1]) {
      const value = part * (stress ? page.stress : 100 * page.strain);
      html("span", {}, ends, String(Math.round(value * 100) / 100).replace("-", "\u2212"));
    }
  }
  turn("stress");
  return turn;
}
