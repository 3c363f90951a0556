// The shell without Booleans against the same building by Booleans: CGAL's corefinement and
// manifold-3d (WASM), both on the same operands. From the project's folder, after the preset `bench` is built:
//   npm ci --prefix tests/bench/booleans && node tests/bench/booleans/compare.mjs build-bench/tests/bench/boolean-operands
import { execFileSync } from 'node:child_process';
import Module from 'manifold-3d';

const scenes = JSON.parse(execFileSync(process.argv[2], { maxBuffer: 1 << 30 }));
const library = await Module();
library.setup();
const { Manifold, Mesh } = library;

const operand = ({ vertices, triangles }) =>
  new Manifold(new Mesh({
    numProp: 3,
    vertProperties: new Float32Array(vertices),
    triVerts: new Uint32Array(triangles),
  }));

/// Operands are made ready outside the clock: what is timed is Booleans alone.
function booleans(steps) {
  let wall = steps[0].body;
  for (const { adds, body, less } of steps.slice(1)) {
    const piece = less.reduce((left, taken) => left.subtract(taken), body);
    wall = adds ? wall.add(piece) : wall.subtract(piece);
  }
  return wall.volume(); // asks for the result: Booleans are put off until then
}

let failed = false;
console.log('scene                 shell ms   CGAL ms   manifold ms   shell/manifold   shell/CGAL');
for (const { name, shell, cgal, steps } of scenes) {
  let volume;
  const times = [];
  for (let run = 0; run < 5; ++run) {
    const ready = steps.map(({ adds, body, less }) => ({ adds, body: operand(body), less: less.map(operand) }));
    const start = performance.now();
    volume = booleans(ready);
    times.push(performance.now() - start);
  }
  const manifold = times.sort((a, b) => a - b)[2];
  const figure = (value, width, digits) => value.toFixed(digits).padStart(width);
  console.log(name.padEnd(20) + figure(shell.ms, 10, 1) + figure(cgal.ms, 10, 1) + figure(manifold, 14, 1) +
              figure(shell.ms / manifold, 17, 2) + figure(shell.ms / cgal.ms, 13, 2));
  console.log(`  volumes, m3: shell ${shell.volume.toFixed(4)}, CGAL ${cgal.volume.toFixed(4)}, manifold ${volume.toFixed(4)}`);
  // The three must be the same building: within a skin as thick as the sag.
  for (const other of [cgal.volume, volume])
    if (!(Math.abs(other / shell.volume - 1) < 0.02)) failed = true;
}
if (failed) {
  console.error('The volumes differ: the times compare different buildings.');
  process.exit(1);
}
