// The belt on its rolls: drag to turn, wheel or two fingers to zoom, click to read a point; by keyboard the same.
import { AmbientLight, Color, DataTexture, DirectionalLight, DoubleSide, Mesh, MeshLambertMaterial, NearestFilter, OrthographicCamera,
  Raycaster, RGBAFormat, Scene, ShaderMaterial, SphereGeometry, MeshBasicMaterial, Vector2, Vector3, WebGLRenderer } from "three";
import { OrbitControls } from "three/addons/controls/OrbitControls.js";
import { beltGeometry, placePoints, rollGeometry } from "./mesh_parts.js";
import { bandColours } from "./colour_maps.js";

const vertexShader = `
attribute float value;
varying float v_value;
varying vec3 v_normal;
void main() {
  v_value = value;
  v_normal = normalMatrix * normal;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`;
// Bands of colour with thin lines between them where there is room; light from the eye's upper left on both faces.
const fragmentShader = `
uniform sampler2D bandColours;
uniform float low, high, bands, power;
varying float v_value;
varying vec3 v_normal;
void main() {
  float share = (v_value - low) / (high - low);
  float place = pow(clamp(share, 0.0, 1.0), power) * 0.99999 * bands;
  vec3 colour = texture2D(bandColours, vec2((floor(place) + 0.5) / bands, 0.5)).rgb;
  float width = fwidth(place);
  float nearest = abs(fract(place + 0.5) - 0.5);
  if (nearest < 0.6 * width && place > 0.5 && place < bands - 0.5) colour = mix(colour, vec3(1.0), 0.55 * (1.0 - smoothstep(0.12, 0.3, width)));
  if ((share > 1.0001 || share < -0.0001) && mod(gl_FragCoord.x + gl_FragCoord.y, 9.0) < 2.5) colour = vec3(share > 1.0 ? 0.12 : 1.0);
  float light = 0.66 + 0.38 * abs(dot(normalize(v_normal), normalize(vec3(-0.35, 0.5, 0.8))));
  gl_FragColor = vec4(min(colour * light, 1.0), 1.0);
}`;

function bandTexture(field, signed) {
  const colours = bandColours(field.bands, signed);
  const texture = new DataTexture(new Uint8Array(colours.flatMap((c) => [...c, 255])), field.bands, 1, RGBAFormat);
  texture.minFilter = texture.magFilter = NearestFilter;
  texture.needsUpdate = true;
  return texture;
}

/** Whether the processor draws in place of a graphics card: smooth edges then take three times as long. */
function rendersInSoftware() {
  const probe = document.createElement("canvas").getContext("webgl2");
  const info = probe?.getExtension("WEBGL_debug_renderer_info");
  const name = info ? probe.getParameter(info.UNMASKED_RENDERER_WEBGL) : "";
  probe?.getExtension("WEBGL_lose_context")?.loseContext();
  return /swiftshader|llvmpipe|software|basic render/i.test(name);
}

export class BeltSpace {
  /** Throws where there is no WebGL. `picked(index)` is told the belt's point nearest to what was clicked. */
  constructor(canvas, view, picked) {
    this.canvas = canvas;
    this.picked = picked;
    this.renderer = new WebGLRenderer({ canvas, antialias: !rendersInSoftware(), alpha: true });
    this.renderer.setPixelRatio(Math.min(window.devicePixelRatio, 2));
    this.scene = new Scene();
    this.camera = new OrthographicCamera(-1, 1, 1, -1, -50000, 50000);
    this.camera.up.set(0, 0, 1);
    this.controls = new OrbitControls(this.camera, canvas);
    this.controls.addEventListener("change", () => this.draw());
    this.controls.enableZoom = false;  // until it has the focus: else nobody could scroll past it
    canvas.addEventListener("pointerdown", () => canvas.focus({ preventScroll: true }));
    canvas.addEventListener("focus", () => { this.controls.enableZoom = true; });
    canvas.addEventListener("blur", () => { this.controls.enableZoom = false; });
    this.addRolls(view.rolls);
    this.addMark();
    this.material = new ShaderMaterial({ vertexShader, fragmentShader, side: DoubleSide,
      uniforms: { bandColours: { value: null }, low: { value: 0 }, high: { value: 1 }, bands: { value: 1 }, power: { value: 1 } } });
    this.reach = view.distance;
    const sets = view.rolls.map((roll) => roll.centre[0]);
    this.seen = Math.min(Math.max(...sets, this.reach), 1.6 * this.reach) + 300;
    this.corners = view.rolls.filter((roll) => roll.name === "pulley").flatMap((roll) =>
      [-1, 1].flatMap((side) => [-1, 1].flatMap((over) => [-1, 1].map((ahead) =>
        new Vector3(roll.centre[0] + ahead * roll.radius, side * roll.half, roll.centre[2] + over * roll.radius)))));
    new ResizeObserver(() => this.fit()).observe(canvas);
    this.listen();
  }

  addRolls(rolls) {
    const steel = new MeshLambertMaterial({ color: new Color(0x97a0a6) });
    for (const roll of rolls) this.scene.add(new Mesh(rollGeometry(roll), steel));
    this.scene.add(new AmbientLight(0xffffff, 1.6));
    const light = new DirectionalLight(0xffffff, 1.8);
    light.position.set(-3000, -4000, 9000);
    this.scene.add(light);
  }

  addMark() {
    this.mark = new Mesh(new SphereGeometry(1, 16, 12), new MeshBasicMaterial({ color: 0xa3261f, depthTest: false }));
    this.mark.renderOrder = 2;
    this.mark.visible = false;
    this.scene.add(this.mark);
  }

