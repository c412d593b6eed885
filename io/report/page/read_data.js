// The page's data: JSON in a script element, number fields packed as io/report/packed_numbers.h says.

export function pageData() {
  return JSON.parse(document.getElementById("report-data").textContent);
}

async function inflated(base64) {
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate"));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

/** Numbers of a packed field; `row` as it was packed. */
export async function unpacked(field, row) {
  const bytes = await inflated(field.data);
  const count = bytes.length / 2;
  const steps = new Uint16Array(count);
  const numbers = new Float64Array(count);
  const step = (field.high - field.low) / field.levels;
  for (let k = 0; k < count; ++k) {
    const before = k === 0 ? 0 : k % row === 0 ? steps[k - row] : steps[k - 1];
    steps[k] = before + bytes[k] + 256 * bytes[count + k];
    numbers[k] = field.low + step * steps[k];
  }
  return numbers;
}
