// One script tag and one element: <scopewright-advisor quarry="roe_deer" door="questions">.
// Attributes preset answers; results come as "advice" events; the frame sizes itself.
// What the attributes and the event hold: README, "On a club's page".
(() => {
  const home = new URL("./", document.currentScript.src);
  const numbers = {
    nearest: ["ranges", "nearest_m"],
    usual: ["ranges", "usual_m"],
    farthest: ["ranges", "farthest_m"],
    "power-most": ["rulebook", "magnification_most"],
    latitude: ["place", "latitude_deg"],
    longitude: ["place", "longitude_deg_east"],
  };
  const colours = ["ground", "surface", "ink", "ink-soft", "line", "accent", "on-accent"];

  class Advisor extends HTMLElement {
    static observedAttributes = ["quarry", "door", "units", "language", "lit-marks", ...Object.keys(numbers)];

    connectedCallback() {
      if (!this.shadowRoot) {
        const root = this.attachShadow({ mode: "open" });
        this.frame = document.createElement("iframe");
        // Named by the page around, or by the frame itself as soon as it is there.
        this.frame.title = this.getAttribute("label") ?? "Scopewright";
        this.frame.width = "100%";
        this.frame.height = "640";
        this.frame.allow = "clipboard-write";
        const sheet = new CSSStyleSheet();
        sheet.replaceSync(":host { display: block } iframe { display: block; border: 0; width: 100% }");
        root.adoptedStyleSheets = [sheet];
        root.append(this.frame);
      }
      this.hear = (event) => this.message(event);
      addEventListener("message", this.hear);
      this.show();
    }

    disconnectedCallback() {
      removeEventListener("message", this.hear);
    }

    attributeChangedCallback() {
      if (this.isConnected && this.frame) this.show();
    }

    /** The presets as answers; the frame reads them as it reads any input. */
    get presets() {
      const answers = { version: 1 };
      const quarry = (this.getAttribute("quarry") ?? "").split(/[\s,]+/).filter(Boolean);
      if (quarry.length > 0) answers.uses = quarry.map((what) => ({ what, share: 4 }));
      if (this.hasAttribute("units")) answers.units = this.getAttribute("units");
      for (const [name, [group, field]] of Object.entries(numbers)) {
        if (!this.hasAttribute(name)) continue;
        const text = this.getAttribute(name);
        // What is no number goes in as it is written, so that the frame can say so.
        (answers[group] ??= {})[field] = text.trim() !== "" && Number.isFinite(Number(text)) ? Number(text) : text;
      }
      if (this.getAttribute("lit-marks") === "forbidden") (answers.rulebook ??= {}).lit_mark_forbidden = true;
      return answers;
    }

    show() {
      const door = /^[a-z]+$/.test(this.getAttribute("door") ?? "") ? this.getAttribute("door") : "questions";
      const address = new URL(home);
      const language = encodeURIComponent(this.getAttribute("language") ?? "");
      address.hash = `/embed/${door}/${encodeURIComponent(JSON.stringify(this.presets))}/${language}`;
      if (this.frame.src !== address.href) this.frame.src = address.href;
    }

    /** Tells the frame who asks, and the colours set on the element. */
    greet() {
      const style = getComputedStyle(this);
      const set = {};
      for (const name of colours) {
        const value = style.getPropertyValue(`--scopewright-${name}`).trim();
        if (value) set[name] = value;
      }
      this.frame.contentWindow?.postMessage(JSON.stringify({ scopewright: 1, kind: "hello", colours: set }), home.origin);
    }

    message(event) {
      if (event.source !== this.frame.contentWindow || event.origin !== home.origin) return;
      let told;
      try {
        told = JSON.parse(event.data);
      } catch {
        return;
      }
      if (told?.scopewright !== 1) return;
      if (told.kind === "ready") {
        if (!this.hasAttribute("label") && typeof told.title === "string") this.frame.title = told.title;
        this.greet();
      } else if (told.kind === "height" && Number.isFinite(told.px)) {
        this.frame.height = String(Math.min(Math.max(Math.ceil(told.px), 200), 20000));
      } else if (told.kind === "advice") {
        this.dispatchEvent(new CustomEvent("advice", { detail: told.advice, bubbles: true, composed: true }));
      }
    }
  }
  if (!customElements.get("scopewright-advisor")) customElements.define("scopewright-advisor", Advisor);
})();
