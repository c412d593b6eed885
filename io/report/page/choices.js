// State and field, chosen once for the whole page.

function element(name, attributes = {}, ...children) {
  const made = Object.assign(document.createElement(name), attributes);
  made.append(...children);
  return made;
}

export { element };

/** Fills `bar`; `changed()` is called after every choice. */
export class Choices {
  constructor(bar, view, first, changed) {
    this.state = first;
    this.field = view.fields[0].id;
    const states = element("fieldset", {}, element("legend", { textContent: "State" }));
    view.states.forEach((state, i) => {
      const input = element("input", { type: "radio", name: "state", value: i, checked: i === first });
      input.addEventListener("change", () => { this.state = i; changed(); });
      const name = element("bdi", { textContent: state.name });
      states.append(element("label", { title: state.name }, input, " ", name));
    });
    const fields = element("select", { id: "field" });
    for (const field of view.fields) fields.append(element("option", { value: field.id, textContent: `${field.name} [${field.unit}]` }));
    fields.addEventListener("change", () => { this.field = fields.value; changed(); });
    bar.append(states, element("label", { htmlFor: "field" }, element("b", { textContent: "Colours " }), fields));
    bar.hidden = false;
    this.fields = fields;
  }

  /** Only fields that the state has can be chosen. */
  allow(ids) {
    for (const option of this.fields.options) option.disabled = !ids.includes(option.value);
    if (!ids.includes(this.field)) this.field = this.fields.value = ids[0];
  }
}
