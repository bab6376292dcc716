"use strict";

// The page asks the service, as any other program would: GET shows the demo house, and a house of the reader's own is posted with each
// question. What it shows is always an answer to what is chosen: where there is none, there are words and no picture.

const the = id => document.getElementById(id);
const chosen = name => document.querySelector(`input[name=${name}]:checked`).value;

// What the service takes at most.
const largest = 8 * 1024 * 1024;

let house = null;     // the JSON that is posted; null: the demo house
let source = "";      // the name of its file
let sets = [];        // as /sets gives them
let trim = null;      // of the batten: {text} to be asked for, {metres} of it
let latest = null;    // stops the question before this one
let speaking = 0;     // the timer of what is said aloud

// ask gives the service's answer. What it refuses is thrown as a list of sentences.
async function ask(path, signal) {
  const how = house === null ? {} : { method: "POST", headers: { "Content-Type": "application/json" }, body: house };
  let response, text;
  try {
    response = await fetch(path, { ...how, signal });
    text = await response.text();
  } catch {
    throw ["The service does not answer. Is it still running?"];
  }
  if (response.ok) return text;
  try {
    throw JSON.parse(text).errors.map(e => e.error);
  } catch (e) {
    throw Array.isArray(e) ? e : [`The service answers with status ${response.status}.`];
  }
}

// latestOnly runs a task and stops the one before: of two answers only that to the later question is shown.
async function latestOnly(task) {
  latest?.abort();
  const own = latest = new AbortController();
  the("drawn").setAttribute("aria-busy", "true");
  try {
    await task(own.signal);
  } catch (e) {
    if (!own.signal.aborted) refuse(Array.isArray(e) ? e : [String(e)]);
  }
  if (latest === own) the("drawn").removeAttribute("aria-busy");
}

// begin shows a house: its sets first, then the one that is chosen. No file is the demo house.
const begin = (wanted, file) => latestOnly(async signal => {
  sets = [];
  house = file ? "" : null;
  source = file?.name ?? "";
  clear();
  settle();
  const text = file && await read(file);
  if (signal.aborted) return;
  house = text ?? null;
  const answer = JSON.parse(await ask("sets", signal));
  if (signal.aborted) return;
  sets = answer.sets;
  the("house").textContent = answer.house + (house === null ? ", the invented demo house" : `, from ${source}`);
  the("set").replaceChildren(...sets.map(s => new Option(s.name)));
  const notes = choose(wanted);
  settle();
  await draw(signal);
  if (notes.length > 0) complain("The address of this page asks for something else:", notes);
});

// read gives the text of a file.
async function read(file) {
  if (file.size > largest) throw ["It is larger than 8 MiB; want the JSON of one house."];
  const text = await file.text().catch(() => "");
  if (text === "") throw ["It is empty, or cannot be read; want the JSON of one house."];
  return text;
}

