// Shows a GLB file in headless Chromium through three.js and keeps the pictures that it draws:
//     node photograph.js MODEL.glb DIRECTORY
// writes picture.png (lit, in perspective), flat.rgba (the same view, every part in the plain colour
// of its material), south.rgba and east.rgba (the building without the ground, black on white,
// looked at level from there) and prints what it knows of them as JSON.
import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { dirname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const [model, into] = process.argv.slice(2);
const browsers = ["chromium-headless-shell", "chromium", "chrome"];

const types = { js: "text/javascript", html: "text/html", glb: "model/gltf-binary" };
const profile = mkdtempSync(join(tmpdir(), "coilwright-browser-"));
let child = null;

function end(code, text) {
    // The launcher's whole group: the browser itself is a child of it.
    try {
        if (child?.pid) process.kill(-child.pid, "SIGKILL");
    } catch {
        // it has ended by itself
    }
    rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
    console.log(text);
    process.exit(code);
}

const server = createServer((request, response) => {
    const path = normalize(decodeURI(request.url));
    if (request.method === "POST") {
        const chunks = [];
        request.on("data", (chunk) => chunks.push(chunk));
        request.on("end", () => {
            const body = Buffer.concat(chunks);
            response.end();
            if (path === "/done") end(0, body.toString());
            else if (path === "/failed") end(1, body.toString());
            else writeFileSync(join(into, path.slice(1)), body);
        });
        return;
    }
    try {
        const file = path === "/model.glb" ? model : join(here, path);
        response.setHeader("Content-Type", types[file.split(".").pop()] ?? "text/plain");
        response.end(readFileSync(file));
    } catch {
        response.statusCode = 404;
        response.end();
    }
});

function start(left) {
    if (left.length === 0) end(1, "no Chromium here: install chromium-headless-shell");
    const flags = ["--headless", "--no-sandbox", "--disable-gpu-sandbox", "--use-angle=swiftshader",
        "--enable-unsafe-swiftshader", "--disable-dev-shm-usage", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--hide-scrollbars",
        "--remote-debugging-port=0", `--user-data-dir=${profile}`,
        `http://127.0.0.1:${server.address().port}/photograph.html`];
    child = spawn(left[0], flags, { stdio: "ignore", detached: true });
    child.on("error", () => start(left.slice(1)));
}

server.listen(0, "127.0.0.1", () => start(browsers));
setTimeout(() => end(1, "the page did not finish in time"), 100000);
