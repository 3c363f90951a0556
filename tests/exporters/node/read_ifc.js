// Prints what web-ifc, a reader of IFC of other origin, finds in a file: every line as data, and the
// volume and bounds of every body, openings cut out.
import { readFileSync } from "node:fs";
import * as WebIFC from "web-ifc";

const api = new WebIFC.IfcAPI();
await api.Init();
api.SetLogLevel(WebIFC.LogLevel.LOG_LEVEL_OFF);
const model = api.OpenModel(new Uint8Array(readFileSync(process.argv[2])), { COORDINATE_TO_ORIGIN: false });
const schema = api.GetModelSchema(model);

function plain(value) {
    if (Array.isArray(value)) return value.map(plain);
    if (value === null || value === undefined || typeof value !== "object") return value ?? null;
    if (value.type === 5) return { ref: value.value };
    if ("value" in value) return plain(value.value);
    return value;
}

const lines = [];
const ids = api.GetAllLines(model);
for (let k = 0; k < ids.size(); ++k) {
    const id = ids.get(k);
    const type = api.GetNameFromTypeCode(api.GetLineType(model, id));
    if (/^IfcCartesianPoint(List3D)?$|^IfcTriangulatedFaceSet$|^IfcPolyLoop$|^IfcFace/.test(type)) continue;
    const line = api.GetLine(model, id);
    const fields = {};
    for (const [name, value] of Object.entries(line))
        if (name !== "expressID" && name !== "type") fields[name] = plain(value);
    lines.push({ id, type, ...fields });
}

const bodies = {};
const take = (mesh) => {
    let volume = 0;
    const low = [Infinity, Infinity, Infinity], high = [-Infinity, -Infinity, -Infinity];
    for (let g = 0; g < mesh.geometries.size(); ++g) {
        const placed = mesh.geometries.get(g);
        const geometry = api.GetGeometry(model, placed.geometryExpressID);
        const v = api.GetVertexArray(geometry.GetVertexData(), geometry.GetVertexDataSize());
        const index = api.GetIndexArray(geometry.GetIndexData(), geometry.GetIndexDataSize());
        const m = placed.flatTransformation;
        const at = (k) => {
            const [x, y, z] = [v[6 * k], v[6 * k + 1], v[6 * k + 2]];
            const p = [0, 1, 2].map((r) => m[r] * x + m[4 + r] * y + m[8 + r] * z + m[12 + r]);
            return [p[0], -p[2], p[1]]; // web-ifc hands out +Y up
        };
        for (let t = 0; t < index.length; t += 3) {
            const [a, b, c] = [at(index[t]), at(index[t + 1]), at(index[t + 2])];
            volume += (a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) +
                       a[2] * (b[0] * c[1] - b[1] * c[0])) / 6;
            for (const p of [a, b, c])
                for (let r = 0; r < 3; ++r) {
                    low[r] = Math.min(low[r], p[r]);
                    high[r] = Math.max(high[r], p[r]);
                }
        }
    }
    bodies[mesh.expressID] = { volume, low, high };
};
api.StreamAllMeshes(model, take);
api.StreamAllMeshesWithTypes(model, [WebIFC.IFCSPACE, WebIFC.IFCOPENINGELEMENT], take);

// The corners of the holes' edges.
const holes = {};
const openings = api.GetLineIDsWithType(model, WebIFC.IFCOPENINGELEMENT);
for (let k = 0; k < openings.size(); ++k) {
    const shape = api.GetLine(model, openings.get(k), true).Representation.Representations[0];
    holes[openings.get(k)] = {
        identifier: shape.RepresentationIdentifier.value,
        edges: shape.Items.map((edge) => edge.Points.map((p) => p.Coordinates.map((c) => c.value))),
    };
}
// How many attributes the schema gives each type, and how many the file does.
const counts = api.GetModelSchema(model) === "IFC4" ? WebIFC.Constructors[2] : WebIFC.Constructors[1];
const wrong = [];
for (let k = 0; k < ids.size(); ++k) {
    const raw = api.GetRawLineData(model, ids.get(k));
    const wanted = Math.max(0, ...[...String(counts[raw.type]).matchAll(/a\[(\d+)\]/g)].map((m) => Number(m[1]) + 1));
    if (!counts[raw.type] || raw.arguments.length !== wanted)
        wrong.push(`#${raw.ID} ${api.GetNameFromTypeCode(raw.type)}: ${raw.arguments.length}, not ${wanted}`);
}
console.log(JSON.stringify({ schema, lines, bodies, holes, wrong }));
