#include "exporters/ifc_guid.hpp"
#include "exporters/step_text.hpp"
#include "tests/exporters/comma_locale.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>
#include <set>

namespace coilwright {

// ISO 10303-21, 6.4.3: examples of the directives.
TEST_CASE("STEP texts are ASCII, and quotes and backslashes are doubled") {
    CHECK(step_text("Grain store") == "'Grain store'");
    CHECK(step_text("it's C:\\new") == "'it''s C:\\\\new'");
    CHECK(step_text("S\u00e9choir") == "'S\\X2\\00E9\\X0\\choir'");
    CHECK(step_text("\u4e7e") == "'\\X2\\4E7E\\X0\\'");
    CHECK(step_text("\U0001f3e0") == "'\\X4\\0001F3E0\\X0\\'");
    CHECK(step_text("a\nb\xff") == "'a b\\X2\\FFFD\\X0\\'");
    CHECK(step_text("") == "''");
}

TEST_CASE("STEP numbers have a point in every locale and no needless digits") {
    const CommaLocale commas;
    CHECK(step_number(1.5) == "1.5");
    CHECK(step_number(2) == "2.");
    CHECK(step_number(-0.0000004) == "0.");
    CHECK(step_number(-12.0000016) == "-12.000002");
    CHECK(step_number(1234567.25) == "1234567.25");
}

TEST_CASE("a STEP file numbers its lines and says what it is") {
    StepFile file;
    const StepValue first = file.add("IFCDIRECTION", {step_list({"0.", "1."})});
    CHECK(first == "#1");
    CHECK(file.add("IFCLABEL", {step_text("x"), step_unset, first, step_word("T")}) == "#2");
    const std::string text = file.text("nothing", "a.ifc", "us", "IFC4");
    CHECK(text.rfind("ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION(('nothing'),'2;1');\n", 0) == 0);
    CHECK(text.find("FILE_SCHEMA(('IFC4'));\nENDSEC;\nDATA;\n#1=IFCDIRECTION((0.,1.));\n"
                    "#2=IFCLABEL('x',$,#1,.T.);\nENDSEC;\nEND-ISO-10303-21;\n") !=
          std::string::npos);
}

// RFC 3174, section 7.3; the last by Python's hashlib.
TEST_CASE("SHA-1 gives the digests of its specification") {
    const auto hex = [](const std::string& bytes) {
        std::string text;
        for (const std::uint8_t byte : sha1(bytes)) {
            text += "0123456789abcdef"[byte >> 4];
            text += "0123456789abcdef"[byte & 15];
        }
        return text;
    };
    CHECK(hex("abc") == "a9993e364706816aba3e25717850c26c9cd0d89d");
    CHECK(hex("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
          "84983e441c3bd26ebaae4aa1f95129e5e54670f1");
    CHECK(hex("") == "da39a3ee5e6b4b0d3255bfef95601890afd80709");
    CHECK(hex(std::string(1000000, 'a')) == "34aa973cd4c4daa4f61eeb2bdbad27316534016f");
}

// Python's uuid module makes the UUIDs, and its arithmetic on whole numbers the 22 characters.
TEST_CASE("GlobalIds are UUIDs of version 5 in the letters of IFC") {
    const std::string code = R"(
import sys, uuid
letters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$"
design, part = sys.argv[1:]
n = uuid.uuid5(uuid.uuid5(uuid.NAMESPACE_URL, design), part).int
print("".join(letters[n >> 6 * k & 63] for k in reversed(range(22))), end=""))";
    std::set<std::string> seen;
    for (const auto& [design, part] : std::vector<std::pair<std::string, std::string>>{
             {"Grain store, Alder Flats", "STORE_WALL"},
             {"Grain store, Alder Flats", "STORE_ROOF"},
             {"S\u00e9choir \"N\u00ba 1\" \u2013 \u4e7e", "VAULT_C07"},
             {"", ""}}) {
        const std::string guid = ifc_guid(design, part);
        CHECK(guid == output_of({"/usr/bin/python3", "-c", code, design, part}));
        CHECK(guid.size() == 22);
        seen.insert(guid);
    }
    CHECK(seen.size() == 4);
}

} // namespace coilwright
