#include "tests/exporters/read_3mf.hpp"

#include <Model/COM/NMR_DLLInterfaces.h>
#include <functional>
#include <stdexcept>

namespace coilwright {
namespace {

using namespace NMR;

// Objects of lib3mf live until they are released.
class Kept {
public:
    ~Kept() {
        for (auto object = objects_.rbegin(); object != objects_.rend(); ++object)
            lib3mf_release(*object);
    }
    template <class T>
    T* keep(T* object) {
        objects_.push_back(object);
        return object;
    }

private:
    std::vector<PLib3MFBase*> objects_;
};

void ask(LIB3MFRESULT result, const char* what) {
    if (result != LIB3MF_OK)
        throw std::runtime_error(std::string("lib3mf refuses: ") + what + ", code " +
                                 std::to_string(result));
}

std::string text_by(const std::function<LIB3MFRESULT(LPSTR, ULONG, ULONG*)>& get) {
    ULONG needed = 0;
    ask(get(nullptr, 0, &needed), "the length of a text");
    std::string text(needed + 1, '\0');
    ask(get(text.data(), needed + 1, &needed), "a text");
    text.resize(needed);
    return text;
}

class Reader {
public:
    Read3mf read(const std::string& bytes) {
        ask(lib3mf_createmodel(&model_), "a model");
        kept_.keep(model_);
        PLib3MFModelReader* reader = nullptr;
        ask(lib3mf_model_queryreader(model_, "3mf", &reader), "a reader");
        kept_.keep(reader);
        ask(lib3mf_reader_setstrictmodeactive(reader, true), "strict mode");
        std::string copy = bytes;
        const LIB3MFRESULT result =
            lib3mf_reader_readfrombuffer(reader, reinterpret_cast<BYTE*>(copy.data()), copy.size());
        if (result != LIB3MF_OK) {
            DWORD code = 0;
            LPCSTR message = nullptr;
            lib3mf_getlasterror(reader, &code, &message);
            throw std::runtime_error(std::string("lib3mf: ") + (message ? message : "?"));
        }
        take_warnings(reader);
        take_metadata();
        DWORD unit = 0;
        ask(lib3mf_model_getunit(model_, &unit), "the unit");
        const double metres[] = {1e-6, 1e-3, 1e-2, 0.0254, 0.3048, 1};
        read_.metres = metres[unit];
        PLib3MFModelBuildItemIterator* items = nullptr;
        ask(lib3mf_model_getbuilditems(model_, &items), "the build items");
        kept_.keep(items);
        BOOL more = 0;
        while (lib3mf_builditemiterator_movenext(items, &more) == LIB3MF_OK && more) {
            PLib3MFModelBuildItem* item = nullptr;
            ask(lib3mf_builditemiterator_getcurrent(items, &item), "a build item");
            kept_.keep(item);
            PLib3MFModelObjectResource* object = nullptr;
            ask(lib3mf_builditem_getobjectresource(item, &object), "its object");
            kept_.keep(object);
            walk(object, {});
        }
        return std::move(read_);
    }

private:
    void take_warnings(PLib3MFModelReader* reader) {
        DWORD count = 0;
        ask(lib3mf_reader_getwarningcount(reader, &count), "the warnings");
        for (DWORD k = 0; k < count; ++k)
            read_.warnings.push_back(text_by([&](LPSTR buffer, ULONG size, ULONG* needed) {
                DWORD code = 0;
                return lib3mf_reader_getwarningutf8(reader, k, &code, buffer, size, needed);
            }));
    }

    void take_metadata() {
        DWORD count = 0;
        ask(lib3mf_model_getmetadatacount(model_, &count), "the metadata");
        for (DWORD k = 0; k < count; ++k) {
            const std::string key = text_by([&](LPSTR buffer, ULONG size, ULONG* needed) {
                return lib3mf_model_getmetadatakeyutf8(model_, k, buffer, size, needed);
            });
            read_.metadata[key] = text_by([&](LPSTR buffer, ULONG size, ULONG* needed) {
                return lib3mf_model_getmetadatavalueutf8(model_, k, buffer, size, needed);
            });
        }
    }

