// One state's surface, whole: of a symmetric model the page has the half y >= 0 and mirrors it.
import { unpacked } from "./read_data.js";

/** Numbers on the half widened to the whole belt, from -W/2 to +W/2; `sign` of the mirrored half. */
function whole(half, along, across, sign) {
  const wide = 2 * across - 1;
  const numbers = new Float64Array(along * wide);
  for (let i = 0; i < along; ++i)
    for (let j = 0; j < across; ++j) {
      const value = half[i * across + j];
      numbers[i * wide + across - 1 + j] = value;
      if (j > 0) numbers[i * wide + across - 1 - j] = sign * value;
    }
  return numbers;
}

/** The largest value within `reach` along the belt at each point: what stands in narrow lines is seen so. */
function widest(numbers, { along, across, x }, reach) {
  const shown = new Float64Array(numbers);
  for (let i = 0; i < along; ++i)
    for (let n = 0; n < along; ++n)
      if (n !== i && Math.abs(x[n] - x[i]) <= reach)
        for (let j = 0; j < across; ++j) shown[i * across + j] = Math.max(shown[i * across + j], numbers[n * across + j]);
  return shown;
}

/** {along, across, x, y, position: [x, y, z], motion: {...}, fields: {id: {numbers, shown, from, to, bands, step}}}; point (i, j) is
 * number i * across + j. */
export async function beltSurface(state, view) {
  const along = state.x.length, given = state.y.length;
  const widened = async (packed, sign) => {
    const numbers = await unpacked(packed, given);
    return view.half ? whole(numbers, along, given, sign) : numbers;
  };
  const vectors = (packed, signs) => Promise.all(packed.map((component, i) => widened(component, signs[i])));
  const y = view.half ? [...state.y.slice(1).reverse().map((value) => -value), ...state.y] : state.y;
  const surface = { along, across: y.length, x: state.x, y, fields: {}, motion: {} };
  surface.position = await vectors(state.position, [1, -1, 1]);
  for (const field of view.fields) {
    const packed = state.fields[field.id];
    if (!packed) continue;
    const numbers = await widened(packed, field.odd ? -1 : 1);
    const shown = field.widened > 0 ? widest(numbers, surface, field.widened) : numbers;
    surface.fields[field.id] = { numbers, shown, low: packed.low, high: packed.high, from: packed.from, to: packed.to, bands: packed.bands,
      step: (packed.high - packed.low) / packed.levels };
  }
  // Up, a motion is one of the fields.
  const motion = async (packed, signs, up) => [...await vectors(packed, signs), surface.fields[up].numbers];
  if (state.motion_symmetric) surface.motion.mode_symmetric = await motion(state.motion_symmetric, [1, -1], "mode_symmetric");
  if (state.motion_antisymmetric) surface.motion.mode_antisymmetric = await motion(state.motion_antisymmetric, [-1, 1], "mode_antisymmetric");
  return surface;
}
