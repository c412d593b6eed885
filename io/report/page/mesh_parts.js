// Geometry for the 3-D view: the belt's triangles, the rolls' shells.
import { BufferAttribute, BufferGeometry, LatheGeometry, Matrix4, Vector2, Vector3 } from "three";

export function beltGeometry(surface) {
  const geometry = new BufferGeometry();
  const count = surface.along * surface.across;
  const index = new Uint32Array(6 * (surface.along - 1) * (surface.across - 1));
  let at = 0;
  for (let i = 0; i + 1 < surface.along; ++i)
    for (let j = 0; j + 1 < surface.across; ++j) {
      const a = i * surface.across + j, b = a + surface.across;
      index.set([a, b, b + 1, a, b + 1, a + 1], at);
      at += 6;
    }
  geometry.setIndex(new BufferAttribute(index, 1));
  geometry.setAttribute("position", new BufferAttribute(new Float32Array(3 * count), 3));
  geometry.setAttribute("value", new BufferAttribute(new Float32Array(count), 1));
  return geometry;
}

/** Points at `scale` times their displacement from the flat sheet, and `amplitude` [mm] of a motion on top. */
export function placePoints(geometry, surface, scale, motion, amplitude) {
  const points = geometry.attributes.position.array;
  for (let i = 0; i < surface.along; ++i)
    for (let j = 0; j < surface.across; ++j) {
      const k = i * surface.across + j;
      const flat = [surface.x[i], surface.y[j], 0];
      for (let c = 0; c < 3; ++c)
        points[3 * k + c] = flat[c] + scale * (surface.position[c][k] - flat[c]) + (motion ? amplitude * motion[c][k] : 0);
    }
  geometry.attributes.position.needsUpdate = true;
  geometry.computeVertexNormals();
  geometry.computeBoundingSphere();
}

export function rollGeometry(roll) {
  const rounding = Math.min(roll.end, roll.radius, roll.half);
  const outline = [new Vector2(0, -roll.half)];
  for (const end of [-1, 1])
    for (let i = 0; i <= 4; ++i) {
      const angle = Math.PI / 2 * (end < 0 ? i : 4 - i) / 4;
      outline.push(new Vector2(roll.radius - rounding + rounding * Math.sin(angle), end * (roll.half - rounding + rounding * Math.cos(angle))));
    }
  outline.push(new Vector2(0, roll.half));
  const geometry = new LatheGeometry(outline, 40);
  const axis = new Vector3(...roll.axis), up = new Vector3(...roll.up);
  const basis = new Matrix4().makeBasis(up, axis, new Vector3().crossVectors(up, axis));
  return geometry.applyMatrix4(basis.setPosition(...roll.centre));
}