    void walk(PLib3MFModelObjectResource* object, std::vector<std::string> path) {
        path.push_back(text_by([&](LPSTR buffer, ULONG size, ULONG* needed) {
            return lib3mf_object_getnameutf8(object, buffer, size, needed);
        }));
        BOOL valid = 0;
        ask(lib3mf_object_isvalidobject(object, &valid), "whether an object is valid");
        DWORD components = 0;
        if (lib3mf_componentsobject_getcomponentcount(object, &components) != LIB3MF_OK) {
            take_mesh(object, path, valid);
            return;
        }
        for (DWORD k = 0; k < components; ++k) {
            PLib3MFModelComponent* component = nullptr;
            ask(lib3mf_componentsobject_getcomponent(object, k, &component), "a component");
            kept_.keep(component);
            PLib3MFModelObjectResource* child = nullptr;
            ask(lib3mf_component_getobjectresource(component, &child), "its object");
            kept_.keep(child);
            walk(child, path);
        }
    }

    void take_mesh(PLib3MFModelMeshObject* object, const std::vector<std::string>& path,
                   bool valid) {
        Read3mfPart part;
        part.path = path;
        BOOL closed = 0;
        ask(lib3mf_meshobject_ismanifoldandoriented(object, &closed), "whether a mesh is closed");
        part.closed = valid && closed;
        DWORD vertices = 0, triangles = 0;
        ask(lib3mf_meshobject_getvertexcount(object, &vertices), "the vertices");
        ask(lib3mf_meshobject_gettrianglecount(object, &triangles), "the triangles");
        for (DWORD k = 0; k < vertices; ++k) {
            MODELMESHVERTEX vertex;
            ask(lib3mf_meshobject_getvertex(object, k, &vertex), "a vertex");
            part.mesh.vertices.emplace_back(vertex.m_fPosition[0], vertex.m_fPosition[1],
                                            vertex.m_fPosition[2]);
        }
        for (DWORD k = 0; k < triangles; ++k) {
            MODELMESHTRIANGLE triangle;
            ask(lib3mf_meshobject_gettriangle(object, k, &triangle), "a triangle");
            part.mesh.triangles.push_back(
                {triangle.m_nIndices[0], triangle.m_nIndices[1], triangle.m_nIndices[2]});
        }
        PLib3MFDefaultPropertyHandler* properties = nullptr;
        ask(lib3mf_object_createdefaultpropertyhandler(object, &properties), "the properties");
        kept_.keep(properties);
        DWORD group = 0, place = 0;
        ask(lib3mf_defaultpropertyhandler_getbasematerial(properties, &group, &place),
            "the material");
        part.material = material(group, place);
        read_.parts.push_back(std::move(part));
    }

    std::string material(DWORD group, DWORD place) {
        PLib3MFModelBaseMaterial* materials = nullptr;
        ask(lib3mf_model_getbasematerialbyid(model_, group, &materials), "the materials");
        kept_.keep(materials);
        const std::string name = text_by([&](LPSTR buffer, ULONG size, ULONG* needed) {
            return lib3mf_basematerial_getnameutf8(materials, place, buffer, size, needed);
        });
        BYTE red = 0, green = 0, blue = 0, alpha = 0;
        ask(lib3mf_basematerial_getdisplaycolor(materials, place, &red, &green, &blue, &alpha),
            "a colour");
        read_.colours[name] = {red, green, blue, alpha};
        return name;
    }

    Kept kept_;
    PLib3MFModel* model_ = nullptr;
    Read3mf read_;
};

} // namespace

Read3mf read_3mf(const std::string& bytes) {
    return Reader().read(bytes);
}

} // namespace coilwright
