#include "tests/io/bad_case.h"

#include <doctest/doctest.h>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

namespace swale {
namespace {

using Json = nlohmann::ordered_json;

/// A table of the schema: how a case file opens it, its path in messages, and its keys.
struct SchemaTable {
    std::string header;
    std::string path;
    Json keys;
};

Json schema() {
    std::ifstream file(std::string(SWALE_SOURCE_DIR) + "/io/case.schema.json");
    return Json::parse(file);
}

/// A property, or the definition that it refers to.
const Json& resolved(const Json& root, const Json& property) {
    const std::string definition = "#/$defs/";
    if (!property.is_object() || !property.contains("$ref")) return property;
    return root["$defs"][property["$ref"].get<std::string>().substr(definition.size())];
}

/// `opened`: the headers of the arrays of tables that a table stands in.
void collect(const Json& root, const Json& table, const SchemaTable& place, const std::string& toml_path,
             const std::string& opened, std::vector<SchemaTable>& tables) {
    tables.push_back({place.header, place.path, table["properties"]});
    const auto below = [](const std::string& outer, const std::string& key) { return outer.empty() ? key : outer + "." + key; };
    for (const auto& [key, entry] : table["properties"].items()) {
        const Json& property = resolved(root, entry);
        if (!property.is_object() || !property.contains("type")) continue;
        const std::string toml = below(toml_path, key), path = below(place.path, key);
        const std::string array = opened + "[[" + toml + "]]\n";
        if (property["type"] == "object") collect(root, property, {opened + "[" + toml + "]", path, {}}, toml, opened, tables);
        if (property["type"] == "array" && property["items"].contains("properties"))
            collect(root, property["items"], {array, path + "[1]", {}}, toml, array, tables);
    }
}

std::vector<SchemaTable> schema_tables() {
    std::vector<SchemaTable> tables;
    const Json root = schema();
    collect(root, root, {}, "", "", tables);
    return tables;
}

/// The mistake of that `problem` that the program finds at `key` of the table when `line` is all that stands in it.
InputError mistake_at(const SchemaTable& table, const std::string& key, const std::string& line, const std::string& problem) {
    const std::string wanted = table.path.empty() ? key : table.path + "." + key;
    for (const InputError& mistake : mistakes_of(table.header + "\n" + line + "\n"))
        if (mistake.key == wanted && mistake.problem.starts_with(problem)) return mistake;
    FAIL("no mistake at " << wanted);
    return {};
}

std::set<std::string> words(std::string list) {
    const auto last = list.find(" or ");
    if (last != std::string::npos) list.replace(last, 4, ", ");
    std::set<std::string> result;
    std::istringstream in(list);
    for (std::string word; std::getline(in >> std::ws, word, ',');) result.insert(word);
    return result;
}

}  // namespace

TEST_CASE("the schema has every table and key that the program knows and no other") {
    const std::vector<SchemaTable> tables = schema_tables();
    CHECK(tables.size() == 31);
    for (const SchemaTable& table : tables) {
        CAPTURE(table.path);
        std::set<std::string> keys;
        for (const auto& [key, property] : table.keys.items()) keys.insert(key);
        CHECK(words(mistake_at(table, "zzzzzzzz", "zzzzzzzz = 0", "unknown key").allowed) == keys);
    }
}

TEST_CASE("the schema states the range of every quantity as the program does") {
    int quantities = 0;
    for (const SchemaTable& table : schema_tables())
        for (const auto& [key, property] : table.keys.items()) {
            if (!property.is_object() || !property.contains("x-allowed")) continue;
            CAPTURE(key);
            const std::string allowed = mistake_at(table, key, key + " = 0", "a bare number").allowed;
            CHECK(allowed.starts_with(property["x-allowed"].get<std::string>() + ","));
            ++quantities;
        }
    CHECK(quantities > 35);
}

TEST_CASE("the schema states the range of every plain number as the program does") {
    for (const SchemaTable& table : schema_tables())
        for (const auto& [key, property] : table.keys.items()) {
            if (!property.is_object() || !property.contains("maximum")) continue;
            CAPTURE(key);
            const std::string allowed = mistake_at(table, key, key + " = 999999", "out of range").allowed;
            std::ostringstream range;
            range << "from " << property["minimum"].get<double>() << " to " << property["maximum"].get<double>();
            CHECK(allowed.find(range.str()) != std::string::npos);
        }
}

}  // namespace swale