  listen() {
    let from = null;
    this.canvas.addEventListener("pointerdown", (event) => { from = [event.clientX, event.clientY]; });
    this.canvas.addEventListener("pointerup", (event) => {
      if (from && Math.hypot(event.clientX - from[0], event.clientY - from[1]) < 4) this.pickAt(event);
    });
    this.canvas.addEventListener("keydown", (event) => {
      const turns = { ArrowLeft: [-0.1, 0], ArrowRight: [0.1, 0], ArrowUp: [0, -0.08], ArrowDown: [0, 0.08] };
      if (turns[event.key]) this.turn(...turns[event.key]);
      else if (event.key === "+" || event.key === "=") this.zoom(1.15);
      else if (event.key === "-") this.zoom(1 / 1.15);
      else if (event.key === "0") this.home();
      else if (event.key === "Enter") this.pick(new Vector2(0, 0));
      else return;
      event.preventDefault();
    });
  }

  show(surface, field, info, scale, motion, amplitude) {
    if (this.surface !== surface) {
      const first = !this.belt;
      if (this.belt) { this.scene.remove(this.belt); this.belt.geometry.dispose(); }
      this.belt = new Mesh(beltGeometry(surface), this.material);
      this.scene.add(this.belt);
      this.surface = surface;
      this.mark.visible = false;
      placePoints(this.belt.geometry, surface, 1);
      if (first) this.home();
    }
    placePoints(this.belt.geometry, surface, scale, motion, amplitude);
    this.belt.geometry.attributes.value.array.set(field.shown);
    this.belt.geometry.attributes.value.needsUpdate = true;
    const uniforms = this.material.uniforms;
    uniforms.bandColours.value?.dispose();
    uniforms.bandColours.value = bandTexture(field, info.signed);
    uniforms.low.value = field.from;
    uniforms.high.value = field.to;
    uniforms.bands.value = field.bands;
    uniforms.power.value = info.power;
    if (this.markedPoint !== undefined) this.putMark(this.markedPoint);
    this.draw();
  }

  home() {
    this.controls.target.set(0, 0, 0);
    this.camera.position.set(-0.55, -0.8, 0.62).multiplyScalar(this.reach);
    this.camera.zoom = 1;
    this.controls.update();
    this.frameAll();
    this.fit();
  }

  /** Puts the middle of what is seen of belt and pulley into the middle of the view; `half` is how far it reaches. */
  frameAll() {
    const right = new Vector3(), up = new Vector3(), points = this.belt.geometry.attributes.position, point = new Vector3();
    this.camera.updateMatrixWorld();
    this.camera.matrixWorld.extractBasis(right, up, new Vector3());
    const box = { low: [Infinity, Infinity], high: [-Infinity, -Infinity] };
    const take = () => [right, up].forEach((axis, i) => {
      box.low[i] = Math.min(box.low[i], point.dot(axis));
      box.high[i] = Math.max(box.high[i], point.dot(axis));
    });
    for (let k = 0; k < points.count; k += 7)
      if (point.fromBufferAttribute(points, k).x < this.seen) take();
    for (const corner of this.corners) { point.copy(corner); take(); }
    const middle = right.clone().multiplyScalar((box.low[0] + box.high[0]) / 2).addScaledVector(up, (box.low[1] + box.high[1]) / 2);
    this.controls.target.add(middle);
    this.camera.position.add(middle);
    this.half = [(box.high[0] - box.low[0]) / 2, (box.high[1] - box.low[1]) / 2];
    this.controls.update();
  }

  fit() {
    const { clientWidth: width, clientHeight: height } = this.canvas;
    if (!width || !height) return;
    this.renderer.setSize(width, height, false);
    if (!this.half) return;
    const half = 1.06 * Math.max(this.half[0], this.half[1] * width / height);
    this.camera.left = -half;
    this.camera.right = half;
    this.camera.top = half * height / width;
    this.camera.bottom = -this.camera.top;
    this.camera.updateProjectionMatrix();
    this.draw();
  }

  turn(around, over) {
    const arm = this.camera.position.clone().sub(this.controls.target);
    arm.applyAxisAngle(new Vector3(0, 0, 1), around);
    const side = new Vector3(0, 0, 1).cross(arm).normalize();
    const tilted = arm.clone().applyAxisAngle(side, over);
    if (Math.abs(tilted.z) < 0.995 * tilted.length()) arm.copy(tilted);
    this.camera.position.copy(this.controls.target).add(arm);
    this.controls.update();
  }

  zoom(factor) {
    this.camera.zoom *= factor;
    this.camera.updateProjectionMatrix();
    this.draw();
  }

  pickAt(event) {
    const box = this.canvas.getBoundingClientRect();
    this.pick(new Vector2(2 * (event.clientX - box.left) / box.width - 1, 1 - 2 * (event.clientY - box.top) / box.height));
  }

  pick(place) {
    const ray = new Raycaster();
    ray.setFromCamera(place, this.camera);
    const [hit] = ray.intersectObject(this.belt);
    if (!hit) return;
    const points = this.belt.geometry.attributes.position;
    const corners = [hit.face.a, hit.face.b, hit.face.c];
    const away = (k) => new Vector3().fromBufferAttribute(points, k).distanceTo(hit.point);
    this.picked(corners.reduce((best, k) => (away(k) < away(best) ? k : best)));
  }

  putMark(point) {
    this.markedPoint = point;
    this.mark.visible = true;
    this.mark.position.fromBufferAttribute(this.belt.geometry.attributes.position, point);
    this.mark.scale.setScalar(0.009 * (this.camera.right - this.camera.left) / this.camera.zoom);
    this.draw();
  }

  draw() {
    if (this.belt) this.renderer.render(this.scene, this.camera);
  }
}
