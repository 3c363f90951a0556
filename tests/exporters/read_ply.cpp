#include "tests/exporters/read_ply.hpp"

#include <cstring>
#include <sstream>
#include <stdexcept>

namespace coilwright {
namespace {

struct Property {
    std::string type, name, count_type; // count_type: of a list
};
struct Element {
    std::string name;
    std::size_t count = 0;
    std::vector<Property> properties;
};

// Values of the machine's own order: the tests run on little-endian ones.
class Values {
public:
    Values(const std::string& bytes, std::size_t at) : bytes_(bytes), at_(at) {}
    double next(const std::string& type) {
        if (type == "double")
            return take<double>();
        if (type == "float")
            return static_cast<double>(take<float>());
        if (type == "uchar")
            return take<unsigned char>();
        if (type == "uint")
            return take<std::uint32_t>();
        if (type == "int")
            return take<std::int32_t>();
        throw std::runtime_error("no such type: " + type);
    }
    bool at_end() const { return at_ == bytes_.size(); }

private:
    template <class T>
    T take() {
        if (at_ + sizeof(T) > bytes_.size())
            throw std::runtime_error("the file is too short");
        T value;
        std::memcpy(&value, bytes_.data() + at_, sizeof(T));
        at_ += sizeof(T);
        return value;
    }
    const std::string& bytes_;
    std::size_t at_;
};

std::vector<Element> read_header(std::istringstream& lines, ReadPly& read) {
    std::vector<Element> elements;
    std::string line;
    std::getline(lines, line);
    if (line != "ply")
        throw std::runtime_error("not a PLY file");
    std::getline(lines, line);
    if (line != "format binary_little_endian 1.0")
        throw std::runtime_error("not binary little-endian");
    while (std::getline(lines, line) && line != "end_header") {
        std::istringstream words(line);
        std::string word;
        words >> word;
        if (word == "comment") {
            read.comments.push_back(line.substr(8));
        } else if (word == "element") {
            Element element;
            words >> element.name >> element.count;
            elements.push_back(element);
        } else if (word == "property") {
            Property property;
            words >> property.type;
            if (property.type == "list")
                words >> property.count_type >> property.type;
            words >> property.name;
            elements.back().properties.push_back(property);
        } else {
            throw std::runtime_error("a line of the header begins with " + word);
        }
    }
    return elements;
}

} // namespace

ReadPly read_ply(const std::string& bytes) {
    ReadPly read;
    std::istringstream lines(bytes);
    const std::vector<Element> elements = read_header(lines, read);
    Values values(bytes, static_cast<std::size_t>(lines.tellg()));
    for (const Element& element : elements)
        for (std::size_t k = 0; k < element.count; ++k) {
            Vec3 point(0, 0, 0);
            std::array<int, 3> colour{};
            for (const Property& property : element.properties) {
                if (!property.count_type.empty()) {
                    if (values.next(property.count_type) != 3)
                        throw std::runtime_error("a face is not a triangle");
                    std::array<std::uint32_t, 3> triangle{};
                    for (std::uint32_t& corner : triangle)
                        corner = static_cast<std::uint32_t>(values.next(property.type));
                    read.mesh.triangles.push_back(triangle);
                    continue;
                }
                const double value = values.next(property.type);
                if (property.name == "x" || property.name == "y" || property.name == "z")
                    point[property.name[0] - 'x'] = value;
                else if (property.name == "part")
                    read.parts.push_back(static_cast<std::uint32_t>(value));
                else
                    colour[property.name == "red"     ? 0
                           : property.name == "green" ? 1
                                                      : 2] = static_cast<int>(value);
            }
            if (element.name == "vertex") {
                read.mesh.vertices.push_back(point);
                read.colours.push_back(colour);
            }
        }
    if (!values.at_end())
        throw std::runtime_error("the file is longer than its header says");
    return read;
}

} // namespace coilwright
