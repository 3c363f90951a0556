// Prints what the Khronos glTF validator says of each file: one JSON array of its reports.
import { readFileSync } from "node:fs";
import validator from "gltf-validator";

const reports = [];
for (const file of process.argv.slice(2))
    reports.push(await validator.validateBytes(new Uint8Array(readFileSync(file)), { maxIssues: 20 }));
console.log(JSON.stringify(reports));
