// The packed lists of a stroke's data, unpacked. See render/report/packing.h and stroke_json.h.

const PLACE = 0.005; // mm

// Zigzag numbers of seven bits per byte; a zero is followed by the count of zeros, minus one.
function unpack(text) {
  const bytes = atob(text);
  const values = [];
  let at = 0;
  function number() {
    let value = 0;
    for (let shift = 0; ; shift += 7) {
      const byte = bytes.charCodeAt(at++);
      value |= (byte & 127) << shift;
      if (byte < 128) return value >>> 0;
    }
  }
  while (at < bytes.length) {
    const value = number();
    if (value === 0) for (let n = number(); n >= 0; n--) values.push(0);
    else values.push(value & 1 ? -((value + 1) / 2) : value / 2);
  }
  return values;
}

// Rows that hold differences to the row before them.
function unpackRows(text, width) {
  const values = unpack(text);
  for (let i = width; i < values.length; i++) values[i] += values[i - width];
  return values;
}

// The surfaces: each row is differences to the row before, of differences to the station before.
function unpackSurfaces(text, stations) {
  const values = unpack(text), row = 4 * stations;
  for (let from = 0; from < values.length; from += row) {
    for (let i = from + 4; i < from + row; i++) values[i] += values[i - 4];
    if (from > 0) for (let i = from; i < from + row; i++) values[i] += values[i - row];
  }
  return Int32Array.from(values);
}

function unpackContacts(text, states) {
  const values = unpack(text), contacts = [];
  let at = 0;
  for (let s = 0; s < states; s++) {
    const here = [];
    for (let n = values[at++]; n > 0; n--, at += 5)
      here.push({tool: values[at], x: values[at + 1] * PLACE, y: values[at + 2] * PLACE,
        fx: values[at + 3] / 10, fy: values[at + 4] / 10});
    contacts.push(here);
  }
  return contacts;
}

function unpackBend(bend) {
  const rows = unpackRows(bend.rows, 5), states = [];
  for (let i = 0; i < rows.length; i += 5)
    states.push({angle: rows[i] / 100, x: rows[i + 1] * PLACE, y: rows[i + 2] * PLACE,
      left: rows[i + 3] / 1000, right: rows[i + 4] / 1000});
  return {name: bend.name, station: bend.station, states: states,
    loaded: bend.loaded === undefined ? null : bend.loaded / 100,
    free: bend.free === undefined ? null : bend.free / 100};
}

function unpackClearance(text) {
  const rows = unpackRows(text, 6), states = [];
  for (let i = 0; i < rows.length; i += 6)
    states.push(rows[i] === 1 << 20 ? null : {distance: rows[i] * PLACE, x: rows[i + 1] * PLACE, y: rows[i + 2] * PLACE,
      toolX: rows[i + 3] * PLACE, toolY: rows[i + 4] * PLACE, tool: rows[i + 5]});
  return states;
}

function unpackKeys(text) {
  const rows = unpackRows(text, 3), keys = [];
  for (let i = 0; i < rows.length; i += 3) keys.push({at: rows[i], state: rows[i + 1] / 1000, travel: rows[i + 2] / 10000});
  return keys;
}

// Everything of a stroke, ready to be drawn. mm, degrees, N, ms; directions rad; y up.
function unpackStroke(data) {
  const cells = (data.stations - 1) * (data.edges.length - 1);
  return {
    name: data.name, number: data.number, thickness: data.thickness, window: data.window, loaded: data.loaded,
    states: data.states, stations: data.stations, edges: data.edges, lines: data.lines, labels: data.labels, hits: data.hits,
    surfaces: unpackSurfaces(data.surfaces, data.stations),
    stress: Int8Array.from(unpackRows(data.stress, cells)),
    strain: Int8Array.from(unpackRows(data.strain, cells)),
    travel: unpackRows(data.travel, 1).map(v => v / 10000),
    force: unpackRows(data.force, 1),
    tools: data.tools.map(t => Object.assign({}, t, {
      compression: t.compression ? unpackRows(t.compression, 1).map(v => v / 10000) : null})),
    contacts: unpackContacts(data.contacts, data.states),
    bends: data.bends.map(unpackBend),
    clearance: unpackClearance(data.clearance),
    keys: unpackKeys(data.pace.keys), passages: data.pace.passages, pressed: data.pace.pressed
  };
}

// The instant at a time: two recorded states, the part of the way between them, the punch's travel; `recorded` is false
// while the punch is brought to the strip and taken away, where forces and clearances are not those of the states.
function instantAt(stroke, at) {
  const keys = stroke.keys;
  let low = 0, high = keys.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (keys[middle].at <= at) low = middle; else high = middle;
  }
  const a = keys[low], b = keys[high];
  const part = b.at > a.at ? Math.min(1, Math.max(0, (at - a.at) / (b.at - a.at))) : 0;
  const state = a.state + part * (b.state - a.state);
  const first = Math.min(Math.floor(state), stroke.states - 1), second = Math.min(first + 1, stroke.states - 1);
  const travel = a.travel + part * (b.travel - a.travel);
  const recorded = Math.abs(travel - between(stroke.travel[first], stroke.travel[second], state - first)) < 0.002;
  let passage = stroke.passages[0];
  for (const p of stroke.passages) if (p.at <= at) passage = p;
  return {at: at, first: first, second: second, part: state - first, state: state,
    travel: travel, recorded: recorded, passage: passage};
}

function between(a, b, part) { return a + part * (b - a); }
