// take-off.json against its schema and its reference page.
#include "exporters/take_off_json.hpp"
#include "geometry/exact/exact_region.hpp"
#include "geometry/takeoff/worked_out.hpp"
#include "tests/exporters/sample_plans.hpp"
#include "tests/exporters/scratch.hpp"
#include "tests/support/works.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <functional>
#include <set>

namespace coilwright {
namespace {

using nlohmann::json;

std::string json_of(const std::string& demo, const Works& works) {
    const WorkedOut out = work_everything_out(demo_plan(demo), works, exact_region);
    return take_off_json(out.take, out.costs, out.days);
}

std::string priced_json(const std::string& demo) {
    return json_of(demo, testing::demo_works(demo.substr(0, demo.find('.'))));
}

std::vector<std::string> validation(const std::vector<std::string>& files) {
    std::vector<std::string> command{"/usr/bin/python3",
                                     COILWRIGHT_SOURCE_DIR "/tests/exporters/validate_json.py",
                                     COILWRIGHT_SOURCE_DIR "/docs/reference/take-off.schema.json"};
    command.insert(command.end(), files.begin(), files.end());
    return command;
}

} // namespace

TEST_CASE("take-off.json of every demo keeps to its schema, with prices and without") {
    const ScratchDirectory scratch;
    std::vector<std::string> files;
    for (const std::string& name : demo_files()) {
        files.push_back((scratch.path() / (name + ".json")).string());
        put_bytes(files.back(), priced_json(name));
        files.push_back((scratch.path() / (name + "-bare.json")).string());
        put_bytes(files.back(), json_of(name, default_works()));
    }
    CHECK(files.size() >= 14);
    CHECK_NOTHROW(output_of(validation(files)));
}

TEST_CASE("the schema of take-off.json finds what is wrong") {
    const ScratchDirectory scratch;
    const std::string file = (scratch.path() / "broken.json").string();
    const json sound = json::parse(priced_json("grain-store.toml"));
    const auto fault = [&](const std::function<void(json&)>& breaking) {
        json broken = sound;
        breaking(broken);
        put_bytes(file, broken.dump());
        return validation({file});
    };
    CHECK_THROWS_WITH(output_of(fault([](json& j) { j["items"][0]["unit"] = "stone"; })),
                      Catch::Contains("/items/0/unit"));
    CHECK_THROWS_WITH(output_of(fault([](json& j) { j["lines"][3].erase("how"); })),
                      Catch::Contains("'how' is a required property"));
    CHECK_THROWS_WITH(
        output_of(fault([](json& j) { j["courses"][0]["tubes"][0]["buckets"] = -1; })),
        Catch::Contains("/courses/0/tubes/0/buckets"));
    CHECK_THROWS_WITH(output_of(fault([](json& j) { j["orders"][0]["date"] = "soon"; })),
                      Catch::Contains("/orders/0/date"));
}

TEST_CASE("the reference tells every key of take-off.json") {
    const std::string page = bytes_of(COILWRIGHT_SOURCE_DIR "/docs/reference/take-off.md");
    std::set<std::string> keys;
    const std::function<void(const json&)> collect = [&](const json& value) {
        if (value.is_object())
            for (const auto& [key, one] : value.items())
                keys.insert(key);
        if (value.is_structured())
            for (const json& one : value)
                collect(one);
    };
    for (const std::string& name : demo_files())
        collect(json::parse(priced_json(name)));
    CHECK(keys.size() > 90);
    for (const std::string& key : keys) {
        CAPTURE(key);
        CHECK(page.find("`" + key + "`") != std::string::npos);
    }
}

} // namespace coilwright
