"use strict";
(() => {
  const root = document.documentElement;
  const find = (selector, from) => (from || document).querySelector(selector);
  const all = (selector, from) => Array.from((from || document).querySelectorAll(selector));

  // What is kept. A browser may refuse to keep anything: then it lasts while the page is open.
  const book = `foredge ${document.body.dataset.book} ${document.body.dataset.title} `;
  const kept = new Map();
  let refused = false;
  const recall = (key) => {
    try {
      return localStorage.getItem(book + key);
    } catch {
      refused = true;
      return kept.has(key) ? kept.get(key) : null;
    }
  };
  const keep = (key, value) => {
    kept.set(key, value);
    try {
      if (value === null) localStorage.removeItem(book + key);
      else localStorage.setItem(book + key, value);
    } catch {
      if (!refused) say("This browser keeps nothing: ticks last while the page is open.");
      refused = true;
    }
  };
  const forget = () => {
    kept.clear();
    try {
      for (const key of Object.keys(localStorage)) if (key.startsWith(book)) localStorage.removeItem(key);
    } catch {
      refused = true;
    }
  };

  let silence = 0;
  const say = (words) => {
    find("#say").textContent = words;
    clearTimeout(silence);
    silence = setTimeout(() => { find("#say").textContent = ""; }, 6000);
  };
  const make = (name, words, look) => {
    const element = document.createElement(name);
    if (words) element.textContent = words;
    if (look) element.className = look;
    return element;
  };

  // Units.
  const letter = { metric: "m", imperial: "i", both: "b" };
  const units = () => root.dataset.units;
  const showUnits = (wanted) => {
    root.dataset.units = wanted;
    for (const element of all("[data-m]")) {
      element.textContent = element.getAttribute("data-" + letter[wanted]);
    }
    for (const radio of all("input[name=units]")) radio.checked = radio.value === wanted;
  };
  for (const radio of all("input[name=units]")) {
    radio.addEventListener("change", () => {
      keep("units", radio.value);
      showUnits(radio.value);
      say(`Numbers in ${{ metric: "metric units", imperial: "inches and ounces", both: "both systems" }[radio.value]}.`);
    });
  }
  const wanted = recall("units");
  if (wanted in letter && wanted !== units()) showUnits(wanted);

  // Light or dark.
  const looks = ["device", "light", "dark"];
  const showLook = (look) => {
    if (look === "device") delete root.dataset.look;
    else root.dataset.look = look;
    const words = look === "device" ? "as the device" : look;
    find("#look").setAttribute("aria-label", `Light or dark: ${words}`);
    find("#look").textContent = look === "device" ? "Light or dark" : look === "light" ? "Light" : "Dark";
    return words;
  };
  let look = looks.includes(recall("look")) ? recall("look") : "device";
  showLook(look);
  find("#look").addEventListener("click", () => {
    look = looks[(looks.indexOf(look) + 1) % looks.length];
    keep("look", look);
    say(`Page: ${showLook(look)}.`);
  });

  // Lines for the spec, made from what is ticked and written.
  const showLines = (area, copy, lines) => {
    find(area).value = lines.map((line) => `${line}\n`).join("");
    find(area).rows = Math.min(Math.max(3, lines.length + 1), 16);
    find(copy).disabled = !lines.length;
  };
  const offer = (area, copy) => find(copy).addEventListener("click", async () => {
    try {
      await navigator.clipboard.writeText(find(area).value);
      say("Copied. Paste the lines into the spec.");
    } catch {
      find(area).focus();
      find(area).select();
      say("Selected. Copy the lines now.");
    }
  });
  offer("#done-lines", "#done-copy");

  // Ticks: one string of 0 and 1 a step, kept under a key made from its words.
  const steps = all(".step").map((element) => ({
    element,
    key: "step " + element.dataset.key,
    whole: find(".whole", element),
    lines: all(".lines-of-work input", element),
    name: find("h3", element).textContent.trim(),
    line: element.dataset.at ? `{operation: ${element.dataset.step}, at: ${element.dataset.at}}` : element.dataset.step,
  }));
  const showProgress = () => {
    const done = steps.filter((step) => step.whole.checked);
    const next = steps.find((step) => !step.whole.checked);
    find("#progress").textContent = `${done.length} of ${steps.length} steps done`;
    const link = find("#next");
    link.textContent = next ? `${done.length ? "Go on" : "Start"}: ${next.name}` : "All done";
    link.setAttribute("href", next ? `#${next.element.id}` : "#main");
    showLines("#done-lines", "#done-copy", done.length ? ["done:", ...done.map((step) => `  - ${step.line}`)] : []);
    for (const count of all("[data-count]")) {
      const part = all(".whole", document.getElementById(count.dataset.count));
      const ticked = part.filter((box) => box.checked).length;
      const words = part.length === 1 ? "step" : "steps";
      count.textContent = ticked ? `${ticked} of ${part.length} ${words} done` : `${part.length} ${words}`;
    }
  };
  const keepStep = (step) => {
    const ticks = [step.whole, ...step.lines].map((box) => (box.checked ? "1" : "0")).join("");
    keep(step.key, ticks.includes("1") ? ticks : null);
    showProgress();
  };
  for (const step of steps) {
    const ticks = recall(step.key) || "";
    if (ticks.length === step.lines.length + 1) {
      [step.whole, ...step.lines].forEach((box, place) => { box.checked = box.checked || ticks[place] === "1"; });
    }
    step.whole.addEventListener("change", () => {
      for (const box of step.lines) box.checked = step.whole.checked;
      keepStep(step);
    });
    for (const box of step.lines) {
      box.addEventListener("change", () => {
        step.whole.checked = step.lines.every((one) => one.checked);
        keepStep(step);
      });
    }
  }
  showProgress();
  if (refused) say("This browser keeps nothing: ticks last while the page is open.");

  // How a number was made.
  const entries = JSON.parse(find("#derivations").textContent);
  const why = find("#why");
  const trail = [];
  let asked = null;
  const inUnits = (told) => (Array.isArray(told) ? told["mib".indexOf(letter[units()])] : told || "");
  const listInputs = (body, heading, inputs) => {
    if (!inputs) return;
    body.append(make("h3", heading));
    const list = make("ul", "", "inputs");
    for (const [term, place] of inputs) {
      const button = make("button");
      button.type = "button";
      button.append(make("span", term), make("b", inUnits(entries[place].v)));
      button.addEventListener("click", () => { trail.push(place); showEntry(); });
      const item = make("li");
      item.append(button);
      list.append(item);
    }
    body.append(list);
  };
  const showEntry = () => {
    const entry = entries[trail[trail.length - 1]];
    const body = find("#why-body");
    body.replaceChildren();
    find("#why-title").textContent = entry.l;
    body.append(make("p", inUnits(entry.v), "value"), make("p", entry.s, "aside"));
    if (entry.g) body.append(make("p", inUnits(entry.g)));
    if (entry.f) {
      body.append(make("h3", "Formula"), make("p", `= ${inUnits(entry.f)}`, "formula"));
      if (entry.t) body.append(make("p", inUnits(entry.t), "formula"));
    }
    for (const [heading, words] of [["Why", entry.r], ["From", entry.w], ["Source", entry.c]]) {
      if (words) body.append(make("h3", heading), make("p", words));
    }
    listInputs(body, "Made from", entry.i);
    listInputs(body, "Decided by", entry.d);
    if (entry.b) {
      body.append(make("h3", "What the range comes from"));
      const list = make("ul");
      for (const [label, share] of entry.b) list.append(make("li", `${label}: ${share}`));
      body.append(list);
    }
    if (entry.n) {
      body.append(make("h3", "Name"));
      const name = make("p");
      name.append(make("code", entry.n));
      body.append(name);
    }
    find("#why-back").hidden = trail.length < 2;
    body.focus({ preventScroll: true });
    why.scrollTop = 0;
  };
  document.addEventListener("click", (event) => {
    const number = event.target.closest("button.n");
    if (!number) return;
    asked = number;
    trail.splice(0, trail.length, Number(number.dataset.q));
    if (!why.open) why.showModal();
    showEntry();
  });
  find("#why-back").addEventListener("click", () => { trail.pop(); showEntry(); });
  find("#why-close").addEventListener("click", () => why.close());
  why.addEventListener("close", () => { if (asked) asked.focus(); });

  // Drawings.
  const zoom = find("#zoom");
  const stage = find("#zoom-body");
  let drawing = null;
  let home = null;
  let opener = null;
  let scale = 1;
  const shape = () => drawing.viewBox.baseVal;
  const fit = () => Math.min(stage.clientWidth / shape().width, stage.clientHeight / shape().height);
  const setScale = (next, x, y) => {
    const least = fit();
    const to = Math.min(Math.max(next, least), least * 24);
    const across = x === undefined ? stage.clientWidth / 2 : x;
    const down = y === undefined ? stage.clientHeight / 2 : y;
    const keepX = (stage.scrollLeft + across) / scale;
    const keepY = (stage.scrollTop + down) / scale;
    scale = to;
    drawing.style.width = `${shape().width * scale}px`;
    drawing.style.height = `${shape().height * scale}px`;
    stage.scrollLeft = keepX * scale - across;
    stage.scrollTop = keepY * scale - down;
  };
  for (const button of all(".enlarge")) {
    button.addEventListener("click", () => {
      const figure = button.closest("figure");
      opener = button;
      home = find(".drawing", figure);
      home.style.minHeight = `${home.offsetHeight}px`;
      drawing = find("svg", home);
      stage.replaceChildren(drawing);
      find("#zoom-title").textContent = figure.querySelector("figcaption").firstChild.textContent.trim();
      zoom.showModal();
      scale = fit();
      setScale(scale);
      stage.focus();
    });
  }
  zoom.addEventListener("close", () => {
    drawing.style.width = drawing.style.height = "";
    home.replaceChildren(drawing);
    home.style.minHeight = "";
    opener.focus();
  });
  find("#zoom-close").addEventListener("click", () => zoom.close());
  const zoomBy = { in: () => setScale(scale * 1.4), out: () => setScale(scale / 1.4), fit: () => setScale(0) };
  for (const button of all("[data-zoom]")) button.addEventListener("click", zoomBy[button.dataset.zoom]);
  zoom.addEventListener("keydown", (event) => {
    const does = { "+": "in", "=": "in", "-": "out", "0": "fit" }[event.key];
    if (!does || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    zoomBy[does]();
  });
  const fingers = new Map();
  const spread = () => {
    const [a, b] = [...fingers.values()];
    return Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
  };
  stage.addEventListener("pointerdown", (event) => fingers.set(event.pointerId, event));
  stage.addEventListener("pointermove", (event) => {
    if (!fingers.has(event.pointerId)) return;
    const before = fingers.size === 2 ? spread() : 0;
    fingers.set(event.pointerId, event);
    if (before > 0) {
      const [a, b] = [...fingers.values()];
      const place = stage.getBoundingClientRect();
      setScale(scale * (spread() / before), (a.clientX + b.clientX) / 2 - place.left, (a.clientY + b.clientY) / 2 - place.top);
    }
  });
  for (const name of ["pointerup", "pointercancel", "pointerleave"]) {
    stage.addEventListener(name, (event) => fingers.delete(event.pointerId));
  }
  stage.addEventListener("wheel", (event) => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    const place = stage.getBoundingClientRect();
    setScale(scale * Math.exp(-event.deltaY / 200), event.clientX - place.left, event.clientY - place.top);
  }, { passive: false });

  // Readings, and the lines they make for the spec.
  const form = find("#readings-form");
  if (form) {
    const boxes = all("input[data-key]", form);
    const unit = () => find("input[name=reading-unit]:checked", form).value;
    const MM_AN_INCH = 25.4;
    const FORM = /^(?:(\d+)\s+)?(\d+)\/(\d+)$|^(\d+(?:[.,]\d+)?|[.,]\d+)$/;
    // A whole number, a decimal one, or a fraction; the spec may hold the unit already.
    const read = (text) => {
      const own = /^(.*?)\s*(mm|in|")$/.exec(text);
      const said = (own ? own[1] : text).trim();
      const found = FORM.exec(said);
      if (!found) return null;
      const [, whole, over, under, decimal] = found;
      const plain = decimal ? decimal.replace(",", ".").replace(/^\./, "0.") : said.replace(/\s+/g, " ");
      const value = decimal ? Number(plain) : Number(whole || 0) + Number(over) / Number(under);
      if (!Number.isFinite(value) || value <= 0) return null;
      const in_ = own ? (own[2] === "mm" ? "mm" : "in") : unit();
      return { text: `${plain} ${in_}`, mm: value * (in_ === "mm" ? 1 : MM_AN_INCH), own: Boolean(own) };
    };
    const range = (box, in_) => {
      const [low, high] = [box.dataset.low, box.dataset.high].map(Number);
      const show = (mm) => (in_ === "mm" ? mm.toFixed(1) : (mm / MM_AN_INCH).toFixed(3));
      return `${show(low)} to ${show(high)} ${in_}`;
    };
    const check = (box) => {
      const text = box.value.trim();
      const fault = document.getElementById(`${box.id}-fault`);
      // What the spec says already is right as it stands, in whatever unit.
      const found = text && text === box.dataset.written ? { text, mm: null, own: true } : read(text);
      find(".unit", box.parentElement).textContent = text && found && found.own ? "" : unit();
      const bad = text !== "" && !found;
      box.setAttribute("aria-invalid", String(bad));
      if (bad) {
        fault.textContent = unit() === "mm" ? "Write a number, such as 12.4" : "Write a number or a fraction, such as 8 1/16";
      } else if (found && found.mm !== null && box.dataset.low && (found.mm < Number(box.dataset.low) - 0.0005 || found.mm > Number(box.dataset.high) + 0.0005)) {
        fault.textContent = `Outside the estimate, ${range(box, unit())}. Measure once more; the reading wins.`;
      } else {
        fault.textContent = "";
      }
      return found;
    };
    const write = () => {
      const tree = new Map();
      for (const box of boxes) {
        const found = check(box);
        if (!found) continue;
        const keys = box.dataset.key.split(".");
        let level = tree;
        for (const key of keys.slice(0, -1)) {
          if (!level.has(key)) level.set(key, new Map());
          level = level.get(key);
        }
        level.set(keys[keys.length - 1], found.text);
      }
      const lines = (level, pad) => [...level].flatMap(([key, value]) =>
        value instanceof Map ? [`${pad}${key}:`, ...lines(value, pad + "  ")] : [`${pad}${key}: ${value.includes('"') ? `'${value}'` : value}`]);
      showLines("#lines", "#copy", tree.size ? ["measured:", ...lines(tree, "  ")] : []);
    };
    for (const box of boxes) {
      const before = recall(`reading ${box.dataset.key}`);
      if (before !== null && !box.dataset.written) box.value = before;
      box.addEventListener("input", () => {
        keep(`reading ${box.dataset.key}`, box.value || null);
        write();
      });
    }
    const chosen = recall("reading-unit");
    for (const radio of all("input[name=reading-unit]", form)) {
      if (chosen) radio.checked = radio.value === chosen;
      radio.addEventListener("change", () => { keep("reading-unit", radio.value); write(); });
    }
    form.addEventListener("submit", (event) => event.preventDefault());
    offer("#lines", "#copy");
    write();
  }

  find("#forget").addEventListener("click", () => {
    if (!window.confirm("Clear all ticks and readings of this book on this device?")) return;
    forget();
    for (const box of all("input[type=checkbox]")) box.checked = box.defaultChecked;
    for (const box of all("input[data-key]")) { box.value = box.defaultValue; box.dispatchEvent(new Event("input")); }
    showProgress();
    say("Cleared.");
  });
  if (window.matchMedia("(max-width: 62rem)").matches) find("#contents").open = false;
})();