// choose takes what is wanted, as far as there is such a thing, and says what is not.
function choose(wanted) {
  const notes = [];
  const name = wanted.get("set");
  if (sets.some(s => s.name === name)) the("set").value = name;
  else if (name !== null) notes.push(`No set is called "${name}".`);
  for (const what of ["way", "units"]) {
    const radios = [...document.getElementsByName(what)], radio = radios.find(r => r.value === wanted.get(what));
    if (radio) radio.checked = true;
    else if (wanted.has(what)) notes.push(`${what} is "${wanted.get(what)}"; want one of ${radios.map(r => r.value).join(", ")}.`);
  }
  const set = current();
  trim = { text: set.low_trim, metres: parseFloat(set.low_trim) };
  if (wanted.has("trim")) {
    const sizes = { ft: 0.3048, "'": 0.3048, in: 0.0254, '"': 0.0254, m: 1, cm: 0.01, mm: 0.001 };
    const [, number, unit] = wanted.get("trim").match(/^\s*(\d+\.?\d*)\s*(ft|'|in|"|mm|cm|m)\s*$/) ?? [];
    if (unit) move(number * sizes[unit], wanted.get("trim"));
    else notes.push(`"${wanted.get("trim")}" is no trim that this page can read; write 12 ft, 144 in or 3.66 m.`);
    if (unit && Math.abs(trim.metres - number * sizes[unit]) > 1e-6)
      notes.push(`At ${wanted.get("trim")} the set cannot be; it flies from ${words(reach().low)} to ${words(reach().high)}.`);
  }
  return notes;
}

const current = () => sets[Math.max(the("set").selectedIndex, 0)];
const reach = () => ({ low: parseFloat(current().lowest), high: parseFloat(current().highest) });

// The slider's steps.
const steps = () => chosen("units") === "us" ? { metres: 0.0254, unit: "in" } : { metres: 0.01, unit: "cm" };

// move takes the batten to a trim, or as near to it as the set flies.
function move(metres, text) {
  const { low, high } = reach(), hair = 1e-6;
  if (metres < low + hair) trim = { metres: low, text: current().lowest };
  else if (metres > high - hair) trim = { metres: high, text: current().highest };
  else trim = { metres, text };
}

// words writes a length as the picture does.
function words(metres) {
  if (chosen("units") === "metric") return `${+metres.toFixed(3)} m`;
  let sixteenths = Math.round(metres / 0.0254 * 16), parts = 16;
  const feet = Math.floor(sixteenths / 192), inches = Math.floor(sixteenths % 192 / 16);
  sixteenths %= 16;
  while (sixteenths > 0 && sixteenths % 2 === 0) { sixteenths /= 2; parts /= 2; }
  return `${feet}' ${inches}${sixteenths > 0 ? ` ${sixteenths}/${parts}` : ""}"`;
}

// settle shows what is chosen in the controls and in the address of the page.
function settle() {
  const slider = the("trim"), none = sets.length === 0;
  for (const control of [slider, the("low"), the("high"), the("set")]) control.disabled = none;
  the("demo").hidden = house === null;
  if (none) {
    the("set").replaceChildren();
    for (const id of ["house", "says", "lowest", "highest", "limits"]) the(id).replaceChildren();
    the("low").textContent = "Low trim";
    the("high").textContent = "High trim";
    return;
  }
  const set = current(), { low, high } = reach(), step = steps().metres;
  slider.min = Math.floor(low / step + 1e-6);
  slider.max = Math.ceil(high / step - 1e-6);
  slider.value = Math.round(trim.metres / step);
  slider.setAttribute("aria-valuetext", words(trim.metres));
  the("says").textContent = words(trim.metres);
  the("lowest").textContent = `lowest ${words(low)}`;
  the("highest").textContent = `highest ${words(high)}`;
  the("low").textContent = `Low trim ${words(parseFloat(set.low_trim))}`;
  the("high").textContent = `High trim ${words(parseFloat(set.high_trim))}`;
  the("limits").replaceChildren(...limits(set));
  document.title = `${set.name}: free body of a line set`;
  if (house === null) history.replaceState(null, "", "?" + query());
  else history.replaceState(null, "", location.pathname); // the address alone would show another house
}

// limits says what exceeds.
function limits(set) {
  const all = [];
  if (set.exceeds.length === 0) all.push("No check of this set exceeds a limit given.");
  else {
    const list = document.createElement("ul");
    list.append(...set.exceeds.map(name => element("li", name)));
    all.push("Exceeds a limit given:", list);
  }
  if (house === null) {
    const link = element("a", "All checks, as JSON");
    link.href = "checks?" + new URLSearchParams({ set: set.name });
    all.push(" ", link);
  }
  return all;
}

const query = () => new URLSearchParams({ set: current().name, trim: trim.text, way: chosen("way"), units: chosen("units") });

// draw fetches the picture and shows it.
async function draw(signal) {
  const text = await ask("freebody.svg?" + query(), signal);
  if (signal.aborted) return;
  const svg = document.importNode(new DOMParser().parseFromString(text, "image/svg+xml").documentElement, true);
  the("picture").replaceChildren(svg);
  the("words").textContent = svg.querySelector("desc").textContent;
  the("picture").parentElement.hidden = false;
  the("errors").replaceChildren();
  say(`Drawn: ${current().name}, batten at ${words(trim.metres)}.`);
}

// clear takes away what is shown: it is not what is chosen.
function clear() {
  clearTimeout(speaking);
  for (const id of ["picture", "words", "status", "errors"]) the(id).replaceChildren();
  the("picture").parentElement.hidden = true;
}

// refuse says why there is no picture.
function refuse(sentences) {
  clear();
  complain(sets.length === 0 && house !== null ? `${source} cannot be used:` : "This cannot be drawn:", sentences);
}

function complain(head, sentences) {
  const box = document.createElement("div"), list = document.createElement("ul");
  list.append(...sentences.map(text => element("li", text)));
  box.append(element("p", head), list);
  the("errors").replaceChildren(box);
}

// say tells it to who does not see it, when the slider has come to rest.
function say(text) {
  clearTimeout(speaking);
  speaking = setTimeout(() => { the("status").textContent = text; }, 400);
}

function element(name, text) {
  const e = document.createElement(name);
  e.textContent = text;
  return e;
}

// redraw draws what is chosen now.
function redraw() {
  if (sets.length === 0) return;
  settle();
  latestOnly(draw);
}

the("trim").addEventListener("input", () => {
  const value = the("trim").valueAsNumber, { metres, unit } = steps();
  move(value * metres, `${value} ${unit}`);
  redraw();
});
for (const [id, which] of [["low", "low_trim"], ["high", "high_trim"]]) the(id).addEventListener("click", () => {
  move(parseFloat(current()[which]), current()[which]);
  redraw();
});
the("set").addEventListener("change", () => { move(trim.metres, trim.text); redraw(); });
for (const radio of document.querySelectorAll("input[type=radio]")) radio.addEventListener("change", redraw);
the("choices").addEventListener("submit", event => event.preventDefault());

the("file").addEventListener("change", () => {
  const [file] = the("file").files;
  if (file) begin(new URLSearchParams(), file);
});
the("demo").addEventListener("click", () => {
  the("file").value = "";
  the("file").focus();
  begin(new URLSearchParams());
});

begin(new URLSearchParams(location.search));
