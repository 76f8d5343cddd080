// libferment in JavaScript, over the C interface (ferment.h). Importing it loads ferment.wasm, which lies beside it.

/** Numbers of an error's status, those of ferment.h. */
export const Status = Object.freeze({
  invalidInput: 1,
  outsideModel: 2,
  noSolution: 3,
  notConverged: 4,
  internal: 99,
});

/** What every function throws: a status and a message with value, unit, range and what to do. */
export class FermentError extends Error {
  constructor(status, message) {
    super(message);
    this.name = "FermentError";
    this.status = status;
  }
}

async function instantiate() {
  const url = new URL("./ferment.wasm", import.meta.url);
  // What the C++ runtime asks of its surroundings. There is no environment, and nothing to be told of memory growth.
  const success = 0;
  let memory;
  const imports = {
    env: { emscripten_notify_memory_growth() {} },
    wasi_snapshot_preview1: {
      environ_sizes_get(count, size) {
        const view = new DataView(memory.buffer);
        view.setUint32(count, 0, true);
        view.setUint32(size, 0, true);
        return success;
      },
      environ_get: () => success,
      proc_exit(code) {
        throw new FermentError(
          Status.internal,
          `the library stopped with code ${code}; please report the input that led here`,
        );
      },
    },
  };
  let bytes;
  if (url.protocol === "file:") {
    const { readFile } = await import("node:fs/promises");
    bytes = await readFile(url);
  } else {
    const response = await fetch(url);
    if (!response.ok)
      throw new FermentError(Status.internal, `${url} could not be loaded: ${response.status} ${response.statusText}`);
    bytes = await response.arrayBuffer();
  }
  const { instance } = await WebAssembly.instantiate(bytes, imports);
  memory = instance.exports.memory;
  instance.exports._initialize();
  return instance.exports;
}

const core = await instantiate();

// Structs and the answer are written to one piece of memory; every call is done before the next begins.
const scratchBytes = 128;
const structAt = core.malloc(scratchBytes);
if (structAt === 0) throw new FermentError(Status.internal, "no memory");
const answerAt = structAt + scratchBytes - 8;

function text(address) {
  const bytes = new Uint8Array(core.memory.buffer, address);
  return new TextDecoder().decode(bytes.subarray(0, bytes.indexOf(0)));
}

/** Writes a struct of ferment.h: its size, one 32-bit integer, doubles. */
function writeStruct(integer, doubles) {
  const header = 8;
  const view = new DataView(core.memory.buffer, structAt, scratchBytes);
  view.setUint32(0, header + 8 * doubles.length, true);
  view.setInt32(4, integer, true);
  doubles.forEach((value, i) => view.setFloat64(header + 8 * i, value, true));
}

function answerOf(status) {
  if (status !== 0) throw new FermentError(status, text(core.ferment_last_error()));
  return new DataView(core.memory.buffer).getFloat64(answerAt, true);
}

function invalid(message) {
  return new FermentError(Status.invalidInput, message);
}

function number(name, value) {
  if (value === undefined) throw invalid(`${name} must be given`);
  if (typeof value !== "number")
    throw invalid(`${name} must be a number, not ${JSON.stringify(value) ?? typeof value}`);
  return value;
}

function onlyKnown(inputs, known) {
  if (inputs === null || typeof inputs !== "object")
    throw invalid(`the inputs must be an object with ${known.join(", ")}`);
  for (const name of Object.keys(inputs)) {
    if (!known.includes(name)) throw invalid(`${name} is unknown; known: ${known.join(", ")}`);
  }
}

/** Version as "major.minor.patch". */
export function version() {
  return text(core.ferment_version());
}

/** Water temperature by the trade's factor rule, °C. */
export function waterByFactorRule(inputs) {
  onlyKnown(inputs, ["desiredC", "flourC", "roomC", "frictionK", "prefermentC"]);
  const { desiredC, flourC, roomC, frictionK, prefermentC } = inputs;
  const hasPreferment = prefermentC !== undefined && prefermentC !== null;
  writeStruct(hasPreferment ? 1 : 0, [
    number("desiredC", desiredC),
    number("flourC", flourC),
    number("roomC", roomC),
    number("frictionK", frictionK),
    hasPreferment ? number("prefermentC", prefermentC) : 0,
  ]);
  return answerOf(core.ferment_water_by_factor_rule(structAt, answerAt));
}

const yeasts = ["instant", "active_dry", "active_dry_unwetted", "compressed"];

/** Hours from the end of mixing to a rise in percent, at a constant dough temperature. */
export function hoursToRise(risePercent, dough) {
  number("risePercent", risePercent);
  onlyKnown(dough, ["doughC", "yeastPercent", "yeast", "saltPercent", "waterPercent", "sugarPercent", "altitudeM"]);
  // Defaults of FERMENT_DOUGH_INIT.
  const {
    doughC,
    yeastPercent,
    yeast = "instant",
    saltPercent = 2,
    waterPercent = 65,
    sugarPercent = 0,
    altitudeM = 0,
  } = dough;
  if (!yeasts.includes(yeast)) throw invalid(`yeast ${JSON.stringify(yeast)} is unknown; known: ${yeasts.join(", ")}`);
  writeStruct(yeasts.indexOf(yeast), [
    number("doughC", doughC),
    number("yeastPercent", yeastPercent),
    number("saltPercent", saltPercent),
    number("waterPercent", waterPercent),
    number("sugarPercent", sugarPercent),
    number("altitudeM", altitudeM),
  ]);
  return answerOf(core.ferment_hours_to_rise(risePercent, structAt, answerAt));
}

/**
 * All of the library: a question in, its answer out, as documents; an object for an object, a text for a text.
 * `ask({ ask: "water", day: { today: { room: "19C" }, water: { desired: "24C" }, dough: { flour: "1kg" } } })`
 */
export function ask(question) {
  const isText = typeof question === "string";
  const written = isText ? question : JSON.stringify(question);
  if (written === undefined) throw invalid("the question must be an object or a text");
  const bytes = new TextEncoder().encode(`${written}\0`);
  const questionAt = core.malloc(bytes.length);
  if (questionAt === 0) throw new FermentError(Status.internal, "no memory for the question");
  try {
    new Uint8Array(core.memory.buffer, questionAt, bytes.length).set(bytes);
    const status = core.ferment_ask(questionAt, answerAt);
    if (status !== 0) throw new FermentError(status, text(core.ferment_last_error()));
    const textAt = new DataView(core.memory.buffer).getUint32(answerAt, true);
    try {
      const answer = text(textAt);
      return isText ? answer : JSON.parse(answer);
    } finally {
      core.ferment_free(textAt);
    }
  } finally {
    core.free(questionAt);
  }
}
