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

/** {along, across, x, y, position: [x, y, z], motion: {...}, fields: {id: {numbers, from, to, bands, step}}}; point (i, j) is
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
    surface.fields[field.id] = { numbers, from: packed.from, to: packed.to, bands: packed.bands,
      step: (packed.high - packed.low) / packed.levels };
  }
  if (state.motion_symmetric) surface.motion.mode_symmetric = await vectors(state.motion_symmetric, [1, -1, 1]);
  if (state.motion_antisymmetric) surface.motion.mode_antisymmetric = await vectors(state.motion_antisymmetric, [-1, 1, -1]);
  return surface;
}
