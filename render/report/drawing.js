// One instant of a stroke as SVG. It is SVG and not a canvas because it stays sharp at any size and on paper, its
// words are words, and its colours follow the reader's theme; a frame takes some 2 to 4 ms.

const SVG = "http://www.w3.org/2000/svg";
const HATCH = {punch: -45, die: 45, pad: -67.5, clamp: 67.5, holder: 67.5, "die holder": 67.5, gauge: 22.5, ram: -22.5, bed: 0};

function make(name, attributes, parent) {
  const element = document.createElementNS(SVG, name);
  for (const key in attributes) element.setAttribute(key, attributes[key]);
  if (parent) parent.appendChild(element);
  return element;
}

function roleClass(role) { return role.replace(/\s/g, "-"); }
function thousandths(v) { return Math.round(v * 1000) / 1000; }
function pair(x, y) { return thousandths(x) + " " + thousandths(y); }

// A length that is easily read, at most `most`.
function readable(most) {
  const power = Math.pow(10, Math.floor(Math.log10(most)));
  return (most >= 5 * power ? 5 : most >= 2 * power ? 2 : 1) * power;
}

let patternCount = 0;

// palette: colours of the steps from -limit to limit. look: "stress" or "strain". close: index of a bend that the
// picture follows, or -1. words: size of the letters, pixels of the screen. names: whether tools are named in full.
function makeDrawing(stroke, svg, palette) {
  const steps = (palette.length - 1) / 2, n = stroke.stations, bands = stroke.edges.length - 1;
  const points = new Float64Array(4 * n);
  const options = {look: "stress", close: -1, words: 13, width: 0, names: true};
  const own = "hatch" + ++patternCount + "-";
  let box = [0, 0, 1, 1], scale = 1;

  svg.setAttribute("class", "stage-svg");
  const patterns = {}, defs = make("defs", {}, svg);
  const layers = {};
  for (const name of ["tools", "cells", "marks", "over", "words"]) layers[name] = make("g", {class: name}, svg);
  const tools = stroke.tools.map(makeTool);
  const cells = [];
  const ghost = make("path", {class: "ghost"}, layers.marks);
  const edges = make("path", {class: "edges"}, layers.marks);
  const outline = make("path", {class: "outline"}, layers.marks);
  const ticks = make("path", {class: "lines"}, layers.marks), nowTicks = make("path", {class: "lines now"}, layers.marks);
  const angleCase = make("path", {class: "case"}, layers.over), angles = make("path", {class: "angle"}, layers.over);
  const loadedAngles = make("path", {class: "angle loaded"}, layers.over);
  const nearCase = make("path", {class: "case"}, layers.over), near = make("path", {class: "near"}, layers.over);
  const arrows = make("path", {class: "arrow"}, layers.over), heads = make("path", {class: "arrow-head"}, layers.over);
  const hitCase = make("path", {class: "hit-case"}, layers.over), hit = make("path", {class: "hit"}, layers.over);
  const rule = make("path", {class: "rule"}, layers.over), leads = make("path", {class: "lead"}, layers.over);
  const plates = make("path", {class: "plate"}, layers.over);
  const texts = [];
  let textCount = 0;

  let greatest = 0;
  for (const state of stroke.contacts) for (const c of state) greatest = Math.max(greatest, Math.hypot(c.fx, c.fy));

  function makeTool(tool) {
    const name = roleClass(tool.role);
    if (!patterns[name]) {
      const pattern = make("pattern", {id: own + name, width: 7, height: 7, patternUnits: "userSpaceOnUse"}, defs);
      make("rect", {width: 7, height: 7, style: "fill:var(--" + name + "-fill)"}, pattern);
      make("path", {d: "M0 3.5H7", style: "stroke:var(--" + name + "-hatch);stroke-width:1.5;fill:none;vector-effect:none"}, pattern);
      patterns[name] = {pattern: pattern, turn: HATCH[tool.role] || 0};
    }
    return make("path", {d: tool.path, fill: "url(#" + own + name + ")", class: "tool " + name,
      style: "stroke:var(--" + name + "-line);stroke-width:1.3"}, layers.tools);
  }

  function write(words, x, y, how) {
    const size = options.words / scale;
    const text = texts[textCount] || (texts[textCount] = make("text", {}, layers.words));
    textCount++;
    text.setAttribute("class", how && how.kind || "");
    const anchor = how && how.anchor || "middle";
    text.setAttribute("text-anchor", anchor);
    text.setAttribute("font-size", thousandths(size));
    text.setAttribute("stroke-width", thousandths(0.28 * size));
    const wide = 0.56 * size * words.length, left = anchor === "start" ? 0 : 0.5 * wide, right = wide - left;
    text.setAttribute("x", thousandths(Math.max(box[0] + left + 0.4 * size, Math.min(box[0] + box[2] - right - 0.4 * size, x))));
    text.setAttribute("y", thousandths(Math.min(box[1] + box[3] - 0.5 * size, Math.max(box[1] + 1.1 * size, y))));
    text.setAttribute("visibility", "visible");
    if (text.textContent !== words) text.textContent = words;
  }

  function blend(instant) {
    const a = 4 * n * instant.first, b = 4 * n * instant.second, s = stroke.surfaces;
    for (let i = 0; i < 4 * n; i += 2) {
      points[i] = between(s[a + i], s[b + i], instant.part) * PLACE;
      points[i + 1] = -between(s[a + i + 1], s[b + i + 1], instant.part) * PLACE;
    }
  }

  function look(instant) {
    if (options.close < 0) {
      const w = stroke.window;
      box = [w[0], -(w[1] + w[3]), w[2], w[3]];
    } else {
      const width = 13 * stroke.thickness, height = width * stroke.window[3] / stroke.window[2];
      const i = 4 * stroke.bends[options.close].station;
      box = [(points[i] + points[i + 2]) / 2 - width / 2, (points[i + 1] + points[i + 3]) / 2 - height / 2, width, height];
    }
    svg.setAttribute("viewBox", box.map(thousandths).join(" "));
    scale = options.width ? options.width / box[2]
      : svg.clientWidth ? Math.min(svg.clientWidth / box[2], svg.clientHeight / box[3]) : 640 / box[2];
    for (const name in patterns)
      patterns[name].pattern.setAttribute("patternTransform", "rotate(" + patterns[name].turn + ") scale(" + 1 / scale + ")");
  }

  function toolPlace(k, instant) {
    const tool = stroke.tools[k], c = tool.compression;
    const pressed = c ? between(c[instant.first], c[instant.second], instant.part) * tool.way : 0;
    return {x: tool.x + (tool.back || 0) * Math.min(1, instant.state), y: tool.y - (tool.ram ? instant.travel : 0) + pressed};
  }

  function drawTools(instant) {
    tools.forEach((path, k) => {
      const at = toolPlace(k, instant);
      path.setAttribute("transform", "translate(" + pair(at.x, -at.y) + ")");
    });
  }

  // A point of station i at a part of the thickness from the lower surface.
  function on(i, part) {
    const k = 4 * i;
    return pair(between(points[k], points[k + 2], part), between(points[k + 1], points[k + 3], part));
  }

  function seen(i) {
    const k = 4 * i, far = box[2];
    return points[k] > box[0] - far && points[k] < box[0] + box[2] + far && points[k + 1] > box[1] - far && points[k + 1] < box[1] + box[3] + far;
  }

  function drawCells(instant) {
    const values = stroke[options.look], row = (n - 1) * bands, lists = [];
    const colour = (i, k) => Math.round(between(values[instant.first * row + i * bands + k],
      values[instant.second * row + i * bands + k], instant.part)) + steps;
    for (let k = 0; k < bands; k++)
      for (let i = 0; i + 1 < n;) {
        const step = colour(i, k);
        let end = i + 1;
        while (end + 1 < n && colour(end, k) === step) end++;
        if (options.close < 0 || seen(i) || seen(end)) {
          let d = "M";
          for (let j = i; j <= end; j++) d += (j > i ? "L" : "") + on(j, stroke.edges[k]);
          for (let j = end; j >= i; j--) d += "L" + on(j, stroke.edges[k + 1]);
          lists[step] = (lists[step] || "") + d + "Z";
        }
        i = end;
      }
    for (let step = 0; step < palette.length; step++) {
      if (lists[step] && !cells[step])
        cells[step] = make("path", {fill: palette[step], stroke: palette[step]}, layers.cells);
      if (cells[step]) cells[step].setAttribute("d", lists[step] || "");
    }
  }

  function outlineOf(values, factor) {
    let d = "";
    for (let i = 0; i < n; i++) d += (i ? "L" : "M") + pair(values(4 * i) * factor, -values(4 * i + 1) * factor);
    for (let i = n - 1; i >= 0; i--) d += "L" + pair(values(4 * i + 2) * factor, -values(4 * i + 3) * factor);
    return d + "Z";
  }

  function drawStrip(instant) {
    drawCells(instant);
    drawEdges();
    outline.setAttribute("d", outlineOf(i => i % 2 ? -points[i] : points[i], 1));
    const from = 4 * n * stroke.loaded;
    ghost.setAttribute("d", instant.state > stroke.loaded ? outlineOf(i => stroke.surfaces[from + i], PLACE) : "");
    const own = new Set(stroke.bends.map(b => b.name));
    let d = "", now = "";
    for (const line of stroke.lines) {
      if (own.has(line.name)) now += "M" + on(line.station, -0.45) + "L" + on(line.station, 1.45);
      else d += "M" + on(line.station, -0.25) + "L" + on(line.station, 1.25);
    }
    ticks.setAttribute("d", d);
    nowTicks.setAttribute("d", now);
  }

  // The edges between the layers, where they are large enough to be told apart.
  function drawEdges() {
    let d = "";
    if (options.close >= 0)
      for (let k = 1; k < bands; k++)
        for (let i = 0, last = -2; i < n; i++) {
          if (!seen(i)) continue;
          d += (i === last + 1 ? "L" : "M") + on(i, stroke.edges[k]);
          last = i;
        }
    edges.setAttribute("d", d);
  }

  function bendNow(bend, instant) {
    const a = bend.states[instant.first], b = bend.states[instant.second], now = {};
    for (const key in a) now[key] = between(a[key], b[key], instant.part);
    return now;
  }

  // An arc about the corner, from the left flat's own direction to the right flat.
  function arc(x, y, radius, from, turn) {
    const at = a => pair(x + radius * Math.cos(a), -(y + radius * Math.sin(a)));
    return "M" + at(from) + "A" + thousandths(radius) + " " + thousandths(radius) + " 0 0 " + (turn > 0 ? 0 : 1) + at(from + turn);
  }

  function drawAngles(instant) {
    let d = "", ghosts = "";
    if (options.close >= 0) return;
    const radius = Math.min(0.17 * box[3], 0.14 * box[2]) * (stroke.bends.length > 1 ? 0.72 : 1);
    for (const bend of stroke.bends) {
      const now = bendNow(bend, instant), turn = now.angle * Math.PI / 180, sign = turn < 0 ? -1 : 1;
      if (Math.abs(now.angle) < 3) continue;
      const to = (a, r) => pair(now.x + r * Math.cos(a), -(now.y + r * Math.sin(a)));
      d += "M" + pair(now.x, -now.y) + "L" + to(now.left, 1.3 * radius) + arc(now.x, now.y, radius, now.left, turn);
      const middle = now.left + turn / 2, away = radius + 1.5 * options.words / scale;
      write(Math.abs(now.angle).toFixed(1) + "\u00b0", now.x + away * Math.cos(middle),
        -(now.y + away * Math.sin(middle)) + 0.35 * options.words / scale);
      if (instant.state > stroke.loaded && bend.loaded !== null && Math.abs(now.angle - bend.loaded) > 0.05) {
        const was = bend.loaded * Math.PI / 180, outer = 1.22 * radius;
        ghosts += "M" + pair(now.x, -now.y) + "L" + to(now.left + was, 1.45 * radius) + arc(now.x, now.y, outer, now.left, was);
        if (stroke.bends.length === 1)
          write("loaded " + Math.abs(bend.loaded).toFixed(1) + "\u00b0", now.x + 1.5 * radius * Math.cos(now.left + was),
            -(now.y + 1.5 * radius * Math.sin(now.left + was)) - (Math.sin(now.left + was) > 0 ? 0.5 : -1) * options.words / scale,
            {kind: "loaded", anchor: sign * Math.cos(now.left + was) > 0 ? "start" : "middle"});
      }
    }
    angleCase.setAttribute("d", d);
    angles.setAttribute("d", d);
    loadedAngles.setAttribute("d", ghosts);
  }

  function drawForces(instant) {
    const here = instant.part < 0.5 ? stroke.contacts[instant.first] : stroke.contacts[instant.second];
    const a = stroke.contacts[instant.first], b = stroke.contacts[instant.second];
    const alike = a.length === b.length && a.every((c, i) => c.tool === b[i].tool);
    const list = alike ? a.map((c, i) => {
      const now = {};
      for (const key in c) now[key] = between(c[key], b[i][key], instant.part);
      return now;
    }) : here;
    const longest = 0.16 * box[3], head = 9 / scale;
    let d = "", tips = "";
    for (const c of list) {
      const force = Math.hypot(c.fx, c.fy), length = greatest > 0 ? longest * force / greatest : 0;
      if (length < 0.4 * head) continue;
      const x = c.fx / force, y = -c.fy / force, tip = Math.min(head, 0.7 * length);
      d += "M" + pair(c.x - x * length, -c.y - y * length) + "L" + pair(c.x - x * tip * 0.8, -c.y - y * tip * 0.8);
      tips += "M" + pair(c.x, -c.y) + "L" + pair(c.x - x * tip - y * tip * 0.42, -c.y - y * tip + x * tip * 0.42) +
        "L" + pair(c.x - x * tip + y * tip * 0.42, -c.y - y * tip - x * tip * 0.42) + "Z";
    }
    arrows.setAttribute("d", d);
    heads.setAttribute("d", tips);
  }

  function nearest(instant) {
    return instant.recorded ? stroke.clearance[instant.part < 0.5 ? instant.first : instant.second] || null : null;
  }

  function hitsNow(instant) {
    return stroke.hits.filter(h => instant.recorded && instant.state >= h.first - 0.5 && instant.state <= h.last + 0.5);
  }

  function drawClearance(instant) {
    const c = nearest(instant), hits = hitsNow(instant);
    let d = "", marks = "";
    const cross = 8 / scale, inBox = p => p.x > box[0] && p.x < box[0] + box[2] && -p.y > box[1] && -p.y < box[1] + box[3];
    if (c && inBox(c) && c.distance > 0 && c.distance < 0.25 * box[2]) {
      d = "M" + pair(c.x, -c.y) + "L" + pair(c.toolX, -c.toolY);
      const x = c.toolX - c.x, y = c.toolY - c.y, length = Math.hypot(x, y) || 1;
      for (const at of [[c.x, c.y], [c.toolX, c.toolY]])
        d += "M" + pair(at[0] - y / length * cross * 0.6, -(at[1] + x / length * cross * 0.6)) +
          "L" + pair(at[0] + y / length * cross * 0.6, -(at[1] - x / length * cross * 0.6));
      // On a small picture it would lie over other words; the readouts have it too.
      if (box[2] * scale > 420) write(c.distance.toFixed(2) + " mm clear", (c.x + c.toolX) / 2 + 1.1 * cross, -(c.y + c.toolY) / 2 - 0.9 * cross, {anchor: "start"});
    }
    for (const h of hits) {
      const deep = c && c.distance < 0 ? c : {x: h.at[0], y: h.at[1]}, r = 1.7 * cross;
      if (options.close >= 0 && !inBox(deep)) continue;
      marks += "M" + pair(deep.x - r, -deep.y) + "a" + pair(r, r) + " 0 1 0 " + pair(2 * r, 0) + "a" + pair(r, r) + " 0 1 0 " + pair(-2 * r, 0);
      for (const s of [1, -1])
        marks += "M" + pair(deep.x - 0.6 * r, -deep.y - s * 0.6 * r) + "L" + pair(deep.x + 0.6 * r, -deep.y + s * 0.6 * r);
      write(inBox(deep) ? "interference" : "interference, outside the picture", deep.x, -deep.y - r - 0.5 * options.words / scale, {kind: "hit-words"});
    }
    nearCase.setAttribute("d", d);
    near.setAttribute("d", d);
    hitCase.setAttribute("d", marks);
    hit.setAttribute("d", marks);
  }

  function drawLabels(instant) {
    let d = "", boxes = "";
    if (options.close < 0)
      for (const label of stroke.labels) {
        const tool = stroke.tools[label.tool];
        if (tool.back && instant.state > 0) continue;  // a gauge has left its place
        const x = label.at[0], y = -label.at[1], size = options.words / scale;
        const name = options.names && label.half * scale > 0.3 * options.words * label.words.length ? label.words : tool.role;
        write(name, x, y + 0.35 * size);
        if (label.inside) continue;
        const at = toolPlace(label.tool, instant), toX = at.x + label.to[0], toY = -(at.y + label.to[1]);
        const half = 0.32 * size * name.length + 0.3 * size, side = Math.abs(toX - x) > half ? Math.sign(toX - x) : 0;
        boxes += "M" + pair(x - half, y - 0.8 * size) + "h" + thousandths(2 * half) + "v" + thousandths(1.6 * size) +
          "h" + thousandths(-2 * half) + "Z";
        d += "M" + pair(x + side * half, y + (side ? 0 : Math.sign(toY - y) * 0.7 * size)) + "L" + pair(toX, toY);
      }
    leads.setAttribute("d", d);
    plates.setAttribute("d", boxes);
  }

  function drawScale() {
    const mm = readable(box[2] / 5), u = options.words / scale, x = box[0] + 0.8 * u, y = box[1] + box[3] - 0.8 * u;
    rule.setAttribute("d", "M" + pair(x, y - 0.4 * u) + "v" + thousandths(0.4 * u) + "h" + thousandths(mm) + "v" + thousandths(-0.4 * u));
    write(mm + " mm", x + mm + 0.5 * u, y, {anchor: "start"});
  }

  return {
    options: options, nearest: nearest, hitsNow: hitsNow, bendNow: bendNow,
    draw(instant) {
      textCount = 0;
      blend(instant);
      look(instant);
      drawTools(instant);
      drawStrip(instant);
      drawForces(instant);
      drawLabels(instant);
      drawScale();
      drawClearance(instant);
      drawAngles(instant);
      for (let i = textCount; i < texts.length; i++) texts[i].setAttribute("visibility", "hidden");
    }
  };
}
